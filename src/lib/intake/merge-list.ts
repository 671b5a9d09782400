// A second list merges into a chassis that is open: by wire number, or by both ends where the list has no
// numbers. What the list says is taken, what it does not say stays, and nothing is taken away.
import {
  ordersBetween,
  sortByOrder,
  type ChassisDocument,
  type Edit,
  type Wire,
  type WireEnd
} from '#document/index.ts';
import { addElement, doMany, setWireFields, type Changes } from '#document/edits.ts';
import { isUnnamedLug } from './build-document.ts';
import { isBare, MergePlaces, type Needed } from './merge-places.ts';

export interface MergedWire {
  /** Of the wire in the open chassis, or of the one that comes in. */
  readonly id: string;
  readonly number: string;
  readonly kind: 'new' | 'changed' | 'same';
  readonly edit: Edit | null;
}

export interface ListMerge {
  /** In the order of the list. */
  readonly wires: readonly MergedWire[];
  /** Ids of wires that the list does not name: they stay as they are. */
  readonly staying: readonly string[];
  /** Parts, terminals, cables and units that come along. */
  readonly needed: readonly Needed[];
  readonly notes: readonly string[];
}

export interface MergeOptions {
  /** The numbers are the list's own, and not given by the order of its rows. */
  readonly hasNumbers: boolean;
}

type Plain = Readonly<Record<string, unknown>>;
const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What of `wanted` is not so in `present`; null where all of it is. */
const differences = (wanted: Plain, present: Plain): Plain | null => {
  const found: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(wanted)) {
    const old = present[key];
    if (isPlain(value)) {
      const inner = differences(value, isPlain(old) ? old : {});
      if (inner !== null) found[key] = inner;
    } else if (value === null ? old !== undefined : JSON.stringify(value) !== JSON.stringify(old))
      found[key] = value;
  }
  return Object.keys(found).length === 0 ? null : found;
};

