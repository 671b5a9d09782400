// The three circuits of a chassis, island by island. What is declared and not confirmed by the circuit is
// held, so that what hangs on it follows the declared figure.
import type { GroupedNets, NetGroup } from '../group-nets.ts';
import type { Points } from '../points.ts';
import type { Potentials } from '../potentials.ts';
import { sameItems } from '../same.ts';
import type { Amount } from '../types.ts';
import type { CircuitName, PlacedBranch } from './branches.ts';
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
  /** Everything that the solution was made from. */
  readonly madeFrom: readonly unknown[];
}

export interface SolvedCircuit {
  readonly branches: readonly PlacedBranch[];
  readonly islands: readonly SolvedIsland[];
  readonly islandAt: ReadonlyMap<number, SolvedIsland>;
}

export interface Ground {
  readonly points: Points;
  readonly nets: GroupedNets;
  readonly declared: Potentials;
}

/** Decides what of an island is held, from its own solution where it has one. */
type Holder = (
  island: Island,
  free: IslandSolution | null,
  sources: readonly PlacedBranch[]
) => { readonly held: HeldNets; readonly disagreements: readonly Disagreement[] };

/** What else than branches and nets a holder looks at. */
type InputsOf = (island: Island) => readonly unknown[];

/** A declared voltage is confirmed by one within a tenth of it, or within one volt. */
export const agrees = (declaredV: number, solvedV: number): boolean =>
  Math.abs(declaredV - solvedV) <=
  Math.max(1, 0.1 * Math.max(Math.abs(declaredV), Math.abs(solvedV)));

export const noneHeld: HeldNets = new Map();

/** One circuit, solved. Islands that came out as before keep their solution. */
export function solveCircuit(
  branches: readonly PlacedBranch[],
  { points, nets }: Ground,
  hold: Holder,
  inputsOf: InputsOf,
  before?: SolvedCircuit
): SolvedCircuit {
  const chassis = points.rootOf[points.chassis] ?? points.chassis;
  const known = new Map(before?.islands.map((island) => [island.branches[0], island]));
  const islands = findIslands(branches, points, nets).map((island) => {
    const madeFrom = [...island.branches, ...island.groups, ...inputsOf(island)];
    const kept = known.get(island.branches[0]);
    if (kept && sameItems(kept.madeFrom, madeFrom)) return kept;
    const sources = island.branches.filter(
      ({ branch }) => branch.kind === 'source' && branch.volts !== 0
    );
    const free = sources.length > 0 ? solveIsland(island, chassis, noneHeld, nets.groupAt) : null;
    const { held, disagreements } = hold(island, free, sources);
    const solution = held.size > 0 ? solveIsland(island, chassis, held, nets.groupAt) : free;
    return { ...island, solution, sources, held, disagreements, madeFrom };
  });
  const isAsBefore = before && sameItems(before.islands, islands);
  const islandAt = new Map<number, SolvedIsland>();
  if (!isAsBefore) {
    for (const island of islands) for (const point of island.points) islandAt.set(point, island);
  }
  return { branches, islands, islandAt: isAsBefore ? before.islandAt : islandAt };
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

/** For the loaded circuit: a net is held where its own circuit does not confirm what is declared. */
export const holdLoaded =
  ({ points, declared }: Ground, isRectified: (net: NetGroup) => boolean): Holder =>
  (island, free, sources) => {
    const held = new Map<NetGroup, HeldNet>();
    const disagreements: Disagreement[] = [];
    for (const net of island.groups) {
      const amount = declared.get(net)?.dcV;
      if (net.isChassis || !amount) continue;
      const solvedV = free && island.touchesChassis ? largestVolts(net, points, free) : null;
      if (solvedV !== null && agrees(amount.value, solvedV)) continue;
      held.set(net, { net, amount, feed: null });
      // What a rectifier gives under load is for people to say.
      if (solvedV !== null && sources.length > 0 && !isRectified(net)) {
        disagreements.push({ net, declared: amount, solvedV });
      }
    }
    return { held, disagreements };
  };

/** For the cold circuit: what was held loaded stands there cold too, save where a rectifier gives it. */
export const holdCold =
  (loaded: SolvedCircuit, isRectified: (net: NetGroup) => boolean): Holder =>
  (island) => {
    const held = new Map<NetGroup, HeldNet>();
    const islands = new Set(island.points.map((point) => loaded.islandAt.get(point)));
    for (const hot of islands) {
      for (const [net, holding] of hot?.held ?? []) {
        if (!isRectified(net) && island.groups.includes(net)) held.set(net, holding);
      }
    }
    return { held, disagreements: [] };
  };

/** For ac: what people declare of signals is no matter of the line, and phases are not declared. So a
 *  net is held only where it is the one declared net of an island that feeds heaters, has no source
 *  and returns to the chassis. */
export const holdAc =
  (ground: Ground, feedOf: (net: NetGroup) => number | null): Holder =>
  (island, _free, sources) => {
    const { declared } = ground;
    const said = island.groups.filter((net) => !net.isChassis && declared.get(net)?.acV);
    const [only] = said;
    const amount = only && declared.get(only)?.acV;
    const heats = island.branches.some(({ element }) => element?.values.kind === 'heater');
    const isClear = sources.length === 0 && said.length === 1 && island.touchesChassis && heats;
    if (!only || !amount || !isClear) return { held: noneHeld, disagreements: [] };
    return {
      held: new Map([[only, { net: only, amount, feed: feedOf(only) }]]),
      disagreements: []
    };
  };

export const circuitOf = (
  all: Iterable<Readonly<Record<CircuitName, PlacedBranch | null>>>,
  name: CircuitName
): PlacedBranch[] => {
  const branches: PlacedBranch[] = [];
  for (const each of all) {
    const own = each[name];
    if (own) branches.push(own);
  }
  return branches;
};
