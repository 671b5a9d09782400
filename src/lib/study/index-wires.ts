// The wires in their order with the terminals that they end at. A wire that nobody touched, between
// terminals that nobody touched, keeps its slot: the mark by which later steps know it.
import type { ChassisDocument, Id, Wire } from '#document/index.ts';
import { compareByOrder, sortByOrder } from '#document/order.ts';
import { findElement } from '#document/references.ts';
import { keepItems } from './same.ts';
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
  const wires = keepItems(before?.wires, sortAgain(source, before));
  const slotById = new Map<Id, WireSlot>();
  const slots = wires.map((wire) => {
    const slot = slotOf(wire, parts, before);
    slotById.set(wire.id, slot);
    return slot;
  });
  return { source, parts, wires, slots, slotById };
}

function slotOf(wire: Wire, parts: PartsIndex, before?: WiresIndex): WireSlot {
  const known = before?.slotById.get(wire.id);
  if (known?.wire === wire && before?.parts === parts) return known;
  const from = findAt(parts, wire.from);
  const to = findAt(parts, wire.to);
  return known?.wire === wire && known.from === from && known.to === to
    ? known
    : { wire, from, to };
}

/** The terminal that an end is at; undefined where nobody found it, or it is missing. */
export const findAt = (parts: PartsIndex, end: Wire['from']): TerminalEntry | undefined =>
  end.at && parts.terminalByKey.get(terminalKey(end.at.part, end.at.terminal));

/** Sorting is left out where every wire of before is still there in its place. */
function sortAgain(source: ChassisDocument['wires'], before?: WiresIndex): readonly Wire[] {
  if (!before) return sortByOrder(source);
  const kept: Wire[] = [];
  for (const old of before.wires) {
    const wire = findElement(source, old.id);
    if (!wire) continue;
    if (wire.order !== old.order) return sortByOrder(source);
    kept.push(wire);
  }
  const all = Object.values(source);
  if (all.length === kept.length) return kept;
  const added = all.filter(({ id }) => !before.slotById.has(id));
  for (const wire of added) {
    const place = kept.findIndex((other) => compareByOrder(other, wire) > 0);
    kept.splice(place < 0 ? kept.length : place, 0, wire);
  }
  return kept;
}
