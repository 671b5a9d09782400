// The document's references resolved once: sorted lists, terminals by key, wires by terminal, labels.
import type { ChassisDocument, Id, Wire } from '#document/index.ts';
import { compareByOrder } from '#document/order.ts';
import { findElement, terminalLabel } from '#document/references.ts';
import { findAt, type WireSlot, type WiresIndex } from './index-wires.ts';
import { listAt, type Lists } from './lists.ts';
import type { DocumentIndex, TerminalEntry } from './types.ts';

type WiresAt = ReadonlyMap<string, readonly Wire[]>;

/** The index of a document, over its parts and wires.
 *  @param before wires of before, and their lists by terminal */
export function indexDocument(
  document: ChassisDocument,
  wires: WiresIndex,
  before?: { readonly wires: WiresIndex; readonly index: DocumentIndex }
): DocumentIndex {
  const { parts } = wires;
  return {
    wires: wires.wires,
    parts: parts.parts,
    partById: parts.partById,
    terminals: parts.terminals,
    terminalByKey: parts.terminalByKey,
    terminalsOf: parts.terminalsOf,
    entriesOf: parts.entriesOf,
    wiresAt: listAgain(wires, before),
    leadsOn: parts.leadsOn,
    findAt: (end) => findAt(parts, end),
    labelOf: (end) => {
      const entry = findAt(parts, end);
      if (entry) return terminalText(document, entry);
      return end.as !== undefined && end.as !== '' ? end.as : '?';
    }
  };
}

/** Ends at terminals that are missing are left out. */
function listWiresAt(slots: Iterable<WireSlot>): Lists<string, Wire> {
  const wiresAt: Lists<string, Wire> = new Map();
  for (const { wire, from, to } of slots) {
    if (from) listAt(wiresAt, from.key).push(wire);
    if (to && to !== from) listAt(wiresAt, to.key).push(wire);
  }
  return wiresAt;
}

/** The lists of before, made anew where a wire that changed ends or ended. */
function listAgain(
  now: WiresIndex,
  before?: { readonly wires: WiresIndex; readonly index: DocumentIndex }
): WiresAt {
  if (!before) return listWiresAt(now.slots);
  if (before.wires === now) return before.index.wiresAt;
  const gone = new Set<Id>();
  const touched = new Set<string>();
  const touch = ({ from, to }: WireSlot) => {
    if (from) touched.add(from.key);
    if (to) touched.add(to.key);
  };
  for (const slot of before.wires.slots) {
    if (now.slotById.get(slot.wire.id) === slot) continue;
    gone.add(slot.wire.id);
    touch(slot);
  }
  const come = now.slots.filter(({ wire }) => {
    const slot = before.wires.slotById.get(wire.id);
    return slot === undefined || gone.has(wire.id);
  });
  if (come.length > now.slots.length / 4) return listWiresAt(now.slots);
  come.forEach(touch);
  if (touched.size === 0) return before.index.wiresAt;
  const here = listWiresAt(come);
  const wiresAt = new Map(before.index.wiresAt);
  for (const key of touched) {
    const stayed = (wiresAt.get(key) ?? []).filter(({ id }) => !gone.has(id));
    const all = [...stayed, ...(here.get(key) ?? [])].sort(compareByOrder);
    if (all.length > 0) wiresAt.set(key, all);
    else wiresAt.delete(key);
  }
  return wiresAt;
}

/** "V3-5", "T1 red"; a lug on the metal says so: "chassis at G3". */
export function terminalText(
  document: ChassisDocument,
  { part, terminal }: Pick<TerminalEntry, 'part' | 'terminal'>
): string {
  const plain = terminalLabel(part, terminal) || part.kind;
  if (part.kind !== 'ground lug' || /^(chassis|ground|gnd|earth)/i.test(plain)) return plain;
  const metal = findElement(document.units, part.unit)?.metal;
  return metal === 'bonded' ? `chassis at ${plain}` : `metal at ${plain}`;
}
