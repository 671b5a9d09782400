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
  columns: 256
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

/** A sheet without the cells that only have a format, so that it ends with its last filled cell. */
const trimSheet = ({ name }: ZipEntry, content: Uint8Array): Uint8Array => {
  const xml = new TextDecoder().decode(content);
  const trimmed = xml.replace(emptyCells, '').replace(emptyRows, '');
  for (const [, letters = '', digits = ''] of trimmed.matchAll(
    /<(?:\w+:)?(?:c|row)\b[^<>]*?\br="([A-Z]{0,3})(\d{1,9})"/g
  )) {
    const row = Number(digits);
    const { rows, columns } = workbookLimits;
    if (row > rows)
      throw new ZipFault(`${JSON.stringify(name)} has a cell in row ${row}; the last is ${rows}`);
    if (columnNumber(letters) > columns)
      throw new ZipFault(
        `${JSON.stringify(name)} has a cell in column ${letters}; the most is ${columns} columns`
      );
  }
  return new TextEncoder().encode(trimmed);
};

const isSheet = ({ name }: ZipEntry): boolean => /^xl\/worksheets\/[^/]+\.xml$/i.test(name);

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
    const content = readZipEntry(bytes, entry);
    return [entry.name, [isSheet(entry) ? trimSheet(entry, content) : content, plain]];
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
