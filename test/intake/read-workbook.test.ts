// A workbook comes in as its sheets read. bench-set.xlsx was saved by an office suite (LibreOffice Calc),
// so that the reader is held to another program's files; the others are written by write-excel-file.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { unzipSync, zipSync } from 'fflate';
import writeXlsxFile from 'write-excel-file/universal';
import { openSheets, readOpened, readWorkbook } from '#intake/index.ts';
import { makeIdFrom } from '#document/index.ts';
import { unpackWorkbook } from '#storage/index.ts';
import { runsOf, seededRandom, wireOf } from './read-list.ts';

const read = async (bytes: Uint8Array) => {
  const unpacked = unpackWorkbook(bytes, 'book.xlsx');
  if (!unpacked.ok) throw new Error(unpacked.problems[0]?.wrong);
  const reading = await readWorkbook(unpacked.plainZip);
  if (!reading.ok) throw new Error(reading.problem);
  return reading.sheets;
};

describe('a workbook', () => {
  it('of an office suite becomes a chassis', async () => {
    const bytes = readFileSync(new URL('workbooks/bench-set.xlsx', import.meta.url));
    const [chosen] = openSheets(await read(bytes));
    const { document } = readOpened(chosen!.opened, {
      fileName: 'bench-set.xlsx',
      makeId: makeIdFrom(seededRandom(3))
    });
    expect(document!.identity.title).toBe('Bench set 12-B');
    expect(runsOf(document!)).toEqual([
      '1 V1-2 > TS1-1',
      '2 V1-3 > TS1-2',
      '3 chassis 1 > TS1-3',
      '4 V2-5 > ?'
    ]);
    expect(wireOf(document!, '1')).toMatchObject({ carries: { dcV: 285 }, tapedMm: 190.5 });
    expect(wireOf(document!, '3').notes).toBe('0.3');
  });

  it('is read from the sheet in which the wires are, whatever stands before it', async () => {
    const blob = await writeXlsxFile(
      [
        [[{ value: 'Shopping' }], [{ value: 'solder' }]],
        [
          ['No', 'From', 'To'].map((value) => ({ value })),
          [{ value: 1 }, { value: 'V1-2' }, { value: 'V2-3' }]
        ]
      ].map((data, index) => ({ data, sheet: `Sheet ${index + 1}` }))
    ).toBlob();
    const sheets = await read(new Uint8Array(await blob.arrayBuffer()));
    expect(sheets.map(({ name }) => name)).toEqual(['Sheet 1', 'Sheet 2']);
    expect(openSheets(sheets).map(({ name }) => name)).toEqual(['Sheet 2', 'Sheet 1']);
  });

  it('that is none is told', async () => {
    expect(await readWorkbook(new ArrayBuffer(40))).toMatchObject({ ok: false });
  });
});

// As a sheet comes out of a broken copy: a part that the others point at is not there.
describe('a damaged workbook', () => {
  it.each(['xl/workbook.xml', 'xl/_rels/workbook.xml.rels', 'xl/worksheets/sheet1.xml'])(
    'without %s is refused in words that say nothing of this program',
    async (name) => {
      const blob = await writeXlsxFile([[{ value: 'From' }, { value: 'To' }]]).toBlob();
      const parts = unzipSync(new Uint8Array(await blob.arrayBuffer()));
      expect(parts[name]).toBeDefined();
      Reflect.deleteProperty(parts, name);
      const unpacked = unpackWorkbook(zipSync(parts), 'book.xlsx');
      if (!unpacked.ok) throw new Error(unpacked.problems[0]?.wrong);
      expect(await readWorkbook(unpacked.plainZip)).toEqual({
        ok: false,
        problem:
          'could not be read as a workbook: a part of it is missing, damaged or written in a way that is not known here'
      });
    }
  );
});
