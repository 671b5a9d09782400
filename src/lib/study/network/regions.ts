// An island cut where its volts are fixed: at what is on the chassis by wires, behind sources without
// resistance, on nets that are held. What hangs together when all of that is taken away is a region. What
// feeds it, and what nobody described on it, concerns its volts and no others.
import type { NetGroup } from '../group-nets.ts';
import { listAt, type Lists } from '../lists.ts';
import type { CircuitName, PlacedBranch } from './branches.ts';
import type { OpenEffect, OpenEnd } from './open-ends.ts';
import type { HeldNet } from './solve-island.ts';
import { islandAt, type SolvedCircuit, type SolvedIsland } from './solve-circuits.ts';

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

/** The region of a point; undefined on the chassis, and where no branch leads. A point whose volts are
 *  fixed is a region of its own with nothing open on it. */
export type RegionAt = (point: number) => Region | undefined;

/** What regions are found from, besides their island. */
export interface RegionGround {
  readonly openEnds: readonly OpenEnd[];
  readonly rootOf: Int32Array;
  readonly groupAt: readonly NetGroup[];
}

/** Regions of islands that were found already, for one ground. */
export interface KnownRegions {
  readonly openEnds: readonly OpenEnd[];
  readonly rootOf: Int32Array;
  readonly openAt: ReadonlyMap<number, readonly OpenEnd[]>;
  readonly ofIsland: Readonly<Record<CircuitName, WeakMap<SolvedIsland, RegionAt>>>;
}

/** @param before kept where the same is left open at the same points */
export function knowRegions(
  { openEnds, rootOf }: Pick<RegionGround, 'openEnds' | 'rootOf'>,
  before?: KnownRegions
): KnownRegions {
  if (before?.openEnds === openEnds && before.rootOf === rootOf) return before;
  const openAt: Lists<number, OpenEnd> = new Map();
  for (const end of openEnds) listAt(openAt, rootOf[end.terminal] ?? end.terminal).push(end);
  const none = () => new WeakMap<SolvedIsland, RegionAt>();
  const ofIsland = { loaded: none(), cold: none(), ac: none() };
  return { openEnds, rootOf, openAt, ofIsland };
}

/** Looks up regions of a circuit; each island's are found when they are first asked for. */
export function regionsIn(
  name: CircuitName,
  circuit: SolvedCircuit,
  known: KnownRegions,
  groupAt: readonly NetGroup[]
): RegionAt {
  const ofIsland = known.ofIsland[name];
  return (point) => {
    const island = islandAt(circuit, point);
    if (!island) return undefined;
    const before = ofIsland.get(island);
    if (before) return before(point);
    const found = findRegions(name, island, known, groupAt);
    ofIsland.set(island, found);
    return found(point);
  };
}

/** Tubes draw nothing before they are hot, and next to nothing of the line's frequency. */
const counts: Readonly<Record<CircuitName, ReadonlySet<OpenEffect>>> = {
  loaded: new Set<OpenEffect>(['draws', 'tube', 'anything']),
  cold: new Set<OpenEffect>(['anything']),
  ac: new Set<OpenEffect>(['anything'])
};

/** The regions of one island. */
export function findRegions(
  name: CircuitName,
  island: SolvedIsland,
  { openAt, rootOf }: Pick<KnownRegions, 'openAt' | 'rootOf'>,
  groupAt: readonly NetGroup[]
): RegionAt {
  const isOnChassis = (point: number): boolean => groupAt[point]?.isChassis !== false;
  const fixed = findFixed(island, isOnChassis, (terminal) => rootOf[terminal] ?? terminal);
  const isFixed = (point: number): boolean => isOnChassis(point) || fixed.has(point);
  const neighbours: Lists<number, PlacedBranch> = new Map();
  for (const placed of island.branches) {
    listAt(neighbours, placed.from).push(placed);
    listAt(neighbours, placed.to).push(placed);
  }
  const regions = new Map<number, Region>();
  for (const start of island.points) {
    if (regions.has(start) || isOnChassis(start)) continue;
    const feeds = fixed.get(start);
    if (feeds) regions.set(start, close(new Set(feeds), []));
    else gather(start);
  }
  return (point) => regions.get(point);

  /** From a point on to all that hangs together with it. */
  function gather(start: number): void {
    const members = new Set([start]);
    const feeds = new Set<Feed>();
    const open: OpenEnd[] = [];
    for (const point of members) {
      for (const end of openAt.get(point) ?? []) if (counts[name].has(end.effect)) open.push(end);
      for (const placed of neighbours.get(point) ?? []) {
        const far = placed.from === point ? placed.to : placed.from;
        if (isSource(placed)) feeds.add(feedOf(placed));
        if (!isFixed(far)) members.add(far);
        else if (placed.branch.kind !== 'load')
          for (const feed of fixed.get(far) ?? []) feeds.add(feed);
      }
    }
    const region = close(inOrder(feeds, island), inTerminalOrder(open));
    for (const point of members) regions.set(point, region);
  }
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

/** Whatever way the island was walked, its feeds are named in one order. */
function inOrder(feeds: ReadonlySet<Feed>, { branches, held }: SolvedIsland): ReadonlySet<Feed> {
  if (feeds.size < 2) return feeds;
  const order = new Map<PlacedBranch | HeldNet, number>();
  for (const branch of branches) order.set(branch, order.size);
  for (const net of held.values()) order.set(net, order.size);
  const placeOf = (feed: Feed): number =>
    order.get(feed.kind === 'source' ? feed.branch : feed.net) ?? -1;
  return new Set([...feeds].sort((a, b) => placeOf(a) - placeOf(b)));
}

const inTerminalOrder = (open: readonly OpenEnd[]): readonly OpenEnd[] =>
  [...open].sort((a, b) => a.terminal - b.terminal);

/** Points at fixed volts from the chassis, with what fixes them: by way of sources and joins without
 *  resistance, or because their net is held. */
function findFixed(
  { branches, held }: SolvedIsland,
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
  for (const net of held.values()) {
    const feeds: readonly Feed[] = [{ kind: 'held', net }];
    const all = net.feed === null ? net.net.points.map(rootOf) : [net.feed];
    for (const point of all) fixed.set(point, feeds);
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
