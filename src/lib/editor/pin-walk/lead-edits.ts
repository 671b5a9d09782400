// The edits that a pin walk makes. Each writes down what was seen and asks for nothing else.
import {
  addElement,
  changeElement,
  doMany,
  removeElement,
  setWireFields,
  type Changes
} from '#document/edits.ts';
import {
  orderAt,
  orderAtEnd,
  ordersBetween,
  sortByOrder,
  type ChassisDocument,
  type Edit,
  type MakeId,
  type Part,
  type TerminalRef,
  type Wire,
  type WireEnd
} from '#document/index.ts';
import { endFieldsOf, type EndReading } from '../schedule/end-text.ts';
import { buildNewWire } from '../schedule/new-wire.ts';
import { pieceNumber, spliceReference, unknownReference } from './free-names.ts';
import { otherEnd, partLeadKey, wireLeadKey, type Lead } from './leads.ts';
import type { NotedLead } from './noted-lead.ts';

export interface Making {
  readonly document: ChassisDocument;
  readonly makeId: MakeId;
}

/** How somebody came to know where a wire ends. */
export type HowKnown = Exclude<WireEnd['known'], 'unknown'>;

export interface NewLead {
  readonly edit: Edit;
  /** The key that the lead will have at its terminal. */
  readonly key: string;
}

/** Writes a lead down at a terminal; its far end is not said. */
export const noteLead = (noted: NotedLead, at: TerminalRef, making: Making): NewLead =>
  noted.kind === 'wire' ? noteWire(noted, at, making) : notePart(noted, at, making);

const noteWire = (
  { colour, tracer, construction }: Extract<NotedLead, { kind: 'wire' }>,
  at: TerminalRef,
  { document, makeId }: Making
): NewLead => {
  const plain = buildNewWire(document, makeId);
  const wire: Wire = {
    ...plain,
    from: { at, known: 'seen' },
    ...(construction === undefined ? {} : { construction }),
    found: {
      ...(colour === undefined ? {} : { colour }),
      ...(tracer === undefined ? {} : { tracer })
    }
  };
  return { edit: addElement('wire', wire), key: wireLeadKey(wire.id, 'from') };
};

const notePart = (
  { partKind, value }: Extract<NotedLead, { kind: 'part' }>,
  at: TerminalRef,
  { document, makeId }: Making
): NewLead => {
  const [first, second] = [makeId('terminal'), makeId('terminal')];
  const [low = 'a0', high = 'a1'] = ordersBetween(null, null, 2);
  const part: Part = {
    id: makeId('part'),
    order: orderAtEnd(document.parts),
    unit: document.parts[at.part]?.unit ?? '',
    kind: partKind,
    reference: unknownReference(document, partKind),
    ...(value === undefined ? {} : { value }),
    terminals: {
      [first]: { id: first, order: low, name: 'A', ending: 'lead', on: at },
      [second]: { id: second, order: high, name: 'B', ending: 'lead' }
    }
  };
  return { edit: addElement('part', part), key: partLeadKey(part.id, first) };
};

/** Says where a lead's far end is. Words that name no terminal are kept as they were written. */
export const setFarEnd = (lead: Lead, reading: EndReading, how: HowKnown): Edit | null => {
  if (lead.kind === 'wire') {
    const fields = endFieldsOf(reading);
    const end = reading.kind === 'terminal' ? { ...fields, known: how } : fields;
    return setWireFields(lead.wire.id, { [otherEnd(lead.here)]: end });
  }
  if (lead.other === null) return null;
  const on = reading.kind === 'terminal' ? { ...reading.at } : null;
  const notes = reading.kind === 'words' ? { notes: reading.text } : {};
  const fields = { terminals: { [lead.other]: { on, ...notes } } };
  return { kind: 'change-part', args: { id: lead.part.id, fields } };
};

/** A new lead with its far end from the start, so that one line typed is one step of undo. */
export const withFarEnd = (edit: Edit, far: EndReading, how: HowKnown): Edit => {
  if (edit.kind === 'add-wire') {
    const end =
      far.kind === 'terminal'
        ? { at: { ...far.at }, known: how }
        : { as: far.kind === 'words' ? far.text : '', known: 'unknown' };
    return { kind: 'add-wire', args: { element: { ...edit.args.element, to: end } } };
  }
  if (edit.kind !== 'add-part') return edit;
  const terminals = { ...(edit.args.element['terminals'] as Record<string, { on?: TerminalRef }>) };
  const free = Object.entries(terminals).find(([, terminal]) => terminal.on === undefined);
  if (free === undefined) return edit;
  const [id, terminal] = free;
  const end =
    far.kind === 'terminal'
      ? { on: { ...far.at } }
      : { notes: far.kind === 'words' ? far.text : '' };
  const all = { ...terminals, [id]: { ...terminal, ...end } };
  return { kind: 'add-part', args: { element: { ...edit.args.element, terminals: all } } };
};

