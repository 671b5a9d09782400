import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { allowedWords, compare, countRows } from '#editor/bench/proof/compare.ts';
import { buildProofTopics, filterProofTopics } from '#editor/bench/proof/proof-tables.ts';
import { ProofWork } from '#editor/bench/proof/proof-work.svelte.ts';
import { referenceRows, sourceTitle } from '#editor/bench/proof/reference-data.ts';
import { workRow } from '#editor/bench/sums/reckoner.ts';
import { toReferenceRow, type ReferenceRow } from '#physics/reference/reference-row.ts';
import { referenceUnit } from '#physics/reference/work-out.ts';
import { buildReferencePageData } from '../../reference/page-data.ts';
import { readReferenceRows } from '../../reference/rows.ts';

const row = (more: Partial<ReferenceRow>): ReferenceRow => ({
  source: 'wire-table',
  row: 1,
  target: 'wire-size',
  inputs: { awg: '10' },
  output: 'circular_mils',
  expected: 100,
  tolerance: '2%',
  mark: 'verified',
  inCode: false,
  note: '',
  ...more
});

describe('the rows of the page', () => {
  it('are those of the reference tests: run node .config/write-reference-rows.mjs after a change', () => {
    const file = new URL(
      '../../../src/lib/editor/bench/proof/reference-rows.json',
      import.meta.url
    );
    expect(readFileSync(file, 'utf8')).toBe(buildReferencePageData());
    const csv = new URL('../../reference/rows.csv', import.meta.url);
    expect(referenceRows).toEqual(readReferenceRows(csv));
  });

  it('have a titled source each', () => {
    for (const { source } of referenceRows) expect(sourceTitle(source), source).not.toBe(source);
  });

  it('refuse cells that are none', () => {
    const cells = { source: 's', row: '1', target: 't', inputs: 'a=1', output: 'o' };
    const more = { expected: '1', tolerance: 'exact', mark: 'verified', in_code: 'no', note: '' };
    expect(() => toReferenceRow({ ...cells, ...more, mark: 'sure' })).toThrow(
      /s row 1.*mark "sure"/
    );
    expect(() => toReferenceRow({ ...cells, ...more, expected: 'x' })).toThrow(/expected "x"/);
    expect(() => toReferenceRow({ ...cells })).toThrow(/no column/);
  });

  it('are counted by mark, those from memory apart', () => {
    const counts = countRows([
      row({}),
      row({ inCode: true }),
      row({ mark: 'derived', source: 'rc' }),
      row({ mark: 'memory' })
    ]);
    expect(counts).toEqual({ verified: 2, derived: 1, memory: 1, independent: 1, sources: 2 });
  });
});

describe('tables', () => {
  const topics = buildProofTopics(referenceRows);
  const tables = topics.flatMap(({ sums }) => sums.flatMap((sum) => sum.tables));

  it('show every row once', () => {
    const shown = tables.flatMap(({ rows }) => rows.map((entry) => entry.row));
    expect(shown).toHaveLength(referenceRows.length);
    expect(new Set(shown)).toEqual(new Set(referenceRows));
  });

  it('hold rows of one source, figure, unit and mark', () => {
    for (const table of tables)
      for (const { row: one } of table.rows) {
        expect([one.source, one.mark]).toEqual([table.source, table.mark]);
        expect(referenceUnit(one)).toBe(table.unit);
      }
  });

  it('lose no input: each stands in a cell or is shared by all', () => {
    for (const table of tables)
      for (const { row: one, cells } of table.rows) {
        const words = [table.shared, ...cells].join(' ');
        for (const text of Object.values(one.inputs)) expect(words).toContain(text);
      }
  });

  it('say what all rows share once, above them', () => {
    const notes = ['ohm per 1000 ft', 'ohm per 1000 ft', 'a witness'];
    const [topic] = buildProofTopics(
      notes.map((note, index) =>
        row({
          target: 'wire-resistance',
          output: 'resistance',
          inputs: { awg: String(20 + index), length: '1000ft' },
          note
        })
      )
    );
    const table = topic?.sums.find(({ sum }) => sum.id === 'wire-resistance')?.tables[0];
    expect(table).toMatchObject({ columns: ['awg'], shared: 'length 1000ft', unit: 'ohm' });
    expect(table?.rows.map(({ cells }) => cells)).toEqual([['20'], ['21'], ['22']]);
    expect(table?.notes).toEqual([
      { sign: 'a', text: 'ohm per 1000 ft' },
      { sign: 'b', text: 'a witness' }
    ]);
    expect(table?.rows.map(({ sign }) => sign)).toEqual(['a', 'a', 'b']);
  });

  it('narrow to the rows that match, without the empty ones', () => {
    const found = filterProofTopics(topics, (_topic, { sum }) => sum.id === 'air-gap');
    expect(found.map(({ sums }) => sums.map(({ sum }) => sum.id))).toEqual([['air-gap']]);
    expect(filterProofTopics(topics, () => false)).toEqual([]);
  });
});

describe('a comparison', () => {
  it.each([
    ['2%', 101, true, '+1 %'],
    ['2%', 97, false, '−3 %'],
    ['2%', 100, true, '0'],
    ['2%', 100.0004, true, '< 0.001 %'],
    ['0.5', 100.2, true, '+0.2'],
    ['0.5', 99, false, '−1'],
    ['0..+2%', 99.5, false, '−0.5 %'],
    ['exact', 100.00001, false, '< 0.001 %']
  ])('with %s allowed and %d of ours', (tolerance, ours, isWithin, difference) => {
    expect(compare(row({ tolerance }), ours)).toEqual({ isWithin, difference });
  });

  it('is in the unit where the expected is nought', () => {
    expect(compare(row({ expected: 0, tolerance: '1' }), 0.25).difference).toBe('+0.25');
    expect(compare(row({ expected: 0, tolerance: 'exact' }), 0).difference).toBe('0');
  });

  it.each([
    ['exact', '9 digits'],
    ['0.2%', '± 0.2 %'],
    ['1e-3', '± 0.001'],
    ['0..+2%', '0 to +2 %'],
    ['-60%..0%', '−60 to 0 %']
  ])('puts %s in words', (tolerance, words) => {
    expect(allowedWords(tolerance)).toBe(words);
  });
});

describe('working the rows out', () => {
  it('keeps every answer, and lists those outside and those without one', async () => {
    // ASTM B258: 36 AWG is 0.0050 in, 0.127 mm.
    const good = row({
      inputs: { awg: '36' },
      output: 'diameter',
      expected: 0.127,
      tolerance: 'exact'
    });
    const off = { ...good, row: 2, expected: 0.13 };
    const broken = { ...good, row: 3, inputs: { awg: '99' } };
    const work = new ProofWork([good, off, broken]);
    expect(work.isDone).toBe(false);
    await work.run({ workRow: (one) => Promise.resolve(workRow(one)) });
    expect(work.isDone).toBe(true);
    expect(work.outside).toEqual([off, broken]);
  });
});
