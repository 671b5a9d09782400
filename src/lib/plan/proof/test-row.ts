// The shape that all test sheets share.
import type { Expectation } from './expectation.ts';

export interface TestRow {
  /** Stable: what a reading is kept under. */
  readonly id: string;
  readonly what: string;
  readonly where: string;
  /** Null where nothing is known that a reading could be held against. */
  readonly expected: Expectation | null;
  /** In words, also where there is no figure. */
  readonly words: string;
  /** No meter goes there. */
  readonly doNotMeasure: boolean;
  readonly note: string | null;
}

export interface TestSheet {
  readonly id: 'continuity' | 'insulation' | 'leakage' | 'power-up';
  readonly title: string;
  /** What has to be so before the first reading. */
  readonly before: readonly string[];
  /** What the readings do not tell. */
  readonly limits: readonly string[];
  /** What is written down beside the readings. */
  readonly record: readonly string[];
  readonly rows: readonly TestRow[];
}
