// Cells as the text that goes to and comes from a spreadsheet by the clipboard.
import { formulaStart } from '#paperwork/formula-start.ts';
import { openListText, type OpenedSheet } from '#intake/index.ts';
import Papa from 'papaparse';
import { columnIdOfHeading } from './column-headings.ts';

/** Cells as text that a spreadsheet takes: tabs between cells, what it would run neutralised. */
export const cellsToText = (cells: readonly (readonly string[])[]): string =>
  Papa.unparse(cells as string[][], {
    delimiter: '\t',
    newline: '\n',
    escapeFormulae: formulaStart
  });

/** Text of a spreadsheet's cells, row by row; the empty row that most of them end with is left out. */
export const textToCells = (text: string): readonly (readonly string[])[] => {
  const { data } = Papa.parse<string[]>(text, { delimiter: '\t' });
  const last = data.at(-1);
  return last?.every((cell) => cell === '') === true ? data.slice(0, -1) : data;
};

/** A list with headings of its own that are not all columns of the schedule: its columns have to be looked
 *  at before it can come in. Null for any other text. */
export const findOtherList = (text: string): OpenedSheet | null => {
  if (!text.trim().includes('\n')) return null;
  const opened = openListText(text);
  if (!opened.ok || !opened.source.isRecognised) return null;
  const { headingRow, isGuessed, columns } = opened.source.layout;
  const isOther =
    headingRow !== null &&
    !isGuessed &&
    columns.some(({ heading }) => columnIdOfHeading(heading) === null);
  return isOther ? { name: '', opened } : null;
};
