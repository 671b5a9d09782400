// Reads a list for a test: ids in order, wires and parts as people would write them.
import { readFileSync } from 'node:fs';
import {
  documentSchema,
  findDanglingReferences,
  findEndLabel,
  makeIdFrom,
  sortByOrder,
  type ChassisDocument,
  type Wire
} from '#document/index.ts';
import { decodeListBytes, readWireList, type WireListReading } from '#intake/index.ts';

/** Chance that is the same in every run (a 32-bit linear congruential generator). */
export const seededRandom = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
};

/** Reads a text, and proves that what comes of it is a document with no loose ends. */
export const readText = (text: string, fileName = 'list.csv'): WireListReading => {
  const reading = readWireList(text, { fileName, makeId: makeIdFrom(seededRandom(11)) });
  if (reading.document) {
    documentSchema.parse(reading.document);
    const dangling = findDanglingReferences(reading.document);
    if (dangling.length > 0) throw new Error(dangling.map(({ words }) => words).join('; '));
  }
  return reading;
};

/** A list of test/intake/lists. */
export const readListFile = (name: string): WireListReading & { document: ChassisDocument } => {
  const bytes = readFileSync(new URL(`lists/${name}`, import.meta.url));
  const reading = readText(decodeListBytes(bytes), name);
  if (!reading.document)
    throw new Error(`${name}: ${reading.notes.map(({ text }) => text).join('; ')}`);
  return { ...reading, document: reading.document };
};

export const wiresOf = (document: ChassisDocument): Wire[] => sortByOrder(document.wires);

/** "V1-5 > TS2-3"; an end that nobody found stands as it was written, or as "?". */
export const runOf = (document: ChassisDocument, wire: Wire): string =>
  [wire.from, wire.to].map((end) => findEndLabel(document, end) ?? '?').join(' > ');

export const runsOf = (document: ChassisDocument): string[] =>
  wiresOf(document).map((wire) => `${wire.number} ${runOf(document, wire)}`);

/** "V1 tube 6CG7: 1 2 3 …" */
export const partsOf = (document: ChassisDocument): string[] =>
  sortByOrder(document.parts).map((part) => {
    const names = sortByOrder(part.terminals).map(({ name }) => name);
    return (
      [`${part.reference} ${part.kind}`, ...(part.type === undefined ? [] : [part.type])].join(
        ' '
      ) + `: ${names.join(' ')}`
    );
  });

export const wireOf = (document: ChassisDocument, number: string): Wire => {
  const wire = wiresOf(document).find((each) => each.number === number);
  if (!wire) throw new Error(`no wire ${number}`);
  return wire;
};
