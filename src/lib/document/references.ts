// What points to what: ends, terminals on terminals, units, cables and supports. A reference to
// something missing is no error; it is listed, so that a rule can say so.
import { collections } from './edit.ts';
import type { Part, Terminal, Unit } from './part-schema.ts';
import type { Id, TerminalRef } from './primitives.ts';
import type { Photo } from './photo-schema.ts';
import type { ChassisDocument } from './schema.ts';
import type { Callout } from './shelf-schema.ts';
import type { Wire, WireEnd } from './wire-schema.ts';

/** An element of a record by its id; undefined where it is missing. */
export const findElement = <T>(record: Readonly<Record<Id, T>>, id: Id): T | undefined =>
  Object.hasOwn(record, id) ? record[id] : undefined;

/** A terminal with the part it belongs to; undefined where either is missing. */
export const findTerminal = (
  document: ChassisDocument,
  ref: TerminalRef
): { readonly part: Part; readonly terminal: Terminal } | undefined => {
  const part = findElement(document.parts, ref.part);
  const terminal = part && findElement(part.terminals, ref.terminal);
  return part && terminal && { part, terminal };
};

/** The unit that a part stands in; undefined where it is missing. */
export const findUnitOf = (document: ChassisDocument, part: Part): Unit | undefined =>
  findElement(document.units, part.unit);

// Parts that are one point: their terminal has no name that people would write.
const onePointKinds: ReadonlySet<string> = new Set(['ground lug', 'splice', 'clip']);

/** A terminal as people write it: "V3-5", "T1 red". A lug, splice or clip goes by its reference
 *  alone, and so does any terminal without a name. */
export const terminalLabel = (part: Part, terminal: Terminal): string => {
  const isOnePoint = onePointKinds.has(part.kind) && Object.keys(part.terminals).length === 1;
  if (isOnePoint || terminal.name === '') return part.reference;
  return `${part.reference}${/^\d/.test(terminal.name) ? '-' : ' '}${terminal.name}`;
};

/** The label of a terminal, or undefined where it is missing. */
export const findTerminalLabel = (
  document: ChassisDocument,
  ref: TerminalRef
): string | undefined => {
  const found = findTerminal(document, ref);
  return found && terminalLabel(found.part, found.terminal);
};

/** A wire's end as people write it: its terminal where that exists, else what was written down
 *  for it; undefined where there is neither. */
export const findEndLabel = (document: ChassisDocument, end: WireEnd): string | undefined =>
  (end.at && findTerminalLabel(document, end.at)) ?? (end.as === '' ? undefined : end.as);

export interface DanglingReference {
  /** The element that holds the reference. */
  readonly from: {
    readonly kind: 'wire' | 'part' | 'support' | 'photo' | 'callout';
    readonly id: Id;
  };
  /** Where in the element: ["from", "at"]. */
  readonly path: readonly (string | number)[];
  /** What is missing: the terminal's part may be there. */
  readonly to: {
    readonly kind: 'unit' | 'part' | 'terminal' | 'wire' | 'cable' | 'support';
    readonly id: Id;
  };
  /** "the first end of wire 12 is at a terminal that is not in the document" */
  readonly words: string;
}

const wireName = (wire: Wire): string =>
  wire.number === '' ? 'an unnumbered wire' : `wire ${wire.number}`;

const missingTerminal = (
  document: ChassisDocument,
  ref: TerminalRef
): DanglingReference['to'] | undefined => {
  const part = findElement(document.parts, ref.part);
  if (!part) return { kind: 'part', id: ref.part };
  return findElement(part.terminals, ref.terminal)
    ? undefined
    : { kind: 'terminal', id: ref.terminal };
};

const danglingOfWire = (document: ChassisDocument, wire: Wire): DanglingReference[] => {
  const from = { kind: 'wire', id: wire.id } as const;
  const name = wireName(wire);
  const list: DanglingReference[] = [];
  for (const [key, words] of [
    ['from', 'first'],
    ['to', 'second']
  ] as const) {
    const { at } = wire[key];
    const to = at && missingTerminal(document, at);
    if (!to) continue;
    const what = `the ${words} end of ${name} is at a ${to.kind} that is not in the document`;
    list.push({ from, path: [key, 'at'], to, words: what });
  }
  if (wire.cable !== undefined && !findElement(document.cables, wire.cable)) {
    const words = `${name} is in a cable that is not in the document`;
    list.push({ from, path: ['cable'], to: { kind: 'cable', id: wire.cable }, words });
  }
  wire.route?.supports.forEach((id, index) => {
    if (findElement(document.supports, id)) return;
    const words = `${name} runs by a support that is not in the document`;
    list.push({ from, path: ['route', 'supports', index], to: { kind: 'support', id }, words });
  });
  return list;
};

