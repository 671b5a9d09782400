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
  const pairs = pairUp(slots, points, busyPoints(points));
  const neighbours = (id: Id): readonly Id[] => {
    const slot = slotById.get(id);
    return slot ? pairs(slot) : [];
  };
  for (const { wire } of slots) {
    const value = wire.carries.amps;
    if (value === undefined) continue;
    const basis = `in series with ${wireName(wire)}`;
    const queue = [...neighbours(wire.id)];
    for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
      const known = amps.get(id);
      const declares = slotById.get(id)?.wire.carries.amps !== undefined;
      if (declares || (known && known.value >= value)) continue;
      amps.set(id, { value, how: 'net', basis });
      queue.push(...neighbours(id));
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

/** For any wire, those that meet it at a point where there is nothing else. */
function pairUp(
  slots: readonly WireSlot[],
  { rootOf }: Points,
  busy: Uint8Array
): (slot: WireSlot) => readonly Id[] {
  // By point: how many ends there are, and the places of the first two among the wires.
  const ends = new Uint8Array(rootOf.length);
  const firstAt = new Int32Array(rootOf.length);
  const secondAt = new Int32Array(rootOf.length);
  const visit = (end: WireSlot['from'], n: number): void => {
    const root = end && rootOf[end.number];
    if (root === undefined || busy[root] === 1) return;
    const many = ends[root] ?? 0;
    if (many < 3) ends[root] = many + 1;
    if (many === 0) firstAt[root] = n;
    else if (many === 1) secondAt[root] = n;
  };
  for (let n = 0; n < slots.length; n++) {
    visit(slots[n]?.from, n);
    visit(slots[n]?.to, n);
  }
  return (slot) =>
    [slot.from, slot.to].flatMap((end) => {
      const root = end && rootOf[end.number];
      if (root === undefined || ends[root] !== 2) return [];
      const [first, second] = [slots[firstAt[root] ?? -1], slots[secondAt[root] ?? -1]];
      if (!first || !second || first === second) return [];
      if (!joinsItsEnds(first.wire) || !joinsItsEnds(second.wire)) return [];
      return [(first === slot ? second : first).wire.id];
    });
}

const busyOf = new WeakMap<Points, Uint8Array>();

/** By point, 1 where something is on it that may take a part of the current. */
function busyPoints(points: Points): Uint8Array {
  const known = busyOf.get(points);
  if (known) return known;
  const busy = new Uint8Array(points.rootOf.length);
  for (const { number, part, terminal } of points.source.parts.terminals) {
    if (!passing.has(part.kind) || isOnMetal(part, terminal.grounded)) {
      busy[points.rootOf[number] ?? number] = 1;
    }
  }
  busyOf.set(points, busy);
  return busy;
}
