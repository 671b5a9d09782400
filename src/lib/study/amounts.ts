// Figures with where they come from: which of two counts, and what a wire is called in their words.
import type { Wire } from '#document/index.ts';
import { sameFields } from './same.ts';
import type { Amount } from './types.ts';

/** The one of greater magnitude; the first where they are equal, as with one declared twice. */
export const largerAmount = (a: Amount | null, b: Amount | null): Amount | null => {
  if (!a) return b;
  if (!b) return a;
  return Math.abs(b.value) > Math.abs(a.value) ? b : a;
};

/** True for two figures with the same value and words, or for two that are not known. */
export const isSameAmount = (a: Amount | null, b: Amount | null): boolean =>
  a === b || (a !== null && b !== null && sameFields(a, b));

/** "wire 12", or "a wire without number". */
export const wireName = (wire: Wire): string =>
  wire.number === '' ? 'a wire without number' : `wire ${wire.number}`;
