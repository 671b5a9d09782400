// What must hold of every input, however damaged: it opens to a document that can be saved and opened
// again, or it is refused in words. Nothing of it reaches a prototype, and nothing grows without bound.
import { expect } from 'vitest';
import {
  documentSchema,
  openDocument,
  saveDocument,
  type ChassisDocument
} from '#document/index.ts';

interface Complaint {
  readonly place: string;
  readonly wrong: string;
  readonly wayOut: string;
}

/** Words that only a slip of the program says. */
const slips =
  /\[object |\bundefined\b|NaN\b|is not a function|Cannot read prop|Maximum call stack|Invalid (?:array|string) length|\n\s+at /;

/** Holds one message against what a message must be. `given` is the input: what it says itself may be quoted. */
export const checkWords = (words: string, given: string): void => {
  expect(words.trim()).not.toBe('');
  expect(words.length).toBeLessThan(2000);
  const slip = slips.exec(words)?.[0];
  if (slip !== undefined && !given.includes(slip.trim()))
    throw new Error(`only a slip of the program says “${slip}”: ${words}`);
};

/** Holds a refusal against what a refusal must be. */
export const checkRefusal = (problems: readonly Complaint[], given: string): void => {
  expect(problems.length).toBeGreaterThan(0);
  expect(problems.length).toBeLessThanOrEqual(21);
  for (const { place, wrong, wayOut } of problems)
    checkWords(`${place}: ${wrong}: ${wayOut}`, given);
};

/** Holds a document that was opened: sound by the schema, the same after a save, no larger than the input
 *  can account for. */
export const checkOpened = (document: ChassisDocument, inputSize: number): void => {
  const text = saveDocument(document);
  expect(text.length).toBeLessThan(50_000 + 400 * inputSize);
  const isNewer = (document.version as number) > 2;
  if (!isNewer) documentSchema.parse(document);
  const again = openDocument(text, 'again');
  if (!again.ok) throw new Error(JSON.stringify(again.problems));
  expect(saveDocument(again.document)).toBe(text);
};

const soundKeys = JSON.stringify([
  Object.getOwnPropertyNames(Object.prototype),
  Object.getOwnPropertyNames(Array.prototype),
  Object.getOwnPropertyNames(Function.prototype)
]);

/** Fails where an input has put something on the prototypes that everything shares. */
export const checkPrototypes = (): void => {
  const keys = JSON.stringify([
    Object.getOwnPropertyNames(Object.prototype),
    Object.getOwnPropertyNames(Array.prototype),
    Object.getOwnPropertyNames(Function.prototype)
  ]);
  expect(keys).toBe(soundKeys);
  expect(Object.keys({})).toEqual([]);
};
