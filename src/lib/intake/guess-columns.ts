// A list without a heading row: columns are taken by what stands in them. Two columns of ends are
// needed; colours, gauges and numbers are recognised beside them.
import { parseColour } from '#handbook/index.ts';
import type { Column, ColumnRole } from './columns.ts';
import { readHeading } from './heading-words.ts';
import { readEnd } from './read-end.ts';

const rowsToLookAt = 60;
const columnsToLookAt = 40;

const isEnd = (cell: string): boolean => {
  const end = readEnd(cell);
  return (
    end.kind === 'ground' ||
    (end.kind === 'terminal' && /\d/.test(end.reference) && !/^\d/.test(end.reference))
  );
};

const shareOf = (cells: readonly string[], test: (cell: string) => boolean): number =>
  cells.length === 0 ? 0 : cells.filter(test).length / cells.length;

const roleOf = (cells: readonly string[]): ColumnRole | null => {
  if (cells.length === 0) return null;
  if (shareOf(cells, isEnd) >= 0.6) return 'from';
  if (shareOf(cells, (cell) => parseColour(cell) !== null) >= 0.6) return 'colour';
  const isGauge = (cell: string) => /^#?(?:1[0-9]|2[0-9]|30)(?: ?awg)?$/i.test(cell);
  const distinct = new Set(cells).size;
  if (shareOf(cells, isGauge) >= 0.8 && distinct <= Math.max(3, cells.length / 3)) return 'gauge';
  if (
    shareOf(cells, (cell) => /^#?\d{1,4}[A-Za-z]?$/.test(cell)) >= 0.8 &&
    distinct === cells.length
  )
    return 'number';
  return null;
};

export interface GuessedColumns {
  readonly columns: readonly Column[];
  /** Index of a row that names the columns in words that are not known here, or null. */
  readonly headingRow: number | null;
  readonly firstRow: number;
}

/** A row of names above the wires: a name over each end, and no end and no figure in it. */
const findNameRow = (
  rows: readonly (readonly string[])[],
  ends: readonly number[]
): number | null => {
  const first = rows.findIndex((row) => ends.every((index) => isEnd(row[index] ?? '')));
  for (let row = first - 1; row >= 0; row -= 1) {
    const cells = rows[row] ?? [];
    if (ends.some((index) => (cells[index] ?? '') === '' || isEnd(cells[index] ?? ''))) continue;
    if (!cells.some((cell) => /\d/.test(cell))) return row;
  }
  return null;
};

/** Columns that their contents did not tell, told by the names that are known after all. */
const nameColumns = (columns: readonly Column[], names: readonly string[]): Column[] => {
  const used = new Set(columns.map(({ role }) => role));
  return columns.map((column) => {
    const heading = (names[column.index] ?? '') || column.heading;
    const meaning = readHeading(heading);
    const role = meaning?.role;
    const isPlain = role !== undefined && !/^(?:end|part|terminal|both|from|to)/.test(role);
    if (column.role !== 'extra' || !isPlain || used.has(role as ColumnRole))
      return { ...column, heading };
    used.add(role as ColumnRole);
    return { ...column, role: role as ColumnRole, heading, unit: meaning?.unit ?? null };
  });
};

/** The columns of a list whose headings name no ends, or null where no two columns hold ends. */
export const guessColumns = (rows: readonly (readonly string[])[]): GuessedColumns | null => {
  const sample = rows.filter((row) => row.some((cell) => cell !== '')).slice(0, rowsToLookAt);
  const width = Math.min(columnsToLookAt, Math.max(0, ...sample.map((row) => row.length)));
  const used = new Set<ColumnRole>();
  const columns = Array.from({ length: width }, (_, index): Column => {
    const guess = roleOf(sample.map((row) => row[index] ?? '').filter((cell) => cell !== ''));
    const role = guess === 'from' && used.has('from') ? 'to' : guess;
    const own = role !== null && !used.has(role) ? role : 'extra';
    if (own !== 'extra') used.add(own);
    return { index, role: own, heading: `column ${index + 1}`, unit: null };
  });
  if (!used.has('from') || !used.has('to')) return null;
  const ends = columns.filter(({ role }) => role === 'from' || role === 'to');
  const headingRow = findNameRow(
    rows,
    ends.map(({ index }) => index)
  );
  return headingRow === null
    ? { columns, headingRow, firstRow: 0 }
    : {
        columns: nameColumns(columns, rows[headingRow] ?? []),
        headingRow,
        firstRow: headingRow + 1
      };
};
