// The wires in their order with the terminals that they end at. A wire that nobody touched, between
// terminals that nobody touched, keeps its slot: the mark by which later steps know it.
import type { ChassisDocument, Id, Wire } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { findElement } from '#document/references.ts';
import { changedKeys, keepItems, patchMap } from './same.ts';
import { terminalKey } from './terminal-key.ts';
import type { PartsIndex } from './index-parts.ts';
import type { TerminalEntry } from './types.ts';

export interface WireSlot {
  readonly wire: Wire;
  /** Undefined where nobody found the end, or its terminal is missing. */
  readonly from: TerminalEntry | undefined;
  readonly to: TerminalEntry | undefined;
}

export interface WiresIndex {
  readonly source: ChassisDocument['wires'];
  readonly parts: PartsIndex;
  readonly wires: readonly Wire[];
  readonly slots: readonly WireSlot[];
  readonly slotById: ReadonlyMap<Id, WireSlot>;
}

/** The wires of a document, and where they end. */
export function indexWires(
  source: ChassisDocument['wires'],
  parts: PartsIndex,
  before?: WiresIndex
): WiresIndex {
  if (before?.source === source && before.parts === parts) return before;
  const patched = before?.parts === parts ? patchWires(source, before) : null;
  if (patched) return patched;
  const wires = sortByOrder(source);
  const slotById = new Map<Id, WireSlot>();
  const slots = wires.map((wire) => {
    const slot = slotOf(wire, parts, before?.slotById.get(wire.id));
    slotById.set(wire.id, slot);
    return slot;
  });
  return { source, parts, wires: keepItems(before?.wires, wires), slots, slotById };
}

/** The index with some of its wires changed; null where one came, went or took another place. */
function patchWires(source: ChassisDocument['wires'], before: WiresIndex): WiresIndex | null {
  if (Object.keys(source).length !== before.wires.length) return null;
  const changed: (readonly [number, Wire])[] = [];
  for (let n = 0; n < before.wires.length; n++) {
    const old = before.wires[n];
    const wire = old && findElement(source, old.id);
    if (!wire || wire.order !== old.order) return null;
    if (wire !== old) changed.push([n, wire]);
  }
  const wires = before.wires.slice();
  const slots = before.slots.slice();
  const made = new Map<Id, WireSlot>();
  for (const [n, wire] of changed) {
    const slot = slotOf(wire, before.parts, undefined);
    wires[n] = wire;
    slots[n] = slot;
    made.set(wire.id, slot);
  }
  const slotById = patchMap(before.slotById, made.keys(), (id) => made.get(id));
  return { source, parts: before.parts, wires, slots, slotById };
}

function slotOf(wire: Wire, parts: PartsIndex, known: WireSlot | undefined): WireSlot {
  const from = findAt(parts, wire.from);
  const to = findAt(parts, wire.to);
  return known?.wire === wire && known.from === from && known.to === to
    ? known
    : { wire, from, to };
}

/** The terminal that an end is at; undefined where nobody found it, or it is missing. */
export const findAt = (parts: PartsIndex, end: Wire['from']): TerminalEntry | undefined =>
  end.at && parts.terminalByKey.get(terminalKey(end.at.part, end.at.terminal));

/** What became of the wires since the study before. */
export interface WireChanges {
  /** Those that are not what they were, and those that are new. */
  readonly touched: ReadonlySet<Id>;
  readonly gone: ReadonlySet<Id>;
}

export function compareWires(now: WiresIndex, before: WiresIndex | undefined): WireChanges {
  const touched = changedKeys(before?.slotById, now.slotById);
  const gone = new Set<Id>();
  for (const { wire } of before && before !== now ? before.slots : []) {
    if (!now.slotById.has(wire.id)) gone.add(wire.id);
  }
  return { touched, gone };
}
