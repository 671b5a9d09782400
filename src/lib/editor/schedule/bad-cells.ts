// Cells that hold something that could not be read: it stays in its place until it is corrected.
import type { ManyCells } from './many-cells.ts';

export interface BadCell {
  readonly text: string;
  readonly why: string;
}

/** By cell: see `cellKey`. */
export type BadCells = Readonly<Record<string, BadCell>>;

export const cellKey = (row: string, column: string): string => `${row} ${column}`;

/** What is left unread after many cells were taken at once. */
export const afterMany = (before: BadCells, { taken, refused }: ManyCells): BadCells => {
  const read = new Set(taken.map(({ row, column }) => cellKey(row, column)));
  const left = Object.entries(before).filter(([key]) => !read.has(key));
  const fresh = refused.map(
    ({ row, column, text, why }) => [cellKey(row, column), { text, why }] as const
  );
  return Object.fromEntries([...left, ...fresh]);
};
