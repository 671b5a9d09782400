// One circuit of a chassis, island by island. What is declared and not confirmed by the circuit is held,
// so that what hangs on it follows the declared figure. Islands in which nothing changed keep their
// solution.
import type { GroupedNets, NetGroup } from '../group-nets.ts';
import type { Points } from '../points.ts';
import type { Potentials } from '../potentials.ts';
import { sameFields, sameItems } from '../same.ts';
import type { Amount } from '../types.ts';
import type { PlacedBranch } from './branches.ts';
import { findIslands, type Island } from './islands.ts';
import { solveIsland, type HeldNet, type HeldNets, type IslandSolution } from './solve-island.ts';

export interface Disagreement {
  readonly net: NetGroup;
  readonly declared: Amount;
  readonly solvedV: number;
}

export interface SolvedIsland extends Island {
  /** Null where nothing puts volts on it: no source, nothing declared. */
  readonly solution: IslandSolution | null;
  /** Its own sources, those of nought left out. */
  readonly sources: readonly PlacedBranch[];
  /** Nets held at what was declared, for want of a circuit that gives as much. */
  readonly held: HeldNets;
  readonly disagreements: readonly Disagreement[];
  /** What its holder looked at. */
  readonly inputs: readonly unknown[];
}

export interface SolvedCircuit {
  readonly branches: readonly PlacedBranch[];
  /** By their first branch. */
  readonly islands: readonly SolvedIsland[];
  /** By point: the place of its island in the list; -1 on the chassis, and where no branch leads. */
  readonly islandNo: Int32Array;
  /** Everything held, island by island. The same list while the same is held. */
  readonly holds: readonly HeldNet[];
  readonly rootOf: Int32Array;
  /** The nets, and what the holder rests on. */
  readonly ground: readonly unknown[];
}

export interface Ground {
  readonly points: Points;
  readonly nets: GroupedNets;
  readonly declared: Potentials;
}

/** Decides what of an island is held, from its own solution where it has one. */
export interface Holder {
  readonly hold: (
    island: Island,
    free: IslandSolution | null,
    sources: readonly PlacedBranch[]
  ) => { readonly held: HeldNets; readonly disagreements: readonly Disagreement[] };
  /** What it looks at, besides branches and nets of the island. */
  readonly inputsOf: (island: Island) => readonly unknown[];
  /** What it looks at for all islands together. */
  readonly inputs: readonly unknown[];
}

export const noneHeld: HeldNets = new Map();

/** The island of a point; undefined on the chassis, and where no branch leads. */
export const islandAt = (
  { islands, islandNo }: SolvedCircuit,
  point: number
): SolvedIsland | undefined => islands[islandNo[point] ?? -1];

/** One circuit, solved.
 *  @param before islands of it that no changed branch touches are given again */
export function solveCircuit(
  branches: readonly PlacedBranch[],
  { points, nets }: Ground,
  holder: Holder,
  before?: SolvedCircuit
): SolvedCircuit {
  const { rootOf } = points;
  const chassis = rootOf[points.chassis] ?? points.chassis;
  const was = before?.rootOf === rootOf ? before : undefined;
  const { kept, loose } = was
    ? untouchedIslands(branches, was, nets, holder)
    : { kept: [], loose: branches };
  const ground = [nets, ...holder.inputs];
  if (was?.branches === branches && kept.length === was.islands.length) {
    return sameItems(was.ground, ground) ? was : { ...was, ground };
  }
  const made = findIslands(loose, points, nets).map((island) =>
    settleIsland(island, chassis, nets.groupAt, holder)
  );
  const islands = inOrder(kept, made, branches);
  const islandNo = new Int32Array(rootOf.length).fill(-1);
  islands.forEach((island, no) => {
    for (const point of island.points) islandNo[point] = no;
  });
  return { branches, islands, islandNo, holds: keepHolds(was?.holds, islands), rootOf, ground };
}

