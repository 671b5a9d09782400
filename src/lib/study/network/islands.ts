// A circuit falls apart into islands: what hangs together when the chassis is taken away. Each is solved
// alone, and an island in which nothing changed is not solved again.
import { DisjointSets } from '../disjoint-sets.ts';
import type { GroupedNets, NetGroup } from '../group-nets.ts';
import type { Points } from '../points.ts';
import type { PlacedBranch } from './branches.ts';

export interface Island {
  /** In the order of the circuit. */
  readonly branches: readonly PlacedBranch[];
  /** Its points, the chassis not among them. */
  readonly points: readonly number[];
  /** The nets of those points but for that of the chassis, which is no island's own. */
  readonly groups: readonly NetGroup[];
  readonly touchesChassis: boolean;
}

interface OpenIsland {
  branches: PlacedBranch[];
  points: number[];
  groups: Set<NetGroup>;
  touchesChassis: boolean;
}

/** The islands of a circuit, by their first branch. Branches from a point to itself are left out. */
export function findIslands(
  branches: readonly PlacedBranch[],
  points: Points,
  { groupAt }: GroupedNets
): readonly Island[] {
  const chassis = points.rootOf[points.chassis] ?? points.chassis;
  const sets = new DisjointSets(points.rootOf.length);
  for (const { from, to } of branches) {
    if (from !== chassis && to !== chassis) sets.join(from, to);
  }
  const islands = new Map<number, OpenIsland>();
  const seen = new Uint8Array(points.rootOf.length);
  const visit = (island: OpenIsland, point: number): void => {
    if (point === chassis) island.touchesChassis = true;
    else if (seen[point] === 0) {
      seen[point] = 1;
      island.points.push(point);
      const group = groupAt[point];
      if (group && !group.isChassis) island.groups.add(group);
    }
  };
  for (const placed of branches) {
    const { from, to } = placed;
    if (from === to) continue;
    const root = sets.rootOf(from === chassis ? to : from);
    let island = islands.get(root);
    if (!island) {
      island = { branches: [], points: [], groups: new Set(), touchesChassis: false };
      islands.set(root, island);
    }
    island.branches.push(placed);
    visit(island, from);
    visit(island, to);
  }
  return [...islands.values()].map((island) => ({ ...island, groups: [...island.groups] }));
}
