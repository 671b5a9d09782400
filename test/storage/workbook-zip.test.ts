// A workbook is judged before it is inflated and before it is laid out in memory: a small file can claim
// gigabytes, hold more than it claims, or set one cell so far out that the blanks before it fill the memory.
import { strToU8, zipSync } from 'fflate';
import { readWorkbook } from '#intake/index.ts';
import { isWorkbook, unpackWorkbook, workbookLimits } from '#storage/index.ts';
import { describe, expect, it } from 'vitest';

const relationships = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const book = (sheet: string | Uint8Array): Uint8Array =>
  zipSync({
    '[Content_Types].xml': strToU8('<Types/>'),
    'xl/workbook.xml': strToU8(
      `<workbook xmlns:r="${relationships}"><sheets><sheet name="A" sheetId="1" r:id="rId1"/></sheets></workbook>`
    ),
    'xl/_rels/workbook.xml.rels': strToU8(
      `<Relationships><Relationship Id="rId1" Type="${relationships}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`
    ),
    'xl/worksheets/sheet1.xml': typeof sheet === 'string' ? strToU8(sheet) : sheet,
    'xl/media/photo.png': new Uint8Array(9)
  });
const sheet = (...rows: string[]): string =>
  `<worksheet><sheetData>${rows.join('')}</sheetData></worksheet>`;
const filled = '<row r="1"><c r="A1" t="inlineStr"><is><t>V1-2</t></is></c></row>';
const problemOf = (bytes: Uint8Array): string => {
  const unpacked = unpackWorkbook(bytes, 'a.xlsx');
  return unpacked.ok ? '' : (unpacked.problems[0]?.wrong ?? '');
};
const rowsOf = async (bytes: Uint8Array) => {
  const unpacked = unpackWorkbook(bytes, 'a.xlsx');
  const reading = unpacked.ok ? await readWorkbook(unpacked.plainZip) : null;
  return reading?.ok ? reading.sheets[0]?.rows : null;
};

describe('a workbook', () => {
  it('is told from other zips by what it holds', () => {
    expect(isWorkbook(book(sheet(filled)))).toBe(true);
    expect(isWorkbook(zipSync({ 'a.chassis.json': strToU8('{}') }))).toBe(false);
    expect(isWorkbook(book(sheet(filled)).subarray(0, 300))).toBe(false);
  });

  it('comes out with its cells', async () => {
    expect(await rowsOf(book(sheet(filled)))).toEqual([['V1-2']]);
  });

  it('whose sheet is too large unpacked is refused with the limit, and not inflated', () => {
    const large = new Uint8Array(workbookLimits.partBytes + 1);
    expect(problemOf(book(large))).toBe(
      '"xl/worksheets/sheet1.xml" has 65 MB unpacked; the most is 64 MB'
    );
  });

  it('that holds more than it says is refused', () => {
    const bytes = book(sheet(filled).padEnd(50_000, ' '));
    const name = strToU8('xl/worksheets/sheet1.xml');
    // The size in the list of contents stands 22 bytes before the name (APPNOTE 4.3.12).
    const at = [...bytes.keys()]
      .filter((start) => name.every((value, index) => bytes[start + index] === value))
      .at(-1)!;
    new DataView(bytes.buffer, bytes.byteOffset).setUint32(at - 22, 1000, true);
    expect(problemOf(bytes)).toMatch(/holds more than the 1000 bytes that it says/);
  });

  it('with a cell far below or far to the right is refused with the limit', () => {
    const below = '<row r="1048576"><c r="A1048576"><v>1</v></c></row>';
    const right = '<row r="2"><c r="XFD2"><v>1</v></c></row>';
    expect(problemOf(book(sheet(filled, below)))).toMatch(/row 1048576; the last is 50000/);
    expect(problemOf(book(sheet(filled, right)))).toMatch(/column XFD; the most is 256 columns/);
  });

  it('may have cells far out that only have a format', async () => {
    const empty = '<row r="1048576"><c r="XFD1048576" s="3"/><c r="B1048576" s="1"></c></row>';
    expect(await rowsOf(book(sheet(filled, empty, '<row r="9"/>')))).toEqual([['V1-2']]);
  });

  it.each([
    'r="AAAAAA1"',
    "r='A99999999'",
    'r="a99999999"',
    'r="A9999999999"',
    'r = "A99999999"',
    'a=">" r="A99999999"',
    'r="A&#57;9999999"',
    'r="A0"'
  ])('with a cell at %s is refused, however that is written', (place) => {
    const cell = `<row><c ${place} t="inlineStr"><is><t>x</t></is></c></row>`;
    expect(problemOf(book(sheet(filled, cell)))).toMatch(/has a cell (?:at|in)/);
  });

  it('of few cells far from each other is refused with the limit', () => {
    const cell = '<row r="50000"><c r="IV50000" t="inlineStr"><is><t>x</t></is></c></row>';
    expect(problemOf(book(sheet(filled, cell)))).toMatch(/50000 rows by 256 columns; the most is/);
  });
});
