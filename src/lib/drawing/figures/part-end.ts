// The ends of lines and marks at one part, as its figure needs them.
import type { Id } from '#document/index.ts';
import type { Side } from '../presentation/sides.ts';
import type { NumberTag } from './number-tag.ts';

/** What a mark shows beside its terminal. */
export interface MarkFace {
  readonly kind: 'ground' | 'metal' | 'component' | 'free' | 'gather';
  readonly tags: readonly NumberTag[];
  /** Where it goes, in words. */
  readonly words: string;
  readonly component?: {
    readonly id: Id;
    readonly kind: string;
    readonly reference: string;
    readonly value: string;
    /** Its other lead is on the metal. */
    readonly toMetal: boolean;
  };
}

export interface PartEnd {
  readonly id: string;
  /** Null at the mouth of a plug's cable. */
  readonly terminal: Id | null;
  /** Null for the end of a line. */
  readonly mark: MarkFace | null;
  /** What it costs to leave by a side: the figure takes the cheapest that its terminals allow. */
  readonly cost: Readonly<Record<Side, number>>;
  /** Where the line heads, degrees clockwise from the top; null where that is not known. */
  readonly towardsDeg: number | null;
  /** Among the ends of one terminal on one side: smaller first, downwards or to the right. */
  readonly sort: number;
}
