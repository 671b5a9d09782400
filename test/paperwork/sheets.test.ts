// What is printed: cautions on each page, nothing of a document as markup, flags at both ends, and a
// workbook that an unzip of another make opens.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildTestSheets } from '#plan/index.ts';
import {
  benchList,
  buildSchedule,
  flagsOf,
  labelSheets,
  makeWholePlan,
  planSheets,
  scheduleToXlsx,
  sheetsToPage,
  sheetToText,
  tagsPage,
  testSheetOnPaper
} from '#paperwork/index.ts';
import { buildStudy } from '#study/index.ts';
import { unzipSync, strFromU8 } from 'fflate';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { buildTelevision } from '../demonstrations/television.ts';
import { chassis } from '../helpers/chassis.ts';

const document = buildTelevision();
const study = buildStudy(document);
const whole = makeWholePlan(study);
const paper = [
  ...planSheets(study, whole),
  benchList(study, whole.plan),
  ...buildTestSheets(study).map((test) => testSheetOnPaper(study, test))
];

describe('the pages', () => {
  const page = sheetsToPage(document, paper);

  it('carry the cautions, and call nothing from a network', () => {
    expect(page).toMatch(/<tfoot>.*class="cautions">.*Lethal voltages.*Discharge the picture tube/);
    expect(page).toContain("default-src 'none'");
    expect(page).not.toMatch(/https?:|<script|src=/);
  });

  it('have discharge first on every test sheet', () => {
    for (const test of buildTestSheets(study))
      expect(sheetToText(testSheetOnPaper(study, test))).toMatch(/^.*\n=+\n\nDischarge first/);
  });

  it('say DO NOT MEASURE in bold', () => {
    expect(page.match(/<td class="stop">DO NOT MEASURE<\/td>/g)?.length).toBeGreaterThan(5);
  });

  it('take nothing of a document for markup', () => {
    const set = chassis('<img src=x onerror=alert(1)>').strip('TS<b>', 2).strip('TS2', 2);
    set.wire('<i>1', 'TS<b>-1', 'TS2-1', {
      awg: 22,
      dcV: 90,
      condition: 'brittle',
      dress: '</td><script>'
    });
    const own = buildStudy(set.build());
    const text =
      sheetsToPage(own.document, [
        ...planSheets(own, makeWholePlan(own)),
        benchList(own, whole.plan)
      ]) + tagsPage(own, { sheet: labelSheets[0] ?? never() });
    expect(text).not.toMatch(/<img|<script|<b>|<i>/);
    expect(text).toContain('&lt;i&gt;1');
  });

  it('never put more than twenty lines of the bench list on one page', () => {
    let lines = 0;
    let most = 0;
    for (const block of benchList(study, whole.plan).blocks) {
      if (block.kind === 'page') lines = 0;
      if (block.kind === 'table') lines += block.table.rows.length;
      most = Math.max(most, lines);
    }
    expect(most).toBeLessThanOrEqual(20);
    expect(most).toBeGreaterThan(5);
  });
});

const never = (): never => {
  throw new Error('no label sheet');
};

describe('the tags', () => {
  it('are two a wire, with both ends in words', () => {
    const flags = flagsOf(study);
    expect(flags.length).toBe(2 * study.index.wires.length);
    const [first, second] = flags.filter(({ number }) => number === '43');
    expect(first?.here).toBe(second?.there);
    expect(first?.there).toBe(second?.here);
    expect(first?.code).toContain('43');
    expect(flags.every(({ code }) => !code.includes('http'))).toBe(true);
  });

  it.each(labelSheets)('$name fits its paper', (sheet) => {
    const paperMm = sheet.paper === 'A4' ? [210, 297] : [215.9, 279.4];
    const right = sheet.leftMm + (sheet.columns - 1) * sheet.pitchXMm + sheet.widthMm;
    const bottom = sheet.topMm + (sheet.rows - 1) * sheet.pitchYMm + sheet.heightMm;
    expect(right).toBeLessThanOrEqual(paperMm[0] ?? 0);
    expect(bottom).toBeLessThanOrEqual(paperMm[1] ?? 0);
    expect(sheet.pitchXMm).toBeGreaterThanOrEqual(sheet.widthMm);
    expect(sheet.pitchYMm).toBeGreaterThanOrEqual(sheet.heightMm);
  });

  it('leave out the labels that are gone', () => {
    const page = tagsPage(study, { sheet: labelSheets[0] ?? never(), skip: 5 });
    expect(page.match(/<div><\/div>/g)).toHaveLength(5);
    expect(page).toMatch(/\.no \{ font-size: 14pt/);
  });
});

describe('the workbook', () => {
  it('opens, with typed cells, a header that stays, and no formula out of a cell', async () => {
    const set = chassis('Book').strip('TS1', 2).strip('TS2', 2);
    set.wire('1', 'TS1-1', 'TS2-1', {
      awg: 22,
      dcV: 285,
      function: '=HYPERLINK("x")',
      tapedMm: 90
    });
    const own = buildStudy(set.build());
    const blob = await scheduleToXlsx(own, buildSchedule(own, []), makeWholePlan(own));
    const bytes = new Uint8Array(await blob.arrayBuffer());
    const files = unzipSync(bytes);
    for (const [name, content] of Object.entries(files)) {
      if (!/\.(xml|rels)$/.test(name)) continue;
      const parser = new SaxesParser();
      parser.on('error', (problem) => {
        throw problem;
      });
      parser.write(strFromU8(content)).close();
    }
    const text = (name: string): string => strFromU8(files[name] ?? new Uint8Array());
    const names = [...text('xl/workbook.xml').matchAll(/<sheet [^>]*name="([^"]+)"/g)].map(
      (match) => match[1]
    );
    expect(names).toEqual(['Wires', 'Plan', 'Parts', 'Bundles', 'Cut list', 'Shopping', 'Tests']);
    expect(text('xl/worksheets/sheet1.xml')).toMatch(/ySplit="1".*state="frozen"/);
    expect(text('xl/worksheets/sheet1.xml')).toMatch(/<v>285<\/v>/);
    expect(text('xl/worksheets/sheet1.xml')).not.toContain('<f>');
    expect(text('xl/sharedStrings.xml')).toMatch(/(&apos;|'|&#39;)=HYPERLINK/);
    const place = join(mkdtempSync(join(tmpdir(), 'book-')), 'schedule.xlsx');
    writeFileSync(place, bytes);
    const python = spawnSync(
      'python3',
      [
        '-c',
        'import sys,zipfile; z=zipfile.ZipFile(sys.argv[1]); print(z.testzip(), len(z.namelist()))',
        place
      ],
      { encoding: 'utf8' }
    );
    // A reader of another make, where the machine has one.
    if (python.error === undefined) expect(python.stdout.trim()).toMatch(/^None \d+$/);
    else console.info('python3 is not here: the workbook was opened by fflate and saxes alone');
  });
});
