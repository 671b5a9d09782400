// The workbook opened by a spreadsheet that is not ours: LibreOffice Calc reads every sheet of it and writes each
// as CSV, which Python's reader takes apart. What comes out is what went in.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { applyEdit } from '#document/index.ts';
import { setProof } from '#document/edits.ts';
import { buildTestSheets } from '#plan/index.ts';
import { buildSchedule, makeWholePlan, scheduleToXlsx } from '#paperwork/index.ts';
import { buildStudy } from '#study/index.ts';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildTelevision } from '../demonstrations/television.ts';

/** Each sheet as a file: comma, quotes, UTF-8, every sheet (-1). */
const everySheet = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1';
const readCsv = `
import csv, json, sys
print(json.dumps(list(csv.reader(open(sys.argv[1], encoding='utf-8', newline='')))))
`;

const run = (command: string, words: readonly string[]): string => {
  const done = spawnSync(command, words, { encoding: 'utf8', timeout: 110_000 });
  if (done.error || done.status !== 0)
    throw new Error(`${command}: ${done.error?.message ?? done.stderr} (npm test installs it)`);
  return done.stdout;
};

describe('the workbook in LibreOffice', () => {
  const sheets = new Map<string, string[][]>();
  const first = buildStudy(buildTelevision());
  const test = buildTestSheets(first).find(({ id }) => id === 'power-up');
  const measured = test?.rows.find(({ expected }) => expected !== null);
  const noted = applyEdit(
    first.document,
    setProof({ readings: { [measured?.id ?? '']: { typed: '285 V' } } })
  );
  if (!noted.ok) throw new Error(noted.problem);
  const study = buildStudy(noted.document);
  const rows = buildSchedule(study, []);
  const whole = makeWholePlan(study);

  beforeAll(async () => {
    const folder = mkdtempSync(join(tmpdir(), 'book-'));
    const blob = await scheduleToXlsx(study, rows, whole);
    const book = join(folder, 'book.xlsx');
    writeFileSync(book, new Uint8Array(await blob.arrayBuffer()));
    run('soffice', [
      `-env:UserInstallation=file://${folder}/profile`,
      '--headless',
      '--convert-to',
      everySheet,
      '--outdir',
      folder,
      book
    ]);
    for (const name of readdirSync(folder)) {
      const sheet = /^book-(.+)\.csv$/.exec(name)?.[1];
      if (sheet !== undefined)
        sheets.set(sheet, JSON.parse(run('python3', ['-c', readCsv, join(folder, name)])));
    }
    expect(readFileSync(book).length).toBeGreaterThan(10_000);
  }, 120_000);

  it('has a sheet for wires, plan, parts, bundles, cut list, shopping and tests', () => {
    expect([...sheets.keys()].sort()).toEqual(
      ['Bundles', 'Cut list', 'Parts', 'Plan', 'Shopping', 'Tests', 'Wires'].sort()
    );
  });

  it('holds every wire with its numbers as they are', () => {
    const [headings = [], ...body] = sheets.get('Wires') ?? [];
    expect(body).toHaveLength(rows.length);
    const at = (name: string) => headings.indexOf(name);
    expect(body.map((row) => row[at('No')])).toEqual(rows.map(({ number }) => number));
    expect(body.map((row) => Number(row[at('Cut mm')]))).toEqual(
      rows.map(({ cutMm }) => cutMm ?? 0)
    );
    expect(body.map((row) => Number(row[at('V dc')]))).toEqual(rows.map(({ dcV }) => dcV ?? 0));
  });

  it('holds as many cuts, lines to buy and tests as there are', () => {
    expect(sheets.get('Cut list')).toHaveLength(whole.cuts.cuts.length + 1);
    expect(sheets.get('Shopping')).toHaveLength(whole.shopping.lines.length + 1);
    expect(sheets.get('Plan')).toHaveLength(whole.plan.wires.length + 1);
    expect(sheets.get('Parts')).toHaveLength(study.index.parts.length + 1);
    const tests = sheets.get('Tests') ?? [];
    const asked = buildTestSheets(study).reduce((sum, each) => sum + each.rows.length, 0);
    expect(tests).toHaveLength(asked + 1);
    expect(tests.filter((row) => row[4]?.startsWith('285 V'))).toHaveLength(1);
  });
});
