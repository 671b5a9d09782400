// The ways of working, and what of the validator's word each wants to hear at once. While a chassis is
// being traced only dangers are said; everything else waits in a count until it is asked for.
import type { Severity } from '#checks/index.ts';

export const ways = ['capture', 'plan', 'work', 'share'] as const;
export type Way = (typeof ways)[number];

export const wayNames: Readonly<Record<Way, { readonly name: string; readonly does: string }>> = {
  capture: {
    name: 'Capture',
    does: 'Write down what is there. Only dangers are said at once; the rest waits in a count.'
  },
  plan: {
    name: 'Plan',
    does: 'Choose the replacements. All findings but notes stand in the margin.'
  },
  work: {
    name: 'Work',
    does: 'Tag, take out, fit and check at the bench. All findings but notes stand in the margin.'
  },
  share: {
    name: 'Share',
    does: 'Hand on what was found. Every finding stands in the margin.'
  }
};

/** Severities that are put away until they are asked for. */
export const hiddenIn = (way: Way): readonly Severity[] => hidden[way];

const hidden: Readonly<Record<Way, readonly Severity[]>> = {
  capture: ['fault', 'caution', 'note'],
  plan: ['note'],
  work: ['note'],
  share: []
};
