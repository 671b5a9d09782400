// Sound inputs to start from: what this program writes, and lists as people keep them.
import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { strToU8, unzipSync, zipSync } from 'fflate';
import Papa from 'papaparse';
import writeXlsxFile from 'write-excel-file/universal';
import { saveDocument, type ChassisDocument } from '#document/index.ts';
import { decodeListBytes } from '#intake/index.ts';
import { buildShareLink } from '#storage/index.ts';
import { arbitraryDocument } from '../helpers/arbitrary-document.ts';

const read = (path: string): Uint8Array => readFileSync(new URL(`../${path}`, import.meta.url));
const decoder = new TextDecoder();

/** Small documents with everything in them that the schema knows. */
export const smallDocuments: readonly ChassisDocument[] = fc.sample(arbitraryDocument(3), {
  seed: 71,
  numRuns: 30
});

/** Texts of documents, of an earlier version too. */
export const documentTexts: readonly string[] = [
  ...smallDocuments.map((document) => saveDocument(document)),
  decoder.decode(read('document/versions/radio-1.chassis.json'))
];

/** Wire lists in many manners. */
export const lists: readonly Uint8Array[] = readdirSync(new URL('../intake/lists', import.meta.url))
  .filter((name) => /\.(csv|tsv|txt)$/.test(name))
  .map((name) => read(`intake/lists/${name}`));

/** Zips that other programs wrote. */
export const zips: readonly Uint8Array[] = ['by-info-zip', 'by-python'].map((name) =>
  read(`storage/zips/${name}.chassis.zip`)
);

/** What follows the # in links to the small documents that fit into one. */
export const shareHashes: readonly string[] = smallDocuments.flatMap((document) => {
  const built = buildShareLink('https://underchassis.example/', document);
  return built.ok ? [built.link.slice(built.link.indexOf('#'))] : [];
});

const cellsOf = (list: Uint8Array): string[][] => {
  const text = decodeListBytes(list);
  return Papa.parse<string[]>(text).data.slice(0, 25);
};

// Numbers stand in a workbook as numbers, texts in a table of their own.
const sheetOf = (rows: readonly (readonly string[])[]) =>
  rows.map((row) =>
    row.map((text) => (/^\d{1,6}$/.test(text) ? { value: Number(text) } : { value: text }))
  );

/** Packed with the same time always, or not at all; without the time at which it was written. */
export const packWorkbook = (
  parts: Readonly<Record<string, Uint8Array>>,
  level: 0 | 6 = 0
): Uint8Array =>
  zipSync(
    { ...parts, 'docProps/core.xml': strToU8('<coreProperties/>') },
    { level, mtime: new Date(1990, 0, 1) }
  );

/** Workbooks as another library writes them: each of the lists on a sheet, alone and behind another sheet. */
export const writeWorkbooks = async (): Promise<Uint8Array[]> => {
  const books: Uint8Array[] = [];
  const other = { data: [[{ value: 'Shopping' }], [{ value: 'solder' }]], sheet: 'Other' };
  for (const list of lists) {
    const data = sheetOf(cellsOf(list));
    for (const before of [[], [other]]) {
      const written = writeXlsxFile([...before, { data, sheet: 'Wires' }]);
      const bytes = new Uint8Array(await (await written.toBlob()).arrayBuffer());
      books.push(packWorkbook(unzipSync(bytes), 6));
    }
  }
  return books;
};
