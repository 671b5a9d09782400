// The rows of a list as they are shown before they come in: which hold wires, and which cells were not
// read and why, in their place.
import type { IntakeNote, ListLayout } from '#intake/index.ts';

export interface CellOfList {
  readonly column: number;
  readonly text: string;
  /** What the reader says of it, or null. */
  readonly why: string | null;
  /** It has a field of its own: it was not read, or was changed here. */
  readonly isOpen: boolean;
}

export interface RowOfList {
  /** Index in the list. */
  readonly row: number;
  readonly kind: 'above' | 'headings' | 'wire' | 'left out';
  readonly cells: readonly CellOfList[];
  /** Something in it was not read. */
  readonly isUnread: boolean;
  /** What the reader says of the row as a whole. */
  readonly why: string | null;
}

/** @param repaired cells that were changed, as "row column" */
export const viewOfRows = (
  rows: readonly (readonly string[])[],
  { columns, headingRow, firstRow }: ListLayout,
  notes: readonly IntakeNote[],
  repaired: readonly string[]
): readonly RowOfList[] => {
  const notesOf = new Map<number, IntakeNote[]>();
  for (const note of notes)
    if (note.row !== null && note.kind !== 'reading')
      notesOf.set(note.row - 1, [...(notesOf.get(note.row - 1) ?? []), note]);
  return rows.flatMap((cells, row): RowOfList[] => {
    if (cells.every((cell) => cell === '')) return [];
    const said = notesOf.get(row) ?? [];
    const leftOut = said.find(({ kind }) => kind === 'left out');
    const isHeading = headingRow !== null && row >= headingRow && row < firstRow;
    const kind = isHeading
      ? 'headings'
      : row < firstRow
        ? 'above'
        : leftOut === undefined
          ? 'wire'
          : 'left out';
    const placed = new Set<IntakeNote>();
    const shown = Array.from({ length: Math.max(cells.length, columns.length) }, (_, column) => {
      const text = cells[column] ?? '';
      const heading = columns[column]?.heading;
      const own = said.find(
        (note) =>
          note.kind === 'unread' &&
          !placed.has(note) &&
          note.column === heading &&
          (note.cell === null || text.startsWith(note.cell.slice(0, 60)))
      );
      if (own !== undefined) placed.add(own);
      return {
        column,
        text,
        why: own?.words ?? null,
        isOpen: own !== undefined || repaired.includes(`${row} ${column}`)
      };
    });
    const rest = said.filter((note) => !placed.has(note)).map(({ words }) => words);
    return [
      {
        row,
        kind,
        cells: shown,
        isUnread: said.some((note) => note.kind === 'unread'),
        why: rest.length === 0 ? null : rest.join('; ')
      }
    ];
  });
};
