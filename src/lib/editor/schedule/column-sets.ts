// The sets of columns that the schedule shows at once.
import type { ColumnSet } from '../core/preferences.svelte.ts';
import { columnIds, columnOf, type Column, type ColumnId } from './columns.ts';

const sets: Record<Exclude<ColumnSet, 'own'>, readonly ColumnId[]> = {
  overview: ['number', 'from', 'to', 'colour', 'carries', 'needs', 'cut', 'state'],
  found: ['number', 'from', 'to', 'colour', 'gauge', 'length', 'function', 'notes'],
  electrical: ['number', 'from', 'to', 'dc', 'ac', 'pulse', 'amps', 'needs'],
  all: columnIds.filter((id) => id !== 'carries')
};

export const columnSetNames: Record<ColumnSet, string> = {
  overview: 'Overview',
  found: 'As found',
  electrical: 'Electrical',
  all: 'All columns',
  own: 'Own choice'
};

/** What a set leaves out where the page is no wider than a hand; the rest of it is a pick away. */
const leftOutNarrow: Partial<Record<ColumnSet, readonly ColumnId[]>> = {
  overview: ['carries', 'cut'],
  found: ['function']
};

/** The columns of a set, left to right. */
export const columnsOf = (
  set: ColumnSet,
  isNarrow = false,
  own: readonly ColumnId[] = sets.overview
): readonly Column[] =>
  (set === 'own' ? own : sets[set])
    .filter((id) => !isNarrow || leftOutNarrow[set]?.includes(id) !== true)
    .map(columnOf);
