// What makes a circuit impossible or leaves it in the air, named branch by branch.
import type { Branch, NetworkFault } from './circuit.ts';

/** The loop of ideal branches that shorts a source, by the shortest way. */
export const shortThrough = (branch: Branch, ideal: readonly Branch[]): NetworkFault => {
  const cameBy = new Map<string, Branch>();
  const seen = new Set([branch.from]);
  const queue = [branch.from];
  for (let node = queue.shift(); node !== undefined && node !== branch.to; node = queue.shift())
    for (const next of ideal) {
      if (next === branch) continue;
      const far = next.from === node ? next.to : next.to === node ? next.from : undefined;
      if (far === undefined || seen.has(far)) continue;
      seen.add(far);
      cameBy.set(far, next);
      queue.push(far);
    }
  const loop: Branch[] = [branch];
  for (let node = branch.to; node !== branch.from;) {
    const by = cameBy.get(node);
    if (!by) break;
    loop.push(by);
    node = by.from === node ? by.to : by.from;
  }
  return {
    kind: 'shorted',
    nodes: [...new Set(loop.flatMap(({ from, to }) => [from, to]))],
    branches: loop.map(({ id }) => id)
  };
};

/** The islands that no branch ties to the chassis, with what lies in them. */
export const floatingIslands = (
  names: readonly string[],
  branches: readonly Branch[],
  nodeOf: ReadonlyMap<string, number>,
  islandOf: (node: number) => number
): NetworkFault[] => {
  const islands = new Map<number, { nodes: string[]; branches: string[] }>();
  names.forEach((name, node) => {
    const island = islandOf(node);
    if (island === 0) return;
    const known = islands.get(island) ?? { nodes: [], branches: [] };
    known.nodes.push(name);
    islands.set(island, known);
  });
  for (const branch of branches)
    islands.get(islandOf(nodeOf.get(branch.from) ?? 0))?.branches.push(branch.id);
  return [...islands.values()].map((island) => ({ kind: 'floating' as const, ...island }));
};
