// What the marks of reference rows mean, in words.
import type { ReferenceMark } from '#physics/reference/reference-row.ts';

export const markWords: Readonly<
  Record<ReferenceMark, { readonly title: string; readonly column: string; readonly text: string }>
> = {
  verified: {
    title: 'verified',
    column: 'printed',
    text: 'The figure is printed in the source.'
  },
  derived: {
    title: 'derived',
    column: 'worked out',
    text: 'Worked out by hand or with another tool from figures that are printed in the source.'
  },
  memory: {
    title: 'from memory',
    column: 'remembered',
    text: 'Known to the authors, not held against a page. Counted apart, and proof of little.'
  }
};
