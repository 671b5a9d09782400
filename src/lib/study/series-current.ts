// Current is each wire's own: it divides at every lug. Only where two wires meet at a point with
// nothing else on it do both carry the same, and one that declares it speaks for the other.
import type { Id } from '#document/index.ts';
import { wireName } from './amounts.ts';
import type { WireSlot, WiresIndex } from './index-wires.ts';
import { isOnMetal, joinsItsEnds, type Points } from './points.ts';
import { keepFields, keepMap } from './same.ts';
import type { Amount } from './types.ts';

/** Parts whose terminals pass current on and take none. */
const passing: ReadonlySet<string> = new Set([
  'terminal strip',
  'splice',
  'plug',
  'jack',
  'fuse',
  'switch'
]);

export type SeriesAmps = ReadonlyMap<Id, Amount>;

/** Amperes of wires that declare none themselves, by wire id.
 *  @param before given again where no wire was moved and none declares another current */
export function spreadSeriesCurrent(
  wires: WiresIndex,
  points: Points,
  before?: {
    readonly wires: WiresIndex | undefined;
    readonly points: Points | undefined;
    readonly amps: SeriesAmps;
  }
): SeriesAmps {
  if (before?.wires && before.points?.rootOf === points.rootOf) {
    const isSame =
      before.points.source.parts === points.source.parts && declareAlike(before.wires, wires);
    if (isSame) return before.amps;
  }
  const known = reckon(wires, points);
  const kept = new Map<Id, Amount>();
  for (const [id, amount] of known) kept.set(id, keepFields(before?.amps.get(id), amount));
  return keepMap(before?.amps, kept);
}

function reckon({ slots, slotById }: WiresIndex, points: Points): SeriesAmps {
  const amps = new Map<Id, Amount>();
  if (!slots.some(({ wire }) => wire.carries.amps !== undefined)) return amps;
  const neighbours = pairUp(slots, points);
  for (const { wire } of slots) {
    const value = wire.carries.amps;
    if (value === undefined) continue;
    const basis = `in series with ${wireName(wire)}`;
    const queue = [...(neighbours.get(wire.id) ?? [])];
    for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
      const known = amps.get(id);
      const declares = slotById.get(id)?.wire.carries.amps !== undefined;
      if (declares || (known && known.value >= value)) continue;
      amps.set(id, { value, how: 'net', basis });
      queue.push(...(neighbours.get(id) ?? []));
    }
  }
  return amps;
}

/** The same wires between the same terminals, with the same currents and names. */
function declareAlike(before: WiresIndex, now: WiresIndex): boolean {
  if (before === now) return true;
  if (before.slots.length !== now.slots.length) return false;
  return now.slots.every((slot, n) => {
    const was = before.slots[n];
    if (was === slot) return true;
    return (
      was?.wire.id === slot.wire.id &&
      was.from === slot.from &&
      was.to === slot.to &&
      was.wire.isPart === slot.wire.isPart &&
      was.wire.number === slot.wire.number &&
      was.wire.carries.amps === slot.wire.carries.amps
    );
  });
}

/** For each wire, those that meet it at a point where there is nothing else. */
function pairUp(slots: readonly WireSlot[], points: Points): ReadonlyMap<Id, readonly Id[]> {
  const busy = busyPoints(points);
  const meeting = new Map<number, WireSlot[]>();
  for (const slot of slots) {
    for (const end of [slot.from, slot.to]) {
      const root = end && points.rootOf[end.number];
      if (root === undefined || busy.has(root)) continue;
      const here = meeting.get(root);
      if (here) here.push(slot);
      else meeting.set(root, [slot]);
    }
  }
  const neighbours = new Map<Id, Id[]>();
  const pair = ({ wire }: WireSlot, other: WireSlot) => {
    const known = neighbours.get(wire.id);
    if (known) known.push(other.wire.id);
    else neighbours.set(wire.id, [other.wire.id]);
  };
  for (const [first, second, third] of meeting.values()) {
    if (!first || !second || third || first === second) continue;
    if (!joinsItsEnds(first.wire) || !joinsItsEnds(second.wire)) continue;
    pair(first, second);
    pair(second, first);
  }
  return neighbours;
}

const busyOf = new WeakMap<Points, ReadonlySet<number>>();

/** Points with something on them that may take a part of the current. */
function busyPoints(points: Points): ReadonlySet<number> {
  const known = busyOf.get(points);
  if (known) return known;
  const busy = new Set<number>();
  for (const { number, part, terminal } of points.source.parts.terminals) {
    if (!passing.has(part.kind) || isOnMetal(part, terminal.grounded)) {
      busy.add(points.rootOf[number] ?? number);
    }
  }
  busyOf.set(points, busy);
  return busy;
}
