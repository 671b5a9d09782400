// Alternating volts of windings. They add up from a point that is held, the chassis or a rail, on
// outwards. A winding that floats may have either side grounded by accident, so its whole volts
// count on every net of it.
import type { PlacedElement } from './circuit-elements.ts';
import type { NetGroup } from './group-nets.ts';
import { listAt, type Lists } from './lists.ts';

interface Winding {
  readonly a: NetGroup;
  readonly b: NetGroup;
  readonly volts: number;
  readonly by: string;
}

export interface WindingVolts {
  readonly net: NetGroup;
  readonly volts: number;
  readonly basis: string;
  /** Nothing holds any side of it. */
  readonly floats: boolean;
}

/** Volts rms that windings put on nets.
 *  @param isHeld the net has no alternating volts of its own: the chassis, or a rail */
export function windingVolts(
  elements: readonly PlacedElement[],
  isHeld: (net: NetGroup) => boolean
): WindingVolts[] {
  const at: Lists<NetGroup, Winding> = new Map();
  for (const { part, values, from, to } of elements) {
    if (values.kind !== 'source' || values.current !== 'ac' || from === to) continue;
    const winding = { a: from, b: to, volts: Math.abs(values.volts), by: part.reference };
    listAt(at, from).push(winding);
    listAt(at, to).push(winding);
  }
  const seen = new Set<NetGroup>();
  const nets = [...at.keys()].sort((a, b) => (a.id < b.id ? -1 : 1));
  const inOrder = [...nets.filter(isHeld), ...nets.filter((net) => !isHeld(net))];
  return inOrder.flatMap((start) => (seen.has(start) ? [] : group(start, at, seen, isHeld)));
}

/** All windings that hang together with a net. */
function group(
  start: NetGroup,
  at: ReadonlyMap<NetGroup, readonly Winding[]>,
  seen: Set<NetGroup>,
  isHeld: (net: NetGroup) => boolean
): WindingVolts[] {
  const reached = new Map([[start, { volts: 0, by: '' }]]);
  const counted = new Set<Winding>();
  const queue = [start];
  seen.add(start);
  for (const net of queue) {
    const volts = reached.get(net)?.volts ?? 0;
    for (const winding of at.get(net) ?? []) {
      counted.add(winding);
      const other = winding.a === net ? winding.b : winding.a;
      if (reached.has(other)) continue;
      const above = isHeld(other) ? 0 : volts + winding.volts;
      reached.set(other, { volts: above, by: winding.by });
      seen.add(other);
      queue.push(other);
    }
  }
  if (isHeld(start)) {
    return [...reached]
      .filter(([net]) => !isHeld(net))
      .map(([net, { volts, by }]) => ({ net, volts, basis: `winding of ${by}`, floats: false }));
  }
  const windings = [...counted];
  const total = windings.reduce((sum, { volts }) => sum + volts, 0);
  const basis = `winding of ${windings[0]?.by ?? ''}, either side`;
  return [...reached.keys()].map((net) => ({ net, volts: total, basis, floats: true }));
}
