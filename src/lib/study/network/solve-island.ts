// One island handed to the solver, as its own sources have it or held at what people declared.
import { solveNetwork, type Branch } from '#physics/network/index.ts';
import type { NetGroup } from '../group-nets.ts';
import type { Amount } from '../types.ts';
import { nodeName, type PlacedBranch } from './branches.ts';
import type { Island } from './islands.ts';

/** A net held at a voltage. Where it is known at which point it is fed, its own wires count; otherwise
 *  it is all one point. */
export interface HeldNet {
  readonly net: NetGroup;
  readonly amount: Amount;
  readonly feed: number | null;
}
export type HeldNets = ReadonlyMap<NetGroup, HeldNet>;

export interface IslandSolution {
  /** Volts of a point to the chassis; in an island that floats, to its own `origin`. Null where
   *  nothing tells. */
  readonly voltsAt: (point: number) => number | null;
  /** Amperes of a branch from where it starts to where it ends; null where nothing tells. */
  readonly ampsOf: (branch: string) => number | null;
  /** The point that volts are counted from; null for the chassis. */
  readonly origin: number | null;
  /** Sources, and what joins them, that contradict each other. */
  readonly shorted: readonly string[];
  /** Loads that could draw their current only by standing below where they return it. */
  readonly starved: readonly PlacedBranch[];
}

/** Less than that the wrong way round is a matter of rounding and contact potentials, V. */
const least = 0.5;

/** @param groupAt by point, the net that it is on */
export function solveIsland(
  island: Island,
  chassis: number,
  held: HeldNets,
  groupAt: readonly NetGroup[]
): IslandSolution {
  const nodeOf = nodeNames(held, groupAt);
  const { branches, drops } = bindBranches(island, chassis, held, nodeOf);
  const { volts, amps, faults } = solveNetwork({ branches, reference: [nodeName(chassis)] });
  const floats = !island.touchesChassis && held.size === 0;
  const plain = (point: number): number | null =>
    point === chassis ? 0 : (volts.get(nodeOf(point)) ?? null);
  const origin = floats ? lowestPoint(island, plain) : null;
  const originV = origin === null ? 0 : (plain(origin) ?? 0);
  const voltsAt = (point: number): number | null => {
    const own = plain(point);
    return own === null ? null : own - originV;
  };
  const starved = island.branches.filter(({ branch, from, to }) => {
    const above = voltsAt(from);
    const below = voltsAt(to);
    if (branch.kind !== 'load' || branch.amps === 0) return false;
    return above !== null && below !== null && above < below - least;
  });
  const isStarved = starved.length > 0 || faults.some(({ kind }) => kind === 'starved');
  return {
    voltsAt: isStarved ? () => null : voltsAt,
    ampsOf: (branch) => (isStarved || drops.has(branch) ? null : (amps.get(branch) ?? null)),
    origin,
    shorted: faults.filter(({ kind }) => kind === 'shorted').flatMap((fault) => fault.branches),
    starved: starved.length > 0 || !isStarved ? starved : island.branches.filter(isLoad)
  };
}

const isLoad = ({ branch }: PlacedBranch): boolean => branch.kind === 'load' && branch.amps > 0;

function nodeNames(held: HeldNets, groupAt: readonly NetGroup[]): (point: number) => string {
  if (held.size === 0) return nodeName;
  return (point) => {
    const net = groupAt[point];
    return net && held.get(net)?.feed === null ? `net ${net.id}` : nodeName(point);
  };
}

/** The branches between nodes. Inside a net that is one node no current is known; a source without
 *  resistance between two held nodes has nothing more to say, since declared volts win. */
function bindBranches(
  island: Island,
  chassis: number,
  held: HeldNets,
  nodeOf: (point: number) => string
): { branches: readonly Branch[]; drops: ReadonlySet<string> } {
  if (held.size === 0) {
    return { branches: island.branches.map(({ branch }) => branch), drops: new Set() };
  }
  const ground = nodeName(chassis);
  const fixed = new Set([ground]);
  const branches: Branch[] = [];
  const drops = new Set<string>();
  for (const [net, { amount, feed }] of held) {
    const node = feed === null ? `net ${net.id}` : nodeName(feed);
    fixed.add(node);
    const id = `declared ${net.id}`;
    branches.push({ kind: 'source', id, from: ground, to: node, volts: amount.value, ohms: 0 });
  }
  for (const { branch, from, to } of island.branches) {
    const ends = { from: nodeOf(from), to: nodeOf(to) };
    const isTied = fixed.has(ends.from) && fixed.has(ends.to);
    const isIdeal = branch.kind === 'join' || (branch.kind === 'source' && branch.ohms === 0);
    if (ends.from === ends.to || (isTied && isIdeal)) drops.add(branch.id);
    else if (branch.kind === 'source') {
      branches.push({ ...branch, from: ends.to, to: ends.from });
    } else branches.push({ ...branch, ...ends });
  }
  return { branches, drops };
}

function lowestPoint(island: Island, voltsAt: (point: number) => number | null): number | null {
  let lowest: number | null = null;
  let least = Infinity;
  for (const point of island.points) {
    const volts = voltsAt(point);
    if (volts !== null && volts < least) {
      least = volts;
      lowest = point;
    }
  }
  return lowest;
}
