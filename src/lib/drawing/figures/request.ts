// What a figure is drawn from: one part, its terminals in order, and the ends that meet there.
import type { Id, Part, Terminal } from '#document/index.ts';
import type { Side } from '../presentation/sides.ts';
import type { PartEnd } from './part-end.ts';

export interface FigureRequest {
  readonly part: Part;
  readonly terminals: readonly Terminal[];
  readonly ends: readonly PartEnd[];
}

/** The ends of each terminal, in no order; those of the cable's mouth under null. */
export const endsByTerminal = (ends: readonly PartEnd[]): ReadonlyMap<Id | null, PartEnd[]> => {
  const map = new Map<Id | null, PartEnd[]>();
  for (const end of ends) {
    const known = map.get(end.terminal);
    if (known) known.push(end);
    else map.set(end.terminal, [end]);
  }
  return map;
};

/** What it costs all of the ends to leave by one side. */
export const costOf = (ends: readonly PartEnd[], side: Side): number =>
  ends.reduce((sum, { cost }) => sum + cost[side], 0);

/** The cheaper of two sides; the first where they cost the same. */
export const cheaper = (ends: readonly PartEnd[], one: Side, other: Side): Side =>
  costOf(ends, other) < costOf(ends, one) ? other : one;
