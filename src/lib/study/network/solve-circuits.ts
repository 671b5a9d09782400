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
  readonly nets: GroupedNets;
  readonly holder: Holder;
}

export interface Ground {
  readonly points: Points;
  readonly nets: GroupedNets;
  readonly declared: Potentials;
}

/** Decides what of an island is held. */
export interface Holder {
  /** @param free the island's own solution; null where it has no source */
  readonly hold: (
    island: Island,
    free: () => IslandSolution | null,
    sources: readonly PlacedBranch[]
  ) => { readonly held: HeldNets; readonly disagreements: readonly Disagreement[] };
  /** What it has of a net: two holders for which that is the same hold it alike. */
  readonly on: (net: NetGroup) => readonly unknown[];
  /** All that it rests on. */
  readonly inputs: readonly unknown[];
}

export const noneHeld: HeldNets = new Map();

/** The island of a point; undefined on the chassis, and where no branch leads. */
export const islandAt = (
  { islands, islandNo }: SolvedCircuit,
  point: number
): SolvedIsland | undefined => islands[islandNo[point] ?? -1];

/** One circuit, solved.
 *  @param before islands of it that no changed branch touches are given again
 *  @param twin a circuit that much of this one is the same as, solved already */
export function solveCircuit(
  branches: readonly PlacedBranch[],
  { points, nets }: Ground,
  holder: Holder,
  before?: SolvedCircuit,
  twin?: SolvedCircuit
): SolvedCircuit {
  const { rootOf } = points;
  const chassis = rootOf[points.chassis] ?? points.chassis;
  const was = before?.rootOf === rootOf ? before : undefined;
  const { kept, loose } = was
    ? untouchedIslands(branches, was, nets, holder)
    : { kept: [], loose: branches };
  if (was?.branches === branches && kept.length === was.islands.length) {
    return was.nets === nets ? was : { ...was, nets, holder };
  }
  const made = findIslands(loose, points, nets).map((island) =>
    settleIsland(island, chassis, nets.groupAt, holder, twin)
  );
  const islands = inOrder(kept, made, branches);
  const islandNo = new Int32Array(rootOf.length).fill(-1);
  islands.forEach((island, no) => {
    for (const point of island.points) islandNo[point] = no;
  });
  const holds = keepHolds(was?.holds, islands);
  return { branches, islands, islandNo, holds, rootOf, nets, holder };
}

/** The islands of before that stand as they stood, and the branches that are left over. */
function untouchedIslands(
  branches: readonly PlacedBranch[],
  before: SolvedCircuit,
  nets: GroupedNets,
  holder: Holder
): { kept: readonly SolvedIsland[]; loose: readonly PlacedBranch[] } {
  const { came, touched } = compareBranches(branches, before);
  const others = otherNets(before, nets, holder);
  if (others.size > 0) {
    for (const island of before.islands) {
      if (island.groups.some((net) => others.has(net))) touched.add(island);
    }
  }
  if (touched.size === 0 && came.size === 0) return { kept: before.islands, loose: [] };
  const kept = before.islands.filter((island) => !touched.has(island));
  const isTouched = Uint8Array.from(before.islands, (island) => (touched.has(island) ? 1 : 0));
  const loose = branches.filter((branch) => {
    const [from, to] = [before.islandNo[branch.from] ?? -1, before.islandNo[branch.to] ?? -1];
    // One between points that were on no island is new, or leads nowhere.
    return from < 0 && to < 0 ? came.has(branch) : isTouched[from] === 1 || isTouched[to] === 1;
  });
  return { kept, loose };
}

/** Nets of before that are gone, or of which the holder has something else now. */
function otherNets(
  before: SolvedCircuit,
  nets: GroupedNets,
  holder: Holder
): ReadonlySet<NetGroup> {
  const others = new Set<NetGroup>();
  const isSame = before.nets === nets && sameItems(before.holder.inputs, holder.inputs);
  for (const net of isSame ? [] : nets.groups) {
    if (!sameItems(before.holder.on(net), holder.on(net))) others.add(net);
  }
  if (before.nets !== nets) {
    for (const net of before.nets.groups) if (nets.byId.get(net.id) !== net) others.add(net);
  }
  return others;
}

/** Branches that are new, and islands that they or those that are gone touch. */
function compareBranches(
  branches: readonly PlacedBranch[],
  before: SolvedCircuit
): { came: ReadonlySet<PlacedBranch>; touched: Set<SolvedIsland> } {
  const old = before.branches;
  const touched = new Set<SolvedIsland>();
  if (old === branches) return { came: new Set(), touched };
  const replaced = replacedBranches(old, branches);
  if (replaced) {
    for (const branch of [...replaced.gone, ...replaced.came]) touch(branch);
    return { came: new Set(replaced.came), touched };
  }
  const gone = new Set(old);
  const came = new Set(branches.filter((branch) => !gone.delete(branch)));
  came.forEach(touch);
  gone.forEach(touch);
  // The same sums in another order differ in the last digits, and the study after an edit has to be
  // the one that is made from nothing: where branches changed places they count as touched.
  const stayed = branches.filter((branch) => !came.has(branch));
  const isMoved = !sameItems(
    old.filter((branch) => !gone.has(branch)),
    stayed
  );
  if (isMoved) stayed.forEach(touch);
  return { came, touched };

  function touch({ from, to }: PlacedBranch): void {
    for (const point of [from, to]) {
      const island = islandAt(before, point);
      if (island) touched.add(island);
    }
  }
}

/** What came in the place of what, where all else stands in its place; undefined where it does not. */
function replacedBranches(
  old: readonly PlacedBranch[],
  now: readonly PlacedBranch[]
): { gone: readonly PlacedBranch[]; came: readonly PlacedBranch[] } | undefined {
  if (old.length !== now.length) return undefined;
  const [gone, came]: [PlacedBranch[], PlacedBranch[]] = [[], []];
  for (let n = 0; n < now.length; n++) {
    const [was, is] = [old[n], now[n]];
    if (was === is) continue;
    if (!was || was.branch.id !== is?.branch.id) return undefined;
    gone.push(was);
    came.push(is);
  }
  return { gone, came };
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
  holder: Holder,
  twin: SolvedCircuit | undefined
): SolvedIsland {
  const sources = island.branches.filter(
    ({ branch }) => branch.kind === 'source' && branch.volts !== 0
  );
  let own: IslandSolution | null | undefined;
  const free = (): IslandSolution | null =>
    (own ??= sources.length > 0 ? solveIsland(island, chassis, noneHeld, groupAt) : null);
  const { held, disagreements } = holder.hold(island, free, sources);
  const like = twin && islandAt(twin, island.points[0] ?? -1);
  const isLike = like && sameItems(like.branches, island.branches) && holdAlike(like.held, held);
  const solution = isLike
    ? like.solution
    : held.size > 0
      ? solveIsland(island, chassis, held, groupAt)
      : free();
  return { ...island, solution, sources, held, disagreements };
}

const holdAlike = (a: HeldNets, b: HeldNets): boolean =>
  a.size === b.size &&
  [...a].every(([net, hold]) => {
    const other = b.get(net);
    return other !== undefined && sameFields(hold, other);
  });

function keepHolds(
  before: readonly HeldNet[] | undefined,
  islands: readonly SolvedIsland[]
): readonly HeldNet[] {
  const holds: HeldNet[] = [];
  for (const { held } of islands) if (held.size > 0) holds.push(...held.values());
  const isSame =
    before?.length === holds.length &&
    holds.every((hold, n) => {
      const was = before[n];
      return was !== undefined && (was === hold || sameFields(was, hold));
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
