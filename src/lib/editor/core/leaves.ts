// The leaves that the left page of the book shows, by way of working. The schedule is one of each way, so
// that what is picked or found in it can always be shown.
import type { Way } from './ways.ts';

export const leaves = [
  'schedule',
  'proposals',
  'shelf',
  'cuts',
  'shopping',
  'order',
  'bench',
  'tests',
  'hand-on',
  'compare'
] as const;
export type Leaf = (typeof leaves)[number];

/** In the order that their tabs stand; the first is open until another was chosen. */
export const leavesOf: Readonly<Record<Way, readonly [Leaf, ...Leaf[]]>> = {
  capture: ['schedule'],
  plan: ['schedule', 'proposals', 'shelf', 'cuts', 'shopping', 'order'],
  work: ['bench', 'tests', 'schedule'],
  share: ['hand-on', 'compare', 'schedule']
};

export const leafNames: Readonly<Record<Leaf, string>> = {
  schedule: 'Schedule',
  proposals: 'Proposals',
  shelf: 'Shelf',
  cuts: 'Cut list',
  shopping: 'Shopping',
  order: 'Order of work',
  bench: 'Bench list',
  tests: 'Test sheets',
  'hand-on': 'Hand on',
  compare: 'Compare'
};
