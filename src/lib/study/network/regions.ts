// A circuit cut where its volts are fixed: at the chassis and what is on it by wires, behind sources
// without resistance, on nets that are held. What hangs together when all of that is taken away is a
// region. What feeds it, and what nobody described on it, concerns its volts and no others.
import { DisjointSets } from '../disjoint-sets.ts';
import type { GroupedNets } from '../group-nets.ts';
import { listAt, type Lists } from '../lists.ts';
import type { Points } from '../points.ts';
import type { CircuitName, PlacedBranch } from './branches.ts';
import type { OpenEffect, OpenEnd } from './open-ends.ts';
import type { HeldNet } from './solve-island.ts';
import type { SolvedCircuit } from './solve-circuits.ts';

/** What puts volts on a point. */
type Feed =
  | { readonly kind: 'source'; readonly branch: PlacedBranch }
  | { readonly kind: 'held'; readonly net: HeldNet };

export interface Region {
  /** Sources that are not nought. */
  readonly sources: readonly PlacedBranch[];
  readonly held: readonly HeldNet[];
  readonly open: readonly OpenEnd[];
}

export interface Regions {
  /** The region of a point; undefined on the chassis, and where no branch leads. A point whose volts are
   *  fixed is a region of its own with nothing open on it. */
  readonly at: (point: number) => Region | undefined;
}

/** Tubes draw nothing before they are hot, and next to nothing of the line's frequency. */
const counts: Readonly<Record<CircuitName, ReadonlySet<OpenEffect>>> = {
  loaded: new Set<OpenEffect>(['draws', 'tube', 'anything']),
  cold: new Set<OpenEffect>(['anything']),
  ac: new Set<OpenEffect>(['anything'])
};

interface OpenRegion {
  readonly feeds: Set<Feed>;
  readonly open: OpenEnd[];
}

export function findRegions(
  name: CircuitName,
  circuit: SolvedCircuit,
  openEnds: readonly OpenEnd[],
  points: Points,
  nets: GroupedNets
): Regions {
  const { branches } = circuit;
  const rootOf = (terminal: number): number => points.rootOf[terminal] ?? terminal;
  const isOnChassis = (point: number): boolean => nets.groupAt[point]?.isChassis !== false;
  const fixed = findFixed(circuit, isOnChassis, rootOf);
  const isFixed = (point: number): boolean => isOnChassis(point) || fixed.has(point);
  const sets = new DisjointSets(points.rootOf.length);
  const has = new Uint8Array(points.rootOf.length);
  for (const { from, to } of branches) {
    has[from] = 1;
    has[to] = 1;
    if (!isFixed(from) && !isFixed(to)) sets.join(from, to);
  }
  const regions = new Map<number, OpenRegion>();
  const openAt = (point: number): OpenRegion | undefined => {
    if (has[point] !== 1 || isFixed(point)) return undefined;
    const root = sets.rootOf(point);
    const known = regions.get(root);
    if (known) return known;
    const made: OpenRegion = { feeds: new Set(), open: [] };
    regions.set(root, made);
    return made;
  };
  for (const placed of branches) {
    const { branch, from, to } = placed;
    const region = openAt(from) ?? openAt(to);
    if (!region) continue;
    if (isSource(placed)) region.feeds.add(feedOf(placed));
    if (branch.kind === 'load') continue;
    for (const feed of [...(fixed.get(from) ?? []), ...(fixed.get(to) ?? [])]) {
      region.feeds.add(feed);
    }
  }
  for (const end of openEnds) {
    if (counts[name].has(end.effect)) openAt(rootOf(end.terminal))?.open.push(end);
  }
  const closed = new Map<number | OpenRegion, Region>();
  return {
    at: (point) => {
      const feeds = fixed.get(point);
      const region = feeds ? undefined : openAt(point);
      if (!feeds && !region) return undefined;
      const key = region ?? point;
      const known = closed.get(key);
      if (known) return known;
      const made = close(region?.feeds ?? new Set(feeds), region?.open ?? []);
      closed.set(key, made);
      return made;
    }
  };
}

const isSource = ({ branch }: PlacedBranch): boolean =>
  branch.kind === 'source' && branch.volts !== 0;

const sourceFeeds = new WeakMap<PlacedBranch, Feed>();

function feedOf(branch: PlacedBranch): Feed {
  const known = sourceFeeds.get(branch);
  if (known) return known;
  const made: Feed = { kind: 'source', branch };
  sourceFeeds.set(branch, made);
  return made;
}

/** Points at fixed volts from the chassis, with what fixes them: by way of sources and joins without
 *  resistance, or because their net is held. */
function findFixed(
  { branches, islands }: SolvedCircuit,
  isOnChassis: (point: number) => boolean,
  rootOf: (terminal: number) => number
): ReadonlyMap<number, readonly Feed[]> {
  const stiff: Lists<number, PlacedBranch> = new Map();
  for (const placed of branches) {
    const { branch, from, to } = placed;
    const isIdeal = branch.kind === 'join' || (branch.kind !== 'load' && branch.ohms === 0);
    if (!isIdeal) continue;
    listAt(stiff, from).push(placed);
    listAt(stiff, to).push(placed);
  }
  const fixed = new Map<number, readonly Feed[]>();
  for (const { held } of islands) {
    for (const net of held.values()) {
      const feeds: readonly Feed[] = [{ kind: 'held', net }];
      const all = net.feed === null ? net.net.points.map(rootOf) : [net.feed];
      for (const point of all) fixed.set(point, feeds);
    }
  }
  const queue = [...fixed.keys(), ...[...stiff.keys()].filter(isOnChassis)];
  for (const point of queue) {
    for (const placed of stiff.get(point) ?? []) {
      const far = placed.from === point ? placed.to : placed.from;
      if (fixed.has(far) || isOnChassis(far)) continue;
      const own = isSource(placed) ? [feedOf(placed)] : [];
      fixed.set(far, [...(fixed.get(point) ?? []), ...own]);
      // The queue grows while it is walked.
      queue.push(far);
    }
  }
  return fixed;
}

function close(feeds: ReadonlySet<Feed>, open: readonly OpenEnd[]): Region {
  const sources: PlacedBranch[] = [];
  const held: HeldNet[] = [];
  for (const feed of feeds) {
    if (feed.kind === 'source') sources.push(feed.branch);
    else held.push(feed.net);
  }
  return { sources, held, open };
}
