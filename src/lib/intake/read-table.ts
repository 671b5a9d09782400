// A list's text as rows of cells, whatever parts the cells and ends the lines. Limits first: a file
// of the wrong kind is refused before it is worked on.
import Papa from 'papaparse';

export const maxListCharacters = 20_000_000;
export const maxListRows = 50_000;

export const delimiters = [',', ';', '\t', '|'] as const;

export type TableReading =
  | { readonly ok: true; readonly rows: string[][] }
  | { readonly ok: false; readonly problem: string };

/** A cell trimmed; what a spreadsheet would run is exported with an apostrophe before it, which goes. */
export const tidyCell = (cell: string): string => {
  const text = cell.replaceAll('\u0000', '').trim();
  return /^'[=+\-@]/.test(text) ? text.slice(1) : text;
};

// A quote that is never closed would swallow the rest of the file: such a list is read again with
// quotes as plain characters.
const parse = (text: string, delimiter: string, preview: number): string[][] => {
  const options = { delimiter, newline: '\n', skipEmptyLines: false, preview } as const;
  const parsed = Papa.parse<string[]>(text, options);
  const isBroken = parsed.errors.some(({ code }) => code === 'MissingQuotes');
  if (!isBroken) return parsed.data;
  return Papa.parse<string[]>(text, { ...options, quoteChar: '\u0000' }).data.map((row) =>
    row.map((cell) => cell.trim().replace(/^"([^"]*)"$/, '$1'))
  );
};

/** The text with one kind of line end, no byte order mark, and no `sep=;` line before the list. */
export const plainListText = (text: string): string =>
  text
    .replace(/^\uFEFF/, '')
    .replace(/\r\n?/g, '\n')
    .replace(/^sep=.\n/i, '\n');

/** The first rows of a list, to find out what parts the cells. */
export const previewRows = (plainText: string, delimiter: string, count: number): string[][] =>
  parse(plainText.slice(0, 200_000), delimiter, count).map((row) => row.map(tidyCell));

/** All rows of a list, cells trimmed, blank rows kept so that rows count as in the spreadsheet.
 *  Refused with the limit: more than 20 million characters or 50,000 rows. */
export const readTable = (plainText: string, delimiter: string): TableReading => {
  const rows = parse(plainText, delimiter, maxListRows + 2);
  const last = rows.at(-1);
  if (last && last.every((cell) => cell === '')) rows.pop();
  if (rows.length > maxListRows) {
    return {
      ok: false,
      problem: `the list has more than ${maxListRows} rows, which is the limit: split it by unit`
    };
  }
  return { ok: true, rows: rows.map((row) => row.map(tidyCell)) };
};
