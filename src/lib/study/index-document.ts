// The document's references resolved once: sorted lists, terminals by key, wires by terminal, labels.
import type { ChassisDocument, Id, Part, Terminal, Wire, WireEnd } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { findElement, terminalLabel } from '#document/references.ts';
import { listAt, type Lists } from './lists.ts';
import { keyOfRef, terminalKey } from './terminal-key.ts';
import type { DocumentIndex, TerminalEntry } from './types.ts';

/** The index of a document. Ends at terminals that are missing are left out of `wiresAt`. */
export function indexDocument(document: ChassisDocument): DocumentIndex {
  const parts = sortByOrder(document.parts);
  const wires = sortByOrder(document.wires);
  const partById = new Map<Id, Part>(parts.map((part) => [part.id, part]));
  const terminalsOf = new Map<Id, readonly Terminal[]>();
  const terminals: TerminalEntry[] = [];
  const terminalByKey = new Map<string, TerminalEntry>();
  for (const part of parts) {
    const own = sortByOrder(part.terminals);
    terminalsOf.set(part.id, own);
    for (const terminal of own) {
      const key = terminalKey(part.id, terminal.id);
      const entry = { key, number: terminals.length, part, terminal };
      terminals.push(entry);
      terminalByKey.set(key, entry);
    }
  }
  const leadsOn: Lists<string, TerminalEntry> = new Map();
  for (const entry of terminals) {
    const { on } = entry.terminal;
    if (on && terminalByKey.has(keyOfRef(on))) listAt(leadsOn, keyOfRef(on)).push(entry);
  }
  const findAt = (end: WireEnd): TerminalEntry | undefined =>
    end.at && terminalByKey.get(keyOfRef(end.at));
  return {
    wires,
    parts,
    partById,
    terminals,
    terminalByKey,
    terminalsOf,
    wiresAt: listWiresAt(wires, findAt),
    leadsOn,
    findAt,
    labelOf: (end) => {
      const entry = findAt(end);
      if (entry) return terminalText(document, entry);
      return end.as !== undefined && end.as !== '' ? end.as : '?';
    }
  };
}

function listWiresAt(
  wires: readonly Wire[],
  findAt: (end: WireEnd) => TerminalEntry | undefined
): Map<string, Wire[]> {
  const wiresAt: Lists<string, Wire> = new Map();
  for (const wire of wires) {
    const from = findAt(wire.from);
    const to = findAt(wire.to);
    if (from) listAt(wiresAt, from.key).push(wire);
    if (to && to !== from) listAt(wiresAt, to.key).push(wire);
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
