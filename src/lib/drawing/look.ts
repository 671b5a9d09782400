// How a finished drawing is looked at: what the colour of its wires tells, and what of it is left out.
// Dash and width always tell the class, whatever the colour tells, and so does the number's box.
import type { Layer } from './display-list.ts';

export const colourings = ['class', 'function', 'state', 'findings', 'colour'] as const;
/** What the colour of a wire tells. */
export type Colouring = (typeof colourings)[number];

/** What can be left out. */
export const leavable = {
  numbers: 'numbers',
  grounds: 'ground marks',
  findings: 'marks of findings'
} as const satisfies Partial<Record<Layer, string>>;
export type Leavable = keyof typeof leavable;

export interface Look {
  readonly colouring: Colouring;
  readonly without: readonly Leavable[];
}

export const plainLook: Look = { colouring: 'class', without: [] };

/** What a tint stands for, in the order of the tints. */
export const toneWords: Readonly<
  Record<Exclude<Colouring, 'class' | 'colour'>, readonly string[]>
> = {
  function: ['signal', 'supply', 'heater', 'to the metal'],
  state: ['as found', 'tagged', 'removed', 'fitted', 'checked'],
  findings: ['no finding', 'note', 'caution', 'fault', 'danger']
};

/** Which ink each tint takes: those of the classes, since they keep apart for everybody's eyes. */
export const toneInks = {
  function: ['300', '600', '5k-15k', 'not known'],
  state: ['300', '5k-15k', '20k+', '600', '1k-3k'],
  findings: ['300', 'not known', '1k-3k', '5k-15k', '20k+']
} as const satisfies Readonly<Record<keyof typeof toneWords, readonly string[]>>;
