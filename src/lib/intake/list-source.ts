// A list before it is read: its rows of cells, and how it seems to be laid out. Whoever shows it to a
// person can change both, and read it again.
import type { Column, ColumnRole } from './columns.ts';
import { columnsOfHeadings, isRepeatable } from './find-headings.ts';
import { findLayout, layoutOfRows, type ListLayout } from './list-layout.ts';
import {
  delimiters,
  maxListCharacters,
  maxListRows,
  plainListText,
  previewRows,
  readTable,
  tidyCell
} from './read-table.ts';

export interface ListSource {
  readonly rows: readonly (readonly string[])[];
  readonly layout: ListLayout;
  /** Both ends were found, by the headings or by what stands in the columns. */
  readonly isRecognised: boolean;
}

export type ListOpened =
  | { readonly ok: true; readonly source: ListSource }
  /** What is wrong, as it follows the file's name. */
  | { readonly ok: false; readonly problem: string };

const widthOf = (rows: readonly (readonly string[])[]): number =>
  rows.slice(0, 200).reduce((most, row) => Math.max(most, row.length), 0);

/** Nothing is known of any column: all are kept as text until somebody says what they hold. */
const plainColumns = (rows: readonly (readonly string[])[]): Column[] =>
  Array.from({ length: widthOf(rows) }, (_, index) => ({
    index,
    role: 'extra',
    heading: `column ${index + 1}`,
    unit: null
  }));

/** The layout of rows in which no ends were found: the first filled row may hold headings. */
const plainLayout = (rows: readonly (readonly string[])[], delimiter: string): ListLayout => {
  const first = rows.findIndex((row) => row.filter((cell) => cell !== '').length > 1);
  const looksNamed = first >= 0 && !(rows[first] ?? []).some((cell) => /\d/.test(cell));
  return withHeadingRow(
    rows,
    {
      delimiter,
      columns: plainColumns(rows),
      headingRow: null,
      firstRow: Math.max(0, first),
      isGuessed: false
    },
    looksNamed ? first : null
  );
};

const likelyDelimiter = (plainText: string): string => {
  const filledBy = (delimiter: string): number =>
    previewRows(plainText, delimiter, 50).reduce((sum, row) => sum + row.length - 1, 0);
  return delimiters.reduce((best, delimiter) =>
    filledBy(delimiter) > filledBy(best) ? delimiter : best
  );
};

const checkRows = (count: number): string | null =>
  count > maxListRows
    ? `was not read: the list has more than ${maxListRows} rows, which is the limit: split it by unit`
    : null;

/** Opens the text of a list. Limits: 20 million characters, 50,000 rows. */
export const openListText = (text: string): ListOpened => {
  if (text.length > maxListCharacters) {
    const limit = `${maxListCharacters / 1_000_000} million characters`;
    return {
      ok: false,
      problem: `has ${text.length} characters, and the limit is ${limit}: is it the right file?`
    };
  }
  const plain = plainListText(text);
  const found = findLayout(plain);
  const delimiter = found?.delimiter ?? likelyDelimiter(plain);
  const table = readTable(plain, delimiter);
  if (!table.ok) return { ok: false, problem: `was not read: ${table.problem}` };
  const { rows } = table;
  const layout = found ?? plainLayout(rows, delimiter);
  return { ok: true, source: { rows, layout, isRecognised: found !== null } };
};

/** Opens rows that were cells already, as a workbook's sheet has them. Limit: 50,000 rows. */
export const openListRows = (cells: readonly (readonly string[])[]): ListOpened => {
  const problem = checkRows(cells.length);
  if (problem !== null) return { ok: false, problem };
  const rows = cells.map((row) => row.map(tidyCell));
  const found = layoutOfRows(rows.slice(0, 100), '\t');
  const layout = found ?? plainLayout(rows, '\t');
  return { ok: true, source: { rows, layout, isRecognised: found !== null } };
};

/** The layout with another row as its headings, each column read anew by what it is called.
 *  @param headingRow null where no row holds headings: columns keep what they hold */
export const withHeadingRow = (
  rows: readonly (readonly string[])[],
  layout: ListLayout,
  headingRow: number | null
): ListLayout => {
  if (headingRow === null) return { ...layout, headingRow, firstRow: 0, isGuessed: false };
  const headings = rows[headingRow] ?? [];
  const width = Math.max(widthOf(rows), headings.length);
  const columns = columnsOfHeadings(
    Array.from({ length: width }, (_, index) => headings[index] ?? '')
  );
  return { ...layout, columns, headingRow, firstRow: headingRow + 1, isGuessed: false };
};

/** The layout with a column that holds what a person says it does. A column that held it before is kept
 *  as text, but for those that a list may have several of. */
export const withRole = (
  layout: ListLayout,
  index: number,
  role: ColumnRole,
  unit: string | null = null
): ListLayout => {
  const columns = layout.columns.map((column): Column => {
    if (column.index === index) return { ...column, role, unit };
    const gives = column.role === role && !isRepeatable(role);
    return gives ? { ...column, role: 'extra', unit: null } : column;
  });
  return { ...layout, columns, isGuessed: false };
};

/** True where the columns name at least one end of the wires. */
export const namesEnds = ({ columns }: ListLayout): boolean =>
  columns.some(({ role }) =>
    ['from', 'to', 'both', 'fromPart', 'toPart', 'fromTerminal', 'toTerminal'].includes(role)
  );