const newSplice = ({ document, makeId }: Making, unit: string): { part: Part; at: TerminalRef } => {
  const terminal = makeId('terminal');
  const [order = 'a0'] = ordersBetween(null, null, 1);
  const part: Part = {
    id: makeId('part'),
    order: orderAtEnd(document.parts),
    unit,
    kind: 'splice',
    reference: spliceReference(document),
    terminals: { [terminal]: { id: terminal, order, name: '' } }
  };
  return { part, at: { part: part.id, terminal } };
};

const spliceReading = (part: Part, at: TerminalRef): EndReading => ({
  kind: 'terminal',
  at,
  label: part.reference
});

/** The lead ends in a splice in the air: a part with one point, which can be walked as any other. */
export const endInSplice = (
  lead: Lead,
  unit: string,
  how: HowKnown,
  making: Making
): Edit | null => {
  const { part, at } = newSplice(making, unit);
  const far = setFarEnd(lead, spliceReading(part, at), how);
  return far && doMany(`end ${part.reference} in the air`, [addElement('part', part), far]);
};

/** The lead is soldered onto another wire on its way: that wire becomes two pieces that meet in a splice.
 *  A length taped along the whole is kept in words, since nobody knows how it divides. */
export const teeOnto = (
  lead: Lead,
  onto: Wire,
  unit: string,
  how: HowKnown,
  making: Making
): Edit | null => {
  const { document, makeId } = making;
  const { part, at } = newSplice(making, unit);
  const far = setFarEnd(lead, spliceReading(part, at), how);
  if (far === null) return null;
  const number = pieceNumber(document, onto.number);
  const sorted = sortByOrder(document.wires);
  const place = sorted.findIndex(({ id }) => id === onto.id) + 1;
  const was = [
    `one wire with ${number} before the tee at ${part.reference}`,
    onto.tapedMm === undefined ? '' : `taped ${onto.tapedMm} mm as a whole`
  ]
    .filter(Boolean)
    .join('; ');
  const { tapedMm: _taped, outsideMm: _outside, route: _route, notes: _notes, ...shared } = onto;
  const piece: Wire = {
    ...shared,
    id: makeId('wire'),
    order: orderAt(sorted, place),
    number,
    from: { at, known: 'seen' },
    notes: `one wire with ${onto.number} before the tee at ${part.reference}`
  };
  const onwards = {
    to: { at, known: 'seen', as: null, termination: null, stripMm: null, sleeve: null },
    tapedMm: null,
    notes: onto.notes === undefined ? was : `${onto.notes}; ${was}`
  };
  return doMany(`tee onto wire ${onto.number}`, [
    addElement('part', part),
    { kind: 'change-wire', args: { id: onto.id, fields: onwards } },
    addElement('wire', piece),
    far
  ]);
};

/** Takes a lead out of the document, with the wire or the part that it belongs to. */
export const removeLead = (lead: Lead): Edit =>
  lead.kind === 'wire' ? removeElement('wire', lead.wire.id) : removeElement('part', lead.part.id);

/** Says how many leads somebody counted at a terminal; null: nobody counted. */
export const setLeadsCounted = ({ part, terminal }: TerminalRef, count: number | null): Edit =>
  changeElement('part', part, { terminals: { [terminal]: { leadsCounted: count } } });

/** Another terminal for a part that has more of them than was thought. */
export const addTerminal = (part: Part, name: string, makeId: MakeId): NewTerminal => {
  const id = makeId('terminal');
  const ending = Object.values(part.terminals).find((one) => one.ending !== undefined)?.ending;
  const made = {
    id,
    order: orderAtEnd(part.terminals),
    name,
    ...(ending === undefined || ending === 'cap' ? {} : { ending })
  };
  const fields: Changes<Part> = { terminals: { [id]: made } };
  return { edit: changeElement('part', part.id, fields), id };
};

export interface NewTerminal {
  readonly edit: Edit;
  readonly id: string;
}
