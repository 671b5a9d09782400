// How a list is laid out: what parts its cells, where its headings are, what each column holds, how
// its numbers are written. Each delimiter is tried, and the one by which most headings are understood wins.
import { commaUseOf, decimalCommaOf, type CommaUse } from './decimal-comma.ts';
import { findHeadings } from './find-headings.ts';
import { guessColumns } from './guess-columns.ts';
import { delimiters, previewRows } from './read-table.ts';
import type { Column, ColumnRole } from './columns.ts';

export interface ListLayout {
  readonly delimiter: string;
  readonly columns: readonly Column[];
  /** Index of the first heading row, or null where there is none. */
  readonly headingRow: number | null;
  /** Index of the first row below the headings. */
  readonly firstRow: number;
  /** The headings name no ends: columns were told by what stands in them. */
  readonly isGuessed: boolean;
}

interface Scored {
  readonly layout: ListLayout;
  /** How sure it is; nothing where the columns were told by what stands in them. */
  readonly score: number;
}

const readLayout = (
  rows: readonly (readonly string[])[],
  delimiter: string,
  by: 'headings' | 'contents'
): Scored | null => {
  if (by === 'headings') {
    const found = findHeadings(rows);
    if (!found) return null;
    const { columns, row, count, score } = found;
    const layout = { delimiter, columns, headingRow: row, firstRow: row + count, isGuessed: false };
    return { layout, score };
  }
  const guess = guessColumns(rows);
  return guess && { layout: { delimiter, ...guess, isGuessed: true }, score: 0 };
};

/** The layout of rows whose cells are parted already; null where nothing in them looks like ends. */
export const layoutOfRows = (
  rows: readonly (readonly string[])[],
  delimiter: string
): ListLayout | null =>
  (readLayout(rows, delimiter, 'headings') ?? readLayout(rows, delimiter, 'contents'))?.layout ??
  null;

/** The layout of a list from its first rows, or null where nothing in it looks like ends of wires. */
export const findLayout = (plainText: string): ListLayout | null => {
  const previews = delimiters.map((delimiter) => ({
    delimiter,
    rows: previewRows(plainText, delimiter, 100)
  }));
  for (const by of ['headings', 'contents'] as const) {
    let best: Scored | null = null;
    for (const { delimiter, rows } of previews) {
      const found = readLayout(rows, delimiter, by);
      if (found && (best === null || found.score > best.score)) best = found;
    }
    if (best) return best.layout;
  }
  return null;
};

const amountRoles: ReadonlySet<ColumnRole> = new Set([
  'volts',
  'dcV',
  'acV',
  'pulseV',
  'amps',
  'length',
  'fromStrip',
  'toStrip'
]);

export interface NumberStyle {
  /** By column index; undefined where the cells do not tell. */
  readonly decimalComma: ReadonlyMap<number, boolean | undefined>;
  /** The unit of bare numbers in a column, from its heading, else from its other cells. */
  readonly unit: ReadonlyMap<number, string | null>;
}

const lengthUnitOf = (cell: string): string | null => {
  if (/\d ?(?:"|''|”|in\.?|inch(?:es)?)$/i.test(cell)) return 'in';
  return /\d ?(mm|cm|ft|m)\.?$/i.exec(cell)?.[1]?.toLowerCase() ?? null;
};

/** How numbers are written in the columns that hold amounts. */
export const readNumberStyle = (
  columns: readonly Column[],
  rows: readonly (readonly string[])[]
): NumberStyle => {
  const amounts = columns.filter(({ role }) => amountRoles.has(role));
  const uses = new Map<number, CommaUse>();
  const unit = new Map<number, string | null>();
  for (const column of amounts) {
    const cells = rows.map((row) => row[column.index] ?? '').filter((cell) => cell !== '');
    uses.set(column.index, commaUseOf(cells));
    const isLength = /^(?:length|fromStrip|toStrip)$/.test(column.role);
    const inCells = new Set(
      isLength ? cells.map(lengthUnitOf).filter((name) => name !== null) : []
    );
    const [only] = inCells;
    const fallback = column.role === 'amps' ? 'A' : 'V';
    unit.set(
      column.index,
      column.unit ?? (isLength ? (inCells.size === 1 ? (only ?? null) : null) : fallback)
    );
  }
  const told = new Set([...uses.values()].filter((use) => use !== 'not told'));
  const [first] = told;
  const all: CommaUse =
    told.size === 1 ? (first ?? 'mixed') : told.size === 0 ? 'not told' : 'mixed';
  const decimalComma = new Map(
    amounts.map(({ index }) => [index, decimalCommaOf(uses.get(index) ?? 'not told', all)])
  );
  return { decimalComma, unit };
};
