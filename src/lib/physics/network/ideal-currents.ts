// Currents in branches without resistance. Ohm says nothing of them; Kirchhoff does, where the
// branch is the only path between its two sides. In a ring of such branches nothing tells how the
// current is shared, and the answer is null, not a guess.

export interface IdealEdge {
  readonly id: string;
  readonly from: number;
  readonly to: number;
}

/** Amperes from `from` to `to` of each ideal branch, or null inside a ring.
 *  @param count number of nodes
 *  @param inflowA current that all other branches bring into each node, amperes; NaN where not known */
export const idealCurrents = (
  count: number,
  edges: readonly IdealEdge[],
  inflowA: Float64Array
): Map<string, number | null> => {
  const incident: number[][] = Array.from({ length: count }, () => []);
  edges.forEach((edge, index) => {
    incident[edge.from]?.push(index);
    incident[edge.to]?.push(index);
  });
  const amps = new Map<string, number | null>();
  const order = new Int32Array(count).fill(-1);
  const low = new Int32Array(count);
  const flow = Float64Array.from(inflowA); // of the subtree hanging below each node
  let clock = 0;

  // Depth first without recursion: a long daisy chain must not meet a stack limit.
  for (let start = 0; start < count; start += 1) {
    if (order[start] !== -1 || (incident[start]?.length ?? 0) === 0) continue;
    const stack: { node: number; via: number; next: number }[] = [
      { node: start, via: -1, next: 0 }
    ];
    order[start] = low[start] = clock++;
    while (stack.length > 0) {
      const top = stack[stack.length - 1];
      if (!top) break;
      const index = incident[top.node]?.[top.next];
      top.next += 1;
      if (index === undefined) {
        stack.pop();
        const parent = stack[stack.length - 1];
        const edge = edges[top.via];
        if (!parent || !edge) continue;
        low[parent.node] = Math.min(low[parent.node] ?? 0, low[top.node] ?? 0);
        const below = flow[top.node] ?? 0;
        flow[parent.node] = (flow[parent.node] ?? 0) + below;
        const isBridge = (low[top.node] ?? 0) > (order[parent.node] ?? 0);
        // What flows into the subtree below must leave it through the bridge.
        amps.set(
          edge.id,
          !isBridge || Number.isNaN(below) ? null : edge.from === top.node ? below : -below
        );
        continue;
      }
      if (index === top.via) continue;
      const edge = edges[index];
      if (!edge) continue;
      const far = edge.from === top.node ? edge.to : edge.from;
      if (order[far] === -1) {
        order[far] = low[far] = clock++;
        stack.push({ node: far, via: index, next: 0 });
      } else {
        low[top.node] = Math.min(low[top.node] ?? 0, order[far] ?? 0);
        if (!amps.has(edge.id)) amps.set(edge.id, null);
      }
    }
  }
  return amps;
};
