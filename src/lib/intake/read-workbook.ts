// The sheets of a workbook (ECMA-376, Office Open XML) as rows of cells, as a person reads them there. The
// reader is loaded when the first workbook is opened.
import type { CellValue } from 'read-excel-file/universal';
import { openListRows, type ListOpened } from './list-source.ts';

export interface WorkbookSheet {
  readonly name: string;
  readonly rows: readonly (readonly string[])[];
}

export type WorkbookReading =
  | { readonly ok: true; readonly sheets: readonly WorkbookSheet[] }
  | { readonly ok: false; readonly problem: string };

// A binary number has more digits than anybody typed: 15 are what a spreadsheet keeps.
const numberText = (value: number): string => String(Number(value.toPrecision(15)));

const cellText = (value: unknown): string => {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number') return numberText(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  // A date is what a spreadsheet makes of "3-5": it is shown as one, so that the person sees it.
  if (value instanceof Date) return value.toISOString().slice(0, 10);
  return String(value as string);
};

/** Reads a workbook in which nothing is packed and whose size was judged. Never throws on what is in it. */
export const readWorkbook = async (plainZip: ArrayBuffer): Promise<WorkbookReading> => {
  const { default: read } = await import('read-excel-file/universal');
  try {
    const found = await read(plainZip, { trim: false });
    const sheets = found.map(({ sheet, data }): WorkbookSheet => {
      const rows = data.map((row: readonly (CellValue | null)[]) => row.map(cellText));
      return { name: sheet, rows };
    });
    return { ok: true, sheets };
  } catch {
    // What the reader throws on a damaged part is a slip of its own, in words that help nobody.
    const problem =
      'could not be read as a workbook: a part of it is missing, damaged or written in a way that is not known here';
    return { ok: false, problem };
  }
};

/** A sheet of a workbook, or the whole of a text, opened as a list. */
export interface OpenedSheet {
  /** Empty for a list that is no workbook. */
  readonly name: string;
  readonly opened: ListOpened;
}

/** The sheets that hold anything, as lists; that with the wires first: the first in which ends were
 *  found, else the first of all. */
export const openSheets = (sheets: readonly WorkbookSheet[]): readonly OpenedSheet[] => {
  const all = sheets
    .filter(({ rows }) => rows.some((row) => row.some((cell) => cell !== '')))
    .map(({ name, rows }): OpenedSheet => ({ name, opened: openListRows(rows) }));
  const main = all.find(({ opened }) => opened.ok && opened.source.isRecognised);
  return main === undefined ? all : [main, ...all.filter((one) => one !== main)];
};
