// A wire's way over the sheet as the places it passes, before it gets its lane beside other wires.
import type { Id } from '#document/index.ts';
import type { Spot } from '../presentation/sides.ts';

/** A place that wires pass. Wires that name the same key pass it side by side. */
export interface WayNode {
  readonly key: string;
  readonly at: Spot;
  /** `terminal`: all wires meet in its middle; `clear`: just outside a part; `corner`: of a part that
   *  wires bend round; `support`; `loose`: where a stub ends. */
  readonly kind: 'terminal' | 'clear' | 'corner' | 'support' | 'loose';
  /** Of a corner: a step of 1 away from the part; wires lie from the corner outward. */
  readonly outward?: Spot;
}

export interface Way {
  readonly wire: Id;
  /** Decides the order of wires that never part: smaller first. */
  readonly rank: number;
  /** Thickness of its line with what belongs to it, mm. */
  readonly widthMm: number;
  readonly nodes: readonly WayNode[];
}

/** Where a wire's drawn line ends although the wire goes on. */
export interface LooseEnd {
  /** What is written there: "?", "to V3-5". */
  readonly words: string;
  readonly why: 'not found' | 'no place';
}

export interface WireWay extends Way {
  /** The end that the line stops short of; null where both are drawn. */
  readonly loose: LooseEnd | null;
  /** Places in `nodes` between which it runs under a cable's jacket. */
  readonly jacket?: readonly [number, number];
}
