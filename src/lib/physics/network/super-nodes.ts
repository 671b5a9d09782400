// Joins and ideal sources tie nodes together at fixed differences of potential. Each such group
// becomes one unknown (a super-node), which leaves a matrix of conductances alone to be solved.
import type { Branch } from './circuit.ts';

export interface SuperNodes {
  /** Node to the number of its group; group 0 holds the chassis. */
  readonly groupOf: readonly number[];
  /** Volts of a node above its group's potential. */
  readonly offsetV: readonly number[];
  readonly count: number;
  /** Ideal branches that contradict the rest: a short across a source. */
  readonly contradictions: readonly Branch[];
}

const isIdeal = (branch: Branch): boolean =>
  branch.kind === 'join' ||
  (branch.kind === 'source' && branch.ohms === 0) ||
  (branch.kind === 'resistance' && branch.ohms === 0);

/** The branches that hold a fixed difference: joins, sources and resistances of 0 ohm. */
export const idealBranches = (branches: readonly Branch[]): Branch[] => branches.filter(isIdeal);

/** Union with offsets over the ideal branches.
 *  @param nodeOf the number of a node by its name
 *  @param reference numbers of the nodes at 0 V */
export const buildSuperNodes = (
  branches: readonly Branch[],
  nodeOf: ReadonlyMap<string, number>,
  reference: readonly number[]
): SuperNodes => {
  const size = nodeOf.size;
  const parent = Int32Array.from({ length: size }, (_, node) => node);
  const above = new Float64Array(size); // volts above the parent
  const find = (node: number): { root: number; volts: number } => {
    let root = node;
    let volts = 0;
    while (parent[root] !== undefined && parent[root] !== root) {
      volts += above[root] ?? 0;
      root = parent[root] ?? root;
    }
    // Path compression: every node on the way now hangs from the root.
    let rest = volts;
    for (let at = node; at !== root;) {
      const next = parent[at] ?? root;
      const step = above[at] ?? 0;
      parent[at] = root;
      above[at] = rest;
      rest -= step;
      at = next;
    }
    return { root, volts };
  };
  /** Ties `to` at `volts` above `from`; false where the two are already tied otherwise. */
  const tie = (from: number, to: number, volts: number): boolean => {
    const low = find(from);
    const high = find(to);
    if (low.root === high.root) {
      const gap = Math.abs(high.volts - low.volts - volts);
      return gap <= 1e-9 * Math.max(1, Math.abs(volts));
    }
    parent[high.root] = low.root;
    above[high.root] = low.volts + volts - high.volts;
    return true;
  };

  const [chassis, ...others] = reference;
  if (chassis !== undefined) for (const node of others) tie(chassis, node, 0);
  const contradictions: Branch[] = [];
  for (const branch of idealBranches(branches)) {
    const from = nodeOf.get(branch.from);
    const to = nodeOf.get(branch.to);
    if (from === undefined || to === undefined) continue;
    if (!tie(from, to, branch.kind === 'source' ? branch.volts : 0)) contradictions.push(branch);
  }

  const groups = new Map<number, number>();
  const chassisFound = chassis === undefined ? undefined : find(chassis);
  if (chassisFound) groups.set(chassisFound.root, 0);
  const groupOf: number[] = [];
  const offsetV: number[] = [];
  let count = 1;
  for (let node = 0; node < size; node += 1) {
    const { root, volts } = find(node);
    let group = groups.get(root);
    if (group === undefined) {
      group = count;
      count += 1;
      groups.set(root, group);
    }
    groupOf.push(group);
    // The chassis group is measured to the chassis, whatever node became its root.
    offsetV.push(group === 0 && chassisFound ? volts - chassisFound.volts : volts);
  }
  return { groupOf, offsetV, count, contradictions };
};
