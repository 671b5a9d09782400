// A spreadsheet's workbook is a zip of XML (ECMA-376, Office Open XML). Its sizes are judged before
// anything is inflated, and what is taken out of it is laid into a plain zip in which nothing is packed:
// whoever reads that needs to inflate nothing.
import type { Problem } from '#document/index.ts';
import { zipSync, type ZipOptions } from 'fflate';
import { isZip, readZipDirectory, readZipEntry, ZipFault, type ZipEntry } from './zip-directory.ts';

/** What a workbook may hold at most. A list of 50,000 wires has about 40 MB of XML. */
export const workbookLimits = {
  /** Of one part of it, unpacked. */
  partBytes: 64 * 1024 * 1024,
  /** Of all parts that are read, unpacked. */
  allBytes: 96 * 1024 * 1024,
  /** Of a sheet, counted to its last filled cell: one cell far out would else fill the memory with blanks. */
  rows: 50_000,
  columns: 256,
  /** Of a sheet, as a block up to its last row and its last column. */
  cells: 3_000_000
} as const;

export type WorkbookUnpacked =
  | { readonly ok: true; readonly plainZip: ArrayBuffer }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const isRead = ({ name }: ZipEntry): boolean => /\.xml(?:\.rels)?$/i.test(name);
const isBook = ({ name }: ZipEntry): boolean => name === 'xl/workbook.xml';
const plain: ZipOptions = { level: 0, mtime: new Date(1980, 0, 1) };

/** True where the bytes are a zip that holds a workbook. Never throws: a damaged zip holds none. */
export const isWorkbook = (bytes: Uint8Array): boolean => {
  if (!isZip(bytes)) return false;
  try {
    return readZipDirectory(bytes).some(isBook);
  } catch (error) {
    if (error instanceof ZipFault) return false;
    throw error;
  }
};

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1024 / 1024)} MB`;

const emptyCells = /<(?:\w+:)?c\b[^<>]*\/>|<(?:\w+:)?c\b[^<>]*><\/(?:\w+:)?c>/g;
const emptyRows = /<(?:\w+:)?row\b[^<>]*\/>|<(?:\w+:)?row\b[^<>]*>\s*<\/(?:\w+:)?row>/g;

/** The number of a column by its letters: A is 1, AA is 27. */
const columnNumber = (letters: string): number =>
  [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);

const placed = /<(?:[\w.-]+:)?(c|row)\b((?:[^<>"']|"[^"]*"|'[^']*')*)>/g;
const placeIn = /(?:^|\s)r\s*=\s*(?:"([^"]*)"|'([^']*)')/;
const places: Readonly<Record<string, RegExp>> = {
  c: /^([A-Z]{1,3})([1-9]\d{0,6})$/,
  row: /^()([1-9]\d{0,6})$/
};

/** Fails on a place that is too far out, or is not written as the standard has it: whoever reads the sheet
 *  would fill up with blanks to there. */
const checkPlaces = (name: string, xml: string): void => {
  const { rows, columns, cells } = workbookLimits;
  const part = JSON.stringify(name);
  let [lastRow, lastColumn] = [0, 0];
  for (const [, tag = '', attributes = ''] of xml.matchAll(placed)) {
    const found = placeIn.exec(attributes);
    if (!found) continue;
    const place = found[1] ?? found[2] ?? '';
    const [, letters, digits] = places[tag]?.exec(place) ?? [];
    if (letters === undefined)
      throw new ZipFault(
        `${part} has a cell at ${JSON.stringify(place.slice(0, 20))}, which is no place`
      );
    const [row, column] = [Number(digits), columnNumber(letters)];
    if (row > rows) throw new ZipFault(`${part} has a cell in row ${row}; the last is ${rows}`);
    if (column > columns)
      throw new ZipFault(`${part} has a cell in column ${letters}; the most is ${columns} columns`);
    lastRow = Math.max(lastRow, row);
    lastColumn = Math.max(lastColumn, column);
  }
  if (lastRow * lastColumn > cells)
    throw new ZipFault(
      `${part} has ${lastRow} rows by ${lastColumn} columns; the most is ${cells} cells`
    );
};

/** A sheet without the cells that only have a format, so that it ends with its last filled cell; any other part
 *  as it is. Which part is a sheet is told by what is in it: a workbook may give it any name. */
const trimSheet = (name: string, content: Uint8Array): Uint8Array => {
  const xml = new TextDecoder().decode(content);
  if (!xml.includes('sheetData')) return content;
  const trimmed = xml.replace(emptyCells, '').replace(emptyRows, '');
  checkPlaces(name, trimmed);
  return new TextEncoder().encode(trimmed);
};

const unpack = (bytes: Uint8Array): ArrayBuffer => {
  const entries = readZipDirectory(bytes).filter(isRead);
  const all = entries.reduce((sum, entry) => sum + entry.bytes, 0);
  for (const { name, bytes: size } of entries)
    if (size > workbookLimits.partBytes)
      throw new ZipFault(
        `${JSON.stringify(name)} has ${megabytes(size)} unpacked; the most is ${megabytes(workbookLimits.partBytes)}`
      );
  if (all > workbookLimits.allBytes)
    throw new ZipFault(
      `it holds ${megabytes(all)} of sheets unpacked; the most is ${megabytes(workbookLimits.allBytes)}`
    );
  const parts = entries.map((entry): [string, [Uint8Array, ZipOptions]] => {
    const content = trimSheet(entry.name, readZipEntry(bytes, entry));
    return [entry.name, [content, plain]];
  });
  const zip = zipSync(Object.fromEntries(parts));
  return zip.buffer.slice(zip.byteOffset, zip.byteOffset + zip.byteLength) as ArrayBuffer;
};

/** A workbook with nothing packed in it, held to its limits. Never throws on what is in the file.
 *  @param file what the problems call it */
export const unpackWorkbook = (bytes: Uint8Array, file: string): WorkbookUnpacked => {
  try {
    return { ok: true, plainZip: unpack(bytes) };
  } catch (error) {
    if (!(error instanceof ZipFault)) throw error;
    const wayOut = 'save the sheet with the wires as CSV, and open that';
    return {
      ok: false,
      problems: [{ file, place: 'the workbook', wrong: error.message, wayOut }]
    };
  }
};
