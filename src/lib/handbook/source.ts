// How far a row of the handbook can be trusted: seen in a published source, or from memory.
// Every table below carries one of these marks, and people are shown it.

export type Mark = 'verified' | 'from memory';

export interface Sourced {
  readonly mark: Mark;
  /** The title of the source, or the plain words that there is none. */
  readonly source: string;
}

export const memoryWords = 'from memory, check against your service data';

/** A row that nobody has held against a published page yet. */
export const fromMemory: Sourced = { mark: 'from memory', source: memoryWords };

/** A row that was read in a published source. */
export const verified = (source: string): Sourced => ({ mark: 'verified', source });
