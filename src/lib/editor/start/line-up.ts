// A tube line-up as it is pasted from a label or typed: "6CG7, 6BQ6GT", "V1 - 6CG7 sync", one a line or
// all in one. What cannot be read is told, and never holds up the rest.
import { tubeBases } from '#handbook/index.ts';
import { readOrders, type PartOrder } from '../tools/place/read-order.ts';

export interface LineUpEntry {
  /** As it was written. */
  readonly text: string;
  readonly unit: string | null;
  readonly orders: readonly PartOrder[];
  /** Why it is left out; null where it is not. */
  readonly problem: string | null;
  /** A tube that the handbook does not know: its base would make it a socket with pins. */
  readonly needsBase: boolean;
}

/** What a person may choose for a tube that the handbook does not know. */
export const baseChoices = tubeBases.map(({ id, name }) => ({ id, name }));

const tubeLike = /^\d{1,2}[a-z]{1,3}\d{1,3}[a-z]{0,4}$/i;
const reference = /^V\d{1,3}[a-z]?$/i;

const tidied = (piece: string): string =>
  piece
    .replaceAll(/[\u2013\u2014]/g, '-')
    .replace(/^\s*(?:[-*\u2022]|\d{1,2}[.)])\s+/, '')
    .replace(/^\s*(V\d{1,3}[a-z]?)\s*[-:=.]?\s*/i, '$1 ')
    .replaceAll(/\s+/g, ' ')
    .trim();

/** A run of types with nothing but space between them is several tubes. */
const apart = (piece: string): readonly string[] => {
  const words = piece.split(' ');
  const isRun = words.length > 1 && words.every((word) => tubeLike.test(word));
  return isRun ? words : [piece];
};

const splitUp = (text: string, units: readonly string[]) => {
  let unit: string | null = null;
  const pieces: { readonly text: string; readonly unit: string | null }[] = [];
  for (const line of text.slice(0, 8000).split(/\n/)) {
    const heading = /^\s*(.+?)\s*:\s*$/.exec(line)?.[1]?.toLowerCase();
    const named = units.find((name) => name.toLowerCase() === heading);
    if (named !== undefined) {
      unit = named;
      continue;
    }
    for (const piece of line.split(/[,;]/)) {
      for (const one of apart(tidied(piece))) if (one !== '') pieces.push({ text: one, unit });
    }
  }
  return pieces;
};

const isUnknownTube = (text: string): boolean =>
  text
    .split(' ')
    .slice(0, 2)
    .some((word) => tubeLike.test(word) && !reference.test(word));

/** The entries of a line-up, in its order.
 *  @param bases by what was written: the base that a person chose for it
 *  @param units names of units; a line that is one of them and a colon says where the next ones are */
export const readLineUp = (
  text: string,
  bases: Readonly<Record<string, string>> = {},
  units: readonly string[] = []
): readonly LineUpEntry[] =>
  splitUp(text, units).map(({ text: written, unit }) => {
    const base = Object.hasOwn(bases, written) ? bases[written] : undefined;
    const reading = readOrders(base === undefined ? written : withBase(written, base));
    if (reading.ok) {
      return { text: written, unit, orders: reading.orders, problem: null, needsBase: false };
    }
    const needsBase = isUnknownTube(written);
    const problem = needsBase ? 'not in the handbook: which base has it?' : reading.problem;
    return { text: written, unit, orders: [], problem, needsBase };
  });

const withBase = (written: string, base: string): string => {
  const words = written.split(' ');
  const at = words.findIndex((word) => tubeLike.test(word) && !reference.test(word)) + 1;
  return [...words.slice(0, at), base, ...words.slice(at)].join(' ');
};
