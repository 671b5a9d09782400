// The parts and their terminals, sorted and numbered, so that everything after can speak of a
// terminal by its key or by its number.
import type { ChassisDocument, Id, Part, Terminal } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { listAt, type Lists } from './lists.ts';
import { sameItems } from './same.ts';
import { keyOfRef, terminalKey } from './terminal-key.ts';
import type { TerminalEntry } from './types.ts';

export interface PartsIndex {
  readonly source: ChassisDocument['parts'];
  readonly parts: readonly Part[];
  readonly partById: ReadonlyMap<Id, Part>;
  readonly terminals: readonly TerminalEntry[];
  readonly terminalByKey: ReadonlyMap<string, TerminalEntry>;
  readonly terminalsOf: ReadonlyMap<Id, readonly Terminal[]>;
  readonly leadsOn: ReadonlyMap<string, readonly TerminalEntry[]>;
  readonly entriesOf: ReadonlyMap<Part, readonly TerminalEntry[]>;
  /** Keys in the order of their numbers, and numbers in the order of their keys. */
  readonly keys: readonly string[];
  readonly inKeyOrder: readonly number[];
}

/** The index of a document's parts. Of a part that is still the same object and has kept its numbers
 *  the entries are those of before. */
export function indexParts(source: ChassisDocument['parts'], before?: PartsIndex): PartsIndex {
  if (before?.source === source) return before;
  const parts = sortByOrder(source);
  const terminals: TerminalEntry[] = [];
  const terminalByKey = new Map<string, TerminalEntry>();
  const terminalsOf = new Map<Id, readonly Terminal[]>();
  const entriesOf = new Map<Part, readonly TerminalEntry[]>();
  for (const part of parts) {
    const entries = listEntries(part, terminals.length, before);
    entriesOf.set(part, entries);
    terminalsOf.set(
      part.id,
      entries.map(({ terminal }) => terminal)
    );
    for (const entry of entries) {
      terminals.push(entry);
      terminalByKey.set(entry.key, entry);
    }
  }
  const leadsOn: Lists<string, TerminalEntry> = new Map();
  for (const entry of terminals) {
    const { on } = entry.terminal;
    if (on && terminalByKey.has(keyOfRef(on))) listAt(leadsOn, keyOfRef(on)).push(entry);
  }
  const keys = terminals.map(({ key }) => key);
  const sameKeys = before !== undefined && sameItems(before.keys, keys);
  return {
    source,
    parts,
    partById: new Map(parts.map((part) => [part.id, part])),
    terminals,
    terminalByKey,
    terminalsOf,
    leadsOn,
    entriesOf,
    keys: sameKeys ? before.keys : keys,
    inKeyOrder: sameKeys ? before.inKeyOrder : numbersInKeyOrder(keys)
  };
}

function listEntries(part: Part, first: number, before?: PartsIndex): readonly TerminalEntry[] {
  const known = before?.entriesOf.get(part);
  if (known && (known.length === 0 || known[0]?.number === first)) return known;
  return sortByOrder(part.terminals).map((terminal, n) => ({
    key: terminalKey(part.id, terminal.id),
    number: first + n,
    part,
    terminal
  }));
}

function numbersInKeyOrder(keys: readonly string[]): readonly number[] {
  const keyOf = (number: number): string => keys[number] ?? '';
  return keys
    .map((_, number) => number)
    .sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : keyOf(a) > keyOf(b) ? 1 : 0));
}