const numberKey = (number: string): string =>
  number
    .trim()
    .toLowerCase()
    .replace(/^(?:#|no\.? ?|wire )/, '');

const sides = ['from', 'to'] as const;
const refKey = ({ at }: WireEnd): string => (at === undefined ? '' : `${at.part}/${at.terminal}`);

/** The wires of the open chassis that are still to be matched, by number and by their ends. */
class Candidates {
  readonly #byKey = new Map<string, Wire[]>();
  readonly #used = new Set<string>();

  constructor(wires: readonly Wire[], keysOf: (wire: Wire) => readonly string[]) {
    for (const wire of wires)
      for (const key of keysOf(wire))
        if (key !== '') this.#byKey.set(key, [...(this.#byKey.get(key) ?? []), wire]);
  }

  take(key: string): Wire | null {
    const wire = this.#byKey.get(key)?.find(({ id }) => !this.#used.has(id));
    if (wire) this.#used.add(wire.id);
    return wire ?? null;
  }
}

const endsKey = (a: string, b: string): string => (a === '' || b === '' ? '' : `${a} ${b}`);
const bothWays = ({ from, to }: Wire): string[] => [
  endsKey(refKey(from), refKey(to)),
  endsKey(refKey(to), refKey(from))
];

class Merging {
  readonly places: MergePlaces;
  readonly #open: ChassisDocument;
  readonly #list: ChassisDocument;

  constructor(open: ChassisDocument, list: ChassisDocument) {
    this.#open = open;
    this.#list = list;
    this.places = new MergePlaces(open, list);
  }

  /** The list says no more of the end than the chassis knows: some point of the metal, some terminal. */
  #isVague(end: WireEnd, present: WireEnd): boolean {
    if (end.at === undefined) return present.at !== undefined;
    const part = this.#list.parts[end.at.part];
    const terminal = part?.terminals[end.at.terminal];
    const there = present.at && this.#open.parts[present.at.part];
    if (!part || !terminal || !there || !present.at) return false;
    if (isUnnamedLug(part))
      return there.kind === 'ground lug' || there.terminals[present.at.terminal]?.grounded === true;
    return isBare(terminal) && this.places.findPart(part)?.id === there.id;
  }

  /** The end as it will stand; null where nothing of it changes. */
  endFor(end: WireEnd, wire: string, present: WireEnd | null): Plain | null {
    const { at, as, known, ...particulars } = end;
    if (present && this.#isVague(end, present)) return differences(particulars, present as Plain);
    const place = at === undefined ? null : this.places.terminalFor(at, wire);
    if (present && place && refKey({ at: place, known }) === refKey(present))
      return differences(particulars, present as Plain);
    const wanted = {
      ...particulars,
      ...(place ? { at: place } : {}),
      ...(as === undefined ? (place && present?.as !== undefined ? { as: null } : {}) : { as }),
      known: place ? known : 'unknown'
    };
    return present ? differences(wanted, present as unknown as Plain) : wanted;
  }

  /** Where an end of the list lies in the open chassis, as text; empty where it is not there. */
  #there(end: WireEnd): string {
    const part = end.at && this.#list.parts[end.at.part];
    const twin = part && this.places.findPart(part);
    const name = end.at && part?.terminals[end.at.terminal]?.name.toLowerCase();
    const found =
      twin && Object.values(twin.terminals).find((one) => one.name.toLowerCase() === name);
    return twin && found ? `${twin.id}/${found.id}` : '';
  }

  /** Both ends of a list's wire as the open chassis knows them; empty where it does not know both. */
  keyInOpen({ from, to }: Wire): string {
    return endsKey(this.#there(from), this.#there(to));
  }

  /** The list's wire with its ends in the order that the chassis has them. */
  turned(wire: Wire, present: Wire): Wire {
    const [from, to] = [this.#there(wire.from), this.#there(wire.to)];
    const isTurned =
      (from !== '' || to !== '') &&
      (from === '' || from === refKey(present.to)) &&
      (to === '' || to === refKey(present.from)) &&
      refKey(present.from) !== refKey(present.to);
    return isTurned ? { ...wire, from: wire.to, to: wire.from } : wire;
  }

  changesOf(said: Wire, present: Wire): Changes<Wire> | null {
    const wire = this.turned(said, present);
    const { function: use, conductor, carries, origin, found, planned, tapedMm } = wire;
    const notes = wire.notes;
    const isNew = notes !== undefined && !(present.notes ?? '').includes(notes);
    const cable = wire.cable === undefined ? null : this.places.cableFor(wire.cable, present.id);
    const { critical, dress } = wire;
    const wanted = Object.fromEntries(
      Object.entries({
        function: use,
        conductor,
        origin,
        tapedMm,
        critical,
        dress,
        cable: cable ?? undefined,
        construction: wire.construction === 'hook-up wire' ? undefined : wire.construction,
        state: wire.state === 'found' ? undefined : wire.state,
        notes: isNew
          ? [present.notes, notes].filter(Boolean).join('; ').slice(0, 20_000)
          : undefined
      }).filter(([, value]) => value !== undefined)
    );
    const changed: Record<string, unknown> = {
      ...differences({ ...wanted, carries, found, planned }, present as unknown as Plain)
    };
    for (const side of sides) {
      const end = this.endFor(wire[side], present.id, present[side]);
      if (end !== null) changed[side] = end;
    }
    return Object.keys(changed).length === 0 ? null : (changed as Changes<Wire>);
  }

  newWire(wire: Wire, order: string, number: string): Wire {
    const end = (side: 'from' | 'to'): WireEnd =>
      (this.endFor(wire[side], wire.id, null) ?? { known: 'unknown' }) as WireEnd;
    const cable = wire.cable === undefined ? null : this.places.cableFor(wire.cable, wire.id);
    const { cable: _, ...plain } = wire;
    return {
      ...plain,
      ...(cable === null ? {} : { cable }),
      order,
      number,
      from: end('from'),
      to: end('to')
    };
  }
}

/** What comes of putting a list's wires into an open chassis. Nothing is changed yet. */
export const planMerge = (
  open: ChassisDocument,
  list: ChassisDocument,
  { hasNumbers }: MergeOptions
): ListMerge => {
  const merging = new Merging(open, list);
  const present = sortByOrder(open.wires);
  const candidates = new Candidates(present, (wire) =>
    hasNumbers ? [numberKey(wire.number)] : bothWays(wire)
  );
  const incoming = sortByOrder(list.wires);
  const orders = ordersBetween(present.at(-1)?.order ?? null, null, incoming.length);
  const highest = present.reduce(
    (most, { number }) => Math.max(most, Number(/^\d{1,6}/.exec(number)?.[0] ?? 0)),
    0
  );
  let next = highest;
  const known = new Set<string>();
  const wires = incoming.map((wire, index): MergedWire => {
    const key = hasNumbers ? numberKey(wire.number) : merging.keyInOpen(wire);
    const twin = candidates.take(key);
    if (twin) {
      known.add(twin.id);
      const changes = merging.changesOf(wire, twin);
      return changes === null
        ? { id: twin.id, number: twin.number, kind: 'same', edit: null }
        : {
            id: twin.id,
            number: twin.number,
            kind: 'changed',
            edit: setWireFields(twin.id, changes)
          };
    }
    const number = hasNumbers ? wire.number : String((next += 1));
    const added = merging.newWire(wire, orders[index] ?? 'a0', number);
    return { id: wire.id, number, kind: 'new', edit: addElement('wire', added) };
  });
  return {
    wires,
    staying: present.filter(({ id }) => !known.has(id)).map(({ id }) => id),
    needed: merging.places.needed,
    notes: merging.places.notes
  };
};

/** The chosen part of a merge as one edit, with what its wires need; null where that is nothing. */
export const mergeEdit = (
  { wires, needed }: ListMerge,
  name: string,
  isTaken: (wire: MergedWire) => boolean
): Edit | null => {
  const taken = wires.filter((wire) => wire.edit !== null && isTaken(wire));
  if (taken.length === 0) return null;
  const ids = new Set(taken.map(({ id }) => id));
  return doMany(name, [
    ...needed.filter((one) => [...one.wires].some((id) => ids.has(id))).map(({ edit }) => edit),
    ...taken.flatMap(({ edit }) => edit ?? [])
  ]);
};
