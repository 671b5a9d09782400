// The document's references resolved once: sorted lists, terminals by key, wires by terminal, labels.
import type { ChassisDocument, Wire } from '#document/index.ts';
import { compareByOrder } from '#document/order.ts';
import { findElement, terminalLabel } from '#document/references.ts';
import { findAt, type WireChanges, type WireSlot, type WiresIndex } from './index-wires.ts';
import { listAt, type Lists } from './lists.ts';
import type { DocumentIndex, TerminalEntry } from './types.ts';

type WiresAt = ReadonlyMap<string, readonly Wire[]>;

/** What the index was made of before. */
interface IndexBefore {
  readonly wires: WiresIndex;
  readonly index: DocumentIndex;
}

/** The index of a document, over its parts and wires. */
export function indexDocument(
  document: ChassisDocument,
  wires: WiresIndex,
  changes: WireChanges,
  before?: IndexBefore
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
    wiresAt: listAgain(wires, changes, before),
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
  { touched, gone }: WireChanges,
  before: IndexBefore | undefined
): WiresAt {
  if (!before || touched.size > now.slots.length / 4) return listWiresAt(now.slots);
  if (touched.size === 0 && gone.size === 0) return before.index.wiresAt;
  const keys = new Set<string>();
  const visit = (slot: WireSlot | undefined) => {
    if (slot?.from) keys.add(slot.from.key);
    if (slot?.to) keys.add(slot.to.key);
  };
  for (const id of [...touched, ...gone]) visit(before.wires.slotById.get(id));
  const come = [...touched].flatMap((id) => now.slotById.get(id) ?? []);
  come.forEach(visit);
  const here = listWiresAt(come);
  const wiresAt = new Map(before.index.wiresAt);
  for (const key of keys) {
    const stayed = (wiresAt.get(key) ?? []).filter(({ id }) => !touched.has(id) && !gone.has(id));
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
