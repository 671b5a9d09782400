// Current is each wire's own: it divides at every lug. Only where two wires meet at a point with
// nothing else on it do both carry the same, and one that declares it speaks for the other.
import type { Id, Wire } from '#document/index.ts';
import { wireName } from './amounts.ts';
import type { DisjointSets } from './disjoint-sets.ts';
import { isOnMetal, joinsItsEnds } from './join-points.ts';
import type { Amount, DocumentIndex } from './types.ts';

/** Parts whose terminals pass current on and take none. */
const passing: ReadonlySet<string> = new Set([
  'terminal strip',
  'splice',
  'plug',
  'jack',
  'fuse',
  'switch'
]);

/** Amperes of wires that declare none themselves, by wire id. */
export function spreadSeriesCurrent(
  index: DocumentIndex,
  withoutWires: DisjointSets
): ReadonlyMap<Id, Amount> {
  const amps = new Map<Id, Amount>();
  if (!index.wires.some((wire) => wire.carries.amps !== undefined)) return amps;
  const neighbours = pairUp(index, withoutWires);
  for (const wire of index.wires) {
    const value = wire.carries.amps;
    if (value === undefined) continue;
    const basis = `in series with ${wireName(wire)}`;
    const queue = [...(neighbours.get(wire.id) ?? [])];
    for (let next = queue.pop(); next; next = queue.pop()) {
      const known = amps.get(next.id);
      if (next.carries.amps !== undefined || (known && known.value >= value)) continue;
      amps.set(next.id, { value, how: 'net', basis });
      queue.push(...(neighbours.get(next.id) ?? []));
    }
  }
  return amps;
}

/** For each wire, those that meet it at a point where there is nothing else. */
function pairUp(index: DocumentIndex, withoutWires: DisjointSets): ReadonlyMap<Id, Wire[]> {
  const meeting = new Map<number, { wires: Wire[]; alone: boolean }>();
  for (const { key, number, part, terminal } of index.terminals) {
    const root = withoutWires.rootOf(number);
    const point = meeting.get(root) ?? { wires: [], alone: true };
    meeting.set(root, point);
    if (!passing.has(part.kind) || isOnMetal(part, terminal.grounded)) point.alone = false;
    point.wires.push(...(index.wiresAt.get(key) ?? []));
  }
  const neighbours = new Map<Id, Wire[]>();
  const pair = (wire: Wire, other: Wire) => {
    const known = neighbours.get(wire.id);
    if (known) known.push(other);
    else neighbours.set(wire.id, [other]);
  };
  for (const { wires, alone } of meeting.values()) {
    const [first, second] = wires;
    if (!alone || wires.length !== 2 || !first || !second || first === second) continue;
    if (!joinsItsEnds(first) || !joinsItsEnds(second)) continue;
    pair(first, second);
    pair(second, first);
  }
  return neighbours;
}