const danglingOfPart = (document: ChassisDocument, part: Part): DanglingReference[] => {
  const from = { kind: 'part', id: part.id } as const;
  const list: DanglingReference[] = [];
  if (!findUnitOf(document, part)) {
    const words = `${part.reference} is in a unit that is not in the document`;
    list.push({ from, path: ['unit'], to: { kind: 'unit', id: part.unit }, words });
  }
  if (part.mates !== undefined && !findElement(document.parts, part.mates)) {
    const words = `${part.reference} mates with a part that is not in the document`;
    list.push({ from, path: ['mates'], to: { kind: 'part', id: part.mates }, words });
  }
  for (const terminal of Object.values(part.terminals)) {
    const to = terminal.on && missingTerminal(document, terminal.on);
    if (!to) continue;
    const words = `${terminalLabel(part, terminal)} is on a ${to.kind} that is not in the document`;
    list.push({ from, path: ['terminals', terminal.id, 'on'], to, words });
  }
  for (const element of Object.values(part.elements ?? {})) {
    for (const key of ['from', 'to'] as const) {
      const id = element[key];
      if (id === undefined || findElement(part.terminals, id)) continue;
      const words = `the ${element.kind} in ${part.reference} is joined to a terminal that ${part.reference} does not have`;
      list.push({ from, path: ['elements', element.id, key], to: { kind: 'terminal', id }, words });
    }
  }
  return list;
};

const danglingOfPhoto = (document: ChassisDocument, photo: Photo): DanglingReference[] => {
  const from = { kind: 'photo', id: photo.id } as const;
  const name = photo.name === '' ? 'a photo' : `photo ${photo.name}`;
  const list: DanglingReference[] = [];
  if (!findElement(document.units, photo.unit)) {
    const words = `${name} is of a unit that is not in the document`;
    list.push({ from, path: ['unit'], to: { kind: 'unit', id: photo.unit }, words });
  }
  const to = photo.of && missingSubject(document, photo.of);
  if (to) {
    const words = `${name} is of a ${to.kind} that is not in the document`;
    list.push({ from, path: ['of'], to, words });
  }
  return list;
};

const missingSubject = (
  document: ChassisDocument,
  of: NonNullable<Photo['of']>
): DanglingReference['to'] | undefined => {
  if ('wire' in of) {
    const { wire } = of as { readonly wire: Id };
    return findElement(document.wires, wire) ? undefined : { kind: 'wire', id: wire };
  }
  const { part, terminal } = of as Partial<TerminalRef> & { readonly part: Id };
  if (terminal !== undefined) return missingTerminal(document, { part, terminal });
  return findElement(document.parts, part) ? undefined : { kind: 'part', id: part };
};

const danglingOfCallout = (
  document: ChassisDocument,
  { id, of, unit }: Callout
): DanglingReference[] => {
  const from = { kind: 'callout', id } as const;
  const list: DanglingReference[] = [];
  if (unit !== undefined && !findElement(document.units, unit)) {
    const words = 'a callout stands in a unit that is not in the document';
    list.push({ from, path: ['unit'], to: { kind: 'unit', id: unit }, words });
  }
  if (of && !findElement<unknown>(document[collections[of.kind]], of.id)) {
    const words = `a callout points to a ${of.kind} that is not in the document`;
    list.push({ from, path: ['of'], to: { kind: of.kind, id: of.id }, words });
  }
  return list;
};

/** Every reference to something that the document does not hold, in the document's own order. */
export const findDanglingReferences = (document: ChassisDocument): DanglingReference[] => [
  ...Object.values(document.parts).flatMap((part) => danglingOfPart(document, part)),
  ...Object.values(document.wires).flatMap((wire) => danglingOfWire(document, wire)),
  ...Object.values(document.supports).flatMap((support): DanglingReference[] =>
    findElement(document.units, support.unit)
      ? []
      : [
          {
            from: { kind: 'support', id: support.id },
            path: ['unit'],
            to: { kind: 'unit', id: support.unit },
            words: `support ${support.name} is in a unit that is not in the document`
          }
        ]
  ),
  ...Object.values(document.photos).flatMap((photo) => danglingOfPhoto(document, photo)),
  ...Object.values(document.callouts).flatMap((callout) => danglingOfCallout(document, callout))
];
