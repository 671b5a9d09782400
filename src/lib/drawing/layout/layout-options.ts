// What a layout may be asked: how long it may take, whom it tells how far it is, who may stop it.
import type { Geometry } from './geometry.ts';

export interface LayoutProgress {
  /** Steps that are done, of how many in all. */
  readonly done: number;
  readonly of: number;
  /** What is being done, for people. */
  readonly name: string;
}

export interface LayoutOptions {
  readonly onProgress?: (progress: LayoutProgress) => void;
  readonly signal?: AbortSignal;
  /** The whole layout may take this long; 10 s where nothing is said. */
  readonly timeLimitMs?: number;
  /** Whole layouts that are tried at most, of which the best is kept. */
  readonly tries?: number;
  /** The diagram as it was laid out before the last edits: what it has stays where it is, and only what
   *  is new is given a place. Null: everything is laid out anew. */
  readonly before?: Geometry | null;
}

/** A layout that was stopped or took too long; the message says which and what to do. */
export class LayoutError extends Error {
  readonly why: 'stopped' | 'time';

  constructor(why: LayoutError['why'], message: string) {
    super(message);
    this.name = 'LayoutError';
    this.why = why;
  }
}
