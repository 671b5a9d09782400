// Solves a network of conductances by taking out one node after another (star to mesh), the one
// with the fewest neighbours first: ends of trees, then series runs, then the rest. This is the
// sparse symmetric factorisation with a minimum-degree order, written so that conductances are
// only ever added: no digits are lost where milliohms of wire meet megohms of a bleeder.

/** A conductance in siemens between two nodes; node 0 is the fixed one. */
export interface Conductance {
  readonly from: number;
  readonly to: number;
  readonly siemens: number;
}

interface Taken {
  readonly node: number;
  readonly neighbours: readonly number[];
  readonly siemens: readonly number[];
  readonly sum: number;
}

/** Nodes by their number of neighbours, the smallest first; stale entries are passed over. */
class DegreeQueue {
  readonly #buckets: number[][] = [];
  #least = 0;

  push(node: number, degree: number): void {
    (this.#buckets[degree] ??= []).push(node);
    if (degree < this.#least) this.#least = degree;
  }

  /** The next node whose degree is still what it was when it was queued. */
  pop(degreeOf: (node: number) => number): number | undefined {
    while (this.#least < this.#buckets.length) {
      const bucket = this.#buckets[this.#least];
      const node = bucket?.pop();
      if (node === undefined) this.#least += 1;
      else if (degreeOf(node) === this.#least) return node;
    }
    return undefined;
  }
}

/** Potentials of all nodes against their island's fixed node, in volts.
 *  @param count number of nodes; node 0 stands at 0 V
 *  @param injectedA current pressed into each node from outside, amperes
 *  @returns for each node its volts and the fixed node of its island: 0, or, in an island with no
 *    path to node 0, the node of that island that was left over; and `leftoverA`, the current that
 *    has no way out of each such island (0 where the island's own loads and sources balance) */
export const solveConductances = (
  count: number,
  conductances: readonly Conductance[],
  injectedA: Float64Array
): { volts: Float64Array; fixed: Int32Array; leftoverA: ReadonlyMap<number, number> } => {
  const adjacent: Map<number, number>[] = Array.from({ length: count }, () => new Map());
  const add = (from: number, to: number, siemens: number): void => {
    const near = adjacent[from];
    const far = adjacent[to];
    if (!near || !far || from === to) return;
    near.set(to, (near.get(to) ?? 0) + siemens);
    far.set(from, (far.get(from) ?? 0) + siemens);
  };
  for (const { from, to, siemens } of conductances) add(from, to, siemens);

  const current = Float64Array.from(injectedA);
  const queue = new DegreeQueue();
  const gone = new Uint8Array(count);
  const degreeOf = (node: number): number => (gone[node] ? -1 : (adjacent[node]?.size ?? 0));
  for (let node = 1; node < count; node += 1) queue.push(node, degreeOf(node));

  const taken: Taken[] = [];
  const leftoverA = new Map<number, number>();
  const volts = new Float64Array(count);
  const fixed = new Int32Array(count).fill(-1);
  if (count > 0) fixed[0] = 0;

  for (let node = queue.pop(degreeOf); node !== undefined; node = queue.pop(degreeOf)) {
    gone[node] = 1;
    const around = adjacent[node] ?? new Map<number, number>();
    if (around.size === 0) {
      // The last of an island without a path to node 0: its own origin.
      fixed[node] = node;
      leftoverA.set(node, current[node] ?? 0);
      continue;
    }
    const neighbours = [...around.keys()];
    const siemens = [...around.values()];
    const sum = siemens.reduce((total, value) => total + value, 0);
    taken.push({ node, neighbours, siemens, sum });
    for (const neighbour of neighbours) adjacent[neighbour]?.delete(node);
    neighbours.forEach((near, index) => {
      const share = (siemens[index] ?? 0) / sum;
      current[near] = (current[near] ?? 0) + share * (current[node] ?? 0);
      for (let other = index + 1; other < neighbours.length; other += 1)
        add(near, neighbours[other] ?? 0, share * (siemens[other] ?? 0));
    });
    for (const neighbour of neighbours)
      if (neighbour !== 0) queue.push(neighbour, degreeOf(neighbour));
    around.clear();
  }

  for (const { node, neighbours, siemens, sum } of taken.reverse()) {
    let total = current[node] ?? 0;
    neighbours.forEach((near, index) => {
      total += (siemens[index] ?? 0) * (volts[near] ?? 0);
    });
    volts[node] = total / sum;
    fixed[node] = fixed[neighbours[0] ?? 0] ?? 0;
  }
  return { volts, fixed, leftoverA };
};
