// What stands in the schedule and not in the document: the field that is open, and cells that could not be
// read. It is kept beside the chassis, so that it is there again when the browser was killed in mid-typing.
import type { BadCells } from './bad-cells.ts';

export interface TypedCells {
  /** The field that is open, where what it holds is not what the cell held. */
  readonly open: { readonly row: string; readonly column: string; readonly text: string } | null;
  /** By cell: see `cellKey`. */
  readonly bad: BadCells;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const readOpen = (value: unknown): TypedCells['open'] => {
  if (!isRecord(value)) return null;
  const { row, column, text } = value;
  return typeof row === 'string' && typeof column === 'string' && typeof text === 'string'
    ? { row, column, text }
    : null;
};

/** What was kept, as far as it is what this program keeps; some other version may have written it.
 *  @param hasRow whether a row is still there */
export const readTypedCells = (
  kept: unknown,
  hasRow: (row: string) => boolean
): TypedCells | null => {
  if (!isRecord(kept)) return null;
  const open = readOpen(kept['open']);
  const bad = Object.entries(isRecord(kept['bad']) ? kept['bad'] : {}).flatMap(([key, cell]) => {
    const [row = ''] = key.split(' ');
    if (!isRecord(cell) || !hasRow(row)) return [];
    const { text, why } = cell;
    return typeof text === 'string' && typeof why === 'string' ? [[key, { text, why }]] : [];
  });
  const stillOpen = open !== null && hasRow(open.row) ? open : null;
  if (stillOpen === null && bad.length === 0) return null;
  return { open: stillOpen, bad: Object.fromEntries(bad) as BadCells };
};