/** The islands of before that stand as they stood, and the branches that are left over. */
function untouchedIslands(
  branches: readonly PlacedBranch[],
  before: SolvedCircuit,
  nets: GroupedNets,
  holder: Holder
): { kept: readonly SolvedIsland[]; loose: readonly PlacedBranch[] } {
  const { came, touched } = compareBranches(branches, before);
  const isSameGround = sameItems(before.ground, [nets, ...holder.inputs]);
  const kept = before.islands.filter((island) => {
    if (touched.has(island)) return false;
    const stands =
      isSameGround ||
      (island.groups.every((net) => nets.byId.get(net.id) === net) &&
        sameItems(island.inputs, holder.inputsOf(island)));
    if (!stands) touched.add(island);
    return stands;
  });
  if (touched.size === 0 && came.size === 0) return { kept, loose: [] };
  const loose = new Set(came);
  for (const island of touched) for (const branch of island.branches) loose.add(branch);
  return { kept, loose: branches.filter((branch) => loose.has(branch)) };
}

/** Branches that are new, and islands that they or those that are gone touch. */
function compareBranches(
  branches: readonly PlacedBranch[],
  before: SolvedCircuit
): { came: ReadonlySet<PlacedBranch>; touched: Set<SolvedIsland> } {
  const old = before.branches;
  const touched = new Set<SolvedIsland>();
  if (old === branches) return { came: new Set(), touched };
  // As a rule all that differs lies in one short stretch.
  let start = 0;
  while (start < branches.length && branches[start] === old[start]) start++;
  let tail = 0;
  const most = Math.min(branches.length, old.length) - start;
  while (tail < most && branches[branches.length - 1 - tail] === old[old.length - 1 - tail]) tail++;
  const [had, has] = [
    old.slice(start, old.length - tail),
    branches.slice(start, branches.length - tail)
  ];
  const gone = new Set(had);
  const came = new Set(has.filter((branch) => !gone.delete(branch)));
  came.forEach(touch);
  gone.forEach(touch);
  // The same sums in another order differ in the last digits, and the study after an edit has to be
  // the one that is made from nothing: where branches changed places they count as touched.
  const stayed = has.filter((branch) => !came.has(branch));
  if (
    !sameItems(
      had.filter((branch) => !gone.has(branch)),
      stayed
    )
  )
    stayed.forEach(touch);
  return { came, touched };

  function touch({ from, to }: PlacedBranch): void {
    for (const point of [from, to]) {
      const island = islandAt(before, point);
      if (island) touched.add(island);
    }
  }
}

/** Islands by their first branch, out of two lists of them that are. */
function inOrder(
  kept: readonly SolvedIsland[],
  made: readonly SolvedIsland[],
  branches: readonly PlacedBranch[]
): readonly SolvedIsland[] {
  if (kept.length === 0 || made.length === 0) return kept.length === 0 ? made : kept;
  const islands: SolvedIsland[] = [];
  let [nextKept, nextMade] = [kept[0], made[0]];
  let [keptNo, madeNo] = [0, 0];
  for (const branch of branches) {
    if (nextKept?.branches[0] === branch) {
      islands.push(nextKept);
      nextKept = kept[++keptNo];
    } else if (nextMade?.branches[0] === branch) {
      islands.push(nextMade);
      nextMade = made[++madeNo];
    }
  }
  return islands;
}

function settleIsland(
  island: Island,
  chassis: number,
  groupAt: readonly NetGroup[],
  holder: Holder
): SolvedIsland {
  const sources = island.branches.filter(
    ({ branch }) => branch.kind === 'source' && branch.volts !== 0
  );
  const free = sources.length > 0 ? solveIsland(island, chassis, noneHeld, groupAt) : null;
  const { held, disagreements } = holder.hold(island, free, sources);
  const solution = held.size > 0 ? solveIsland(island, chassis, held, groupAt) : free;
  return { ...island, solution, sources, held, disagreements, inputs: holder.inputsOf(island) };
}

function keepHolds(
  before: readonly HeldNet[] | undefined,
  islands: readonly SolvedIsland[]
): readonly HeldNet[] {
  const holds = islands.flatMap(({ held }) => [...held.values()]);
  const isSame =
    before?.length === holds.length &&
    holds.every((hold, n) => {
      const was = before[n];
      return was !== undefined && sameFields(was, hold);
    });
  return isSame ? before : holds;
}

/** The volts of greatest magnitude on a net. */
export function largestVolts(
  net: NetGroup,
  { rootOf }: Points,
  { voltsAt }: IslandSolution
): number | null {
  let largest: number | null = null;
  for (const point of net.points) {
    const volts = voltsAt(rootOf[point] ?? point);
    if (volts !== null && (largest === null || Math.abs(volts) > Math.abs(largest))) {
      largest = volts;
    }
  }
  return largest;
}
