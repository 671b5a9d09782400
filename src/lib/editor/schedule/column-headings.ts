// Which column a heading of another list means: our own titles, and what the intake knows beside them.
import { readHeading } from '#intake/heading-words.ts';
import { columnList, type ColumnId } from './columns.ts';

const idOfRole: Partial<Record<string, ColumnId>> = {
  number: 'number',
  from: 'from',
  to: 'to',
  colour: 'colour',
  function: 'function',
  gauge: 'gauge',
  rating: 'rating',
  condition: 'condition',
  dcV: 'dc',
  acV: 'ac',
  pulseV: 'pulse',
  amps: 'amps',
  length: 'length',
  dress: 'dress',
  notes: 'notes',
  state: 'state'
};

/** The column that a heading of another list names, or null. */
export const columnIdOfHeading = (heading: string): ColumnId | null => {
  const plain = heading.trim().toLowerCase();
  const own = columnList.find(({ title, name }) =>
    [title, name].some((text) => text.toLowerCase() === plain)
  );
  const role = own === undefined ? readHeading(heading)?.role : undefined;
  return own?.id ?? (role === undefined ? null : (idOfRole[role] ?? null));
};
