// Ids are a letter that says what kind of thing it names and nine characters of Crockford's base-32
// alphabet (no i, l, o, u: nothing to misread). Chance comes in as an argument.
import type { Id } from './primitives.ts';

export const idLetters = {
  document: 'd',
  unit: 'u',
  part: 'p',
  terminal: 't',
  element: 'e',
  wire: 'w',
  cable: 'c',
  support: 's',
  photo: 'f',
  pattern: 'm',
  callout: 'n',
  stock: 'r'
} as const;
export type IdKind = keyof typeof idLetters;
export type MakeId = (kind: IdKind) => Id;

/** Crockford's base-32 alphabet in small letters.
 *  Source: D. Crockford, "Base 32", symbol chart. */
export const idAlphabet = '0123456789abcdefghjkmnpqrstvwxyz';
const idLength = 9;

/** A maker of ids.
 *  @param random returns a number from 0 up to, but not including, 1, as `Math.random` does. */
export const makeIdFrom =
  (random: () => number): MakeId =>
  (kind) => {
    let id: string = idLetters[kind];
    for (let index = 0; index < idLength; index++) {
      id += idAlphabet.charAt(Math.floor(random() * idAlphabet.length));
    }
    return id;
  };
