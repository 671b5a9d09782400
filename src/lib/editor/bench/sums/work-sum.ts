// A whole sum while its fields are being filled in: each field's reading, and what can be answered.
// An answer is made from what stands in the fields now, or there is none: never an older one.
import { runSum, SumError, type Sum, type SumErrorParts, type SumResult } from '#physics/index.ts';
import { buildFigure, type Figure } from './figures.ts';
import { readField, type FieldReading } from './read-field.ts';

export type Texts = Readonly<Record<string, string>>;

export interface SheetReading {
  readonly fields: Readonly<Record<string, FieldReading>>;
  /** Inputs that are blank and cannot be done without. */
  readonly needed: readonly string[];
  readonly refused: readonly string[];
  /** One of these has to be typed before anything is known at all. */
  readonly needsOneOf: readonly string[];
  /** Blank inputs that count as nought, so that the answer is a lower bound. */
  readonly countedAsNone: readonly string[];
}

/** By sum: inputs that add up, and of which a blank one counts as nought. */
export const addends: Readonly<Record<string, readonly string[]>> = {
  stress: ['dc', 'ac', 'pulse'],
  'insulation-class': ['dc', 'ac', 'pulse']
};

export function readSheet(sum: Sum, texts: Texts): SheetReading {
  const names = Object.keys(sum.inputs.shape);
  const fields = Object.fromEntries(
    names.map((name) => [name, readField(sum, name, texts[name] ?? '')])
  );
  const inState = (state: FieldReading['state']) =>
    names.filter((name) => fields[name]?.state === state);
  const parts = addends[sum.id] ?? [];
  const blankParts = parts.filter((name) => fields[name]?.state === 'taken');
  const isEmpty = parts.length > 0 && blankParts.length === parts.length;
  return {
    fields,
    needed: inState('needed'),
    refused: inState('refused'),
    needsOneOf: isEmpty ? parts : [],
    countedAsNone: isEmpty ? [] : blankParts
  };
}

export const isComplete = ({ needed, refused, needsOneOf }: SheetReading): boolean =>
  needed.length === 0 && refused.length === 0 && needsOneOf.length === 0;

export type Answer =
  /** Something is missing or cannot be read. */
  | { readonly state: 'waiting' }
  /** Being worked out; the answer before is no longer shown. */
  | { readonly state: 'working' }
  | { readonly state: 'found'; readonly result: SumResult; readonly figure: Figure | null }
  /** The fields can be read one by one, but not together. */
  | { readonly state: 'refused'; readonly error: SumErrorParts };

/** Runs a sum. What the sum refuses is an answer too; anything else that is thrown is not caught. */
export function workSum(id: string, texts: Texts): Answer {
  try {
    const result = runSum(id, texts);
    return { state: 'found', result, figure: buildFigure(result) };
  } catch (error) {
    if (!(error instanceof SumError)) throw error;
    const { problem, input, value, limit, wayOut } = error;
    return { state: 'refused', error: { problem, input, value, limit, wayOut } };
  }
}
