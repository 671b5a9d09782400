// Ends that were written down but name no part yet, made into parts and terminals: "V3-5" gives a tube
// V3 with a pin 5, as a wire list would have given it. One edit, asked for by a person, undone at once.
import { addElement, doMany, setWireFields } from '#document/edits.ts';
import {
  orderAtEnd,
  type ChassisDocument,
  type Edit,
  type MakeId,
  type Part,
  type Terminal,
  type TerminalRef,
  type Wire
} from '#document/index.ts';
import { buildPart } from '#intake/build-part.ts';
import { PartDrafts } from '#intake/part-drafts.ts';
import { readEnd, type EndReading } from '#intake/read-end.ts';

type NamedEnd = Extract<EndReading, { kind: 'terminal' }> & { readonly terminal: string };

export interface WrittenEnd {
  readonly wire: Wire;
  readonly end: 'from' | 'to';
  readonly reading: NamedEnd;
}

const sides = ['from', 'to'] as const;

/** The open ends whose words name a part and one of its terminals, in the schedule's order. */
export const findWrittenEnds = (wires: readonly Wire[]): readonly WrittenEnd[] =>
  wires.flatMap((wire) =>
    sides.flatMap((end): WrittenEnd[] => {
      const { at, as } = wire[end];
      if (at !== undefined || as === undefined) return [];
      const reading = readEnd(as);
      if (reading.kind !== 'terminal' || reading.terminal === null || reading.isUncertain)
        return [];
      return [{ wire, end, reading: { ...reading, terminal: reading.terminal } }];
    })
  );

const keyOf = (reference: string): string => reference.toLowerCase();

/** Where new parts stand: in the unit of the wire's other end, else in the first unit. */
const unitFor = (document: ChassisDocument, { wire, end }: WrittenEnd): string => {
  const other = wire[end === 'from' ? 'to' : 'from'].at;
  const known = other === undefined ? undefined : document.parts[other.part]?.unit;
  const first = Object.values(document.units).sort((a, b) => (a.order < b.order ? -1 : 1))[0];
  return known ?? first?.id ?? '';
};

/** One edit that makes the parts and terminals and puts the ends on them; null where there is nothing
 *  to make. Parts that are there already only get the terminals that they lack. */
export const buildPartsEdit = (
  document: ChassisDocument,
  ends: readonly WrittenEnd[],
  makeId: MakeId
): Edit | null => {
  if (ends.length === 0 || Object.keys(document.units).length === 0) return null;
  const known = new Map(Object.values(document.parts).map((part) => [keyOf(part.reference), part]));
  const edits: Edit[] = [];
  const places = new Map<string, TerminalRef>();
  const placeKey = ({ reading }: WrittenEnd): string =>
    `${keyOf(reading.reference)} ${reading.terminal.toLowerCase()}`;

  const drafts = new PartDrafts();
  const units = new Map<string, string>();
  for (const written of ends) {
    const { reference, type } = written.reading;
    const part = known.get(keyOf(reference));
    if (part !== undefined) {
      if (places.has(placeKey(written))) continue;
      const terminal = terminalFor(part, written.reading.terminal, makeId);
      if (terminal.isNew) {
        const fields = { terminals: { [terminal.made.id]: terminal.made } };
        edits.push({ kind: 'change-part', args: { id: part.id, fields } });
      }
      places.set(placeKey(written), { part: part.id, terminal: terminal.made.id });
      continue;
    }
    const { part: draft } = drafts.endAt(written.reading, 0, '');
    if (type !== null) PartDrafts.setType(draft, type);
    if (!units.has(keyOf(reference))) units.set(keyOf(reference), unitFor(document, written));
  }
  let parts = document.parts;
  for (const draft of drafts.byKey.values()) {
    const unit = units.get(keyOf(draft.reference)) ?? '';
    const order = orderAtEnd(parts);
    const { part, idOf } = buildPart(draft, { unit, order, reference: draft.reference }, makeId);
    parts = { ...parts, [part.id]: part };
    edits.push(addElement('part', part));
    for (const [name, terminal] of idOf) {
      places.set(`${keyOf(draft.reference)} ${name}`, { part: part.id, terminal });
    }
  }
  for (const written of ends) {
    const at = places.get(placeKey(written));
    if (at === undefined) continue;
    const { id } = written.wire;
    edits.push(setWireFields(id, { [written.end]: { at, as: null, known: 'seen' } }));
  }
  return doMany('make the parts that ends name', edits);
};

const terminalFor = (
  part: Part,
  name: string,
  makeId: MakeId
): { readonly made: Terminal; readonly isNew: boolean } => {
  const there = Object.values(part.terminals).find(
    (terminal) => terminal.name.toLowerCase() === name.toLowerCase()
  );
  if (there !== undefined) return { made: there, isNew: false };
  const made = { id: makeId('terminal'), order: orderAtEnd(part.terminals), name };
  return { made, isNew: true };
};
