// Every reference row: what the sum says against what its source says. The sources are named in
// the README beside the rows.
import { describe, expect, test } from 'vitest';
import { acceptedRange } from '#physics/reference/reference-row.ts';
import { ourValue } from '#physics/reference/work-out.ts';
import { readReferenceRows, readReferenceSources } from './rows.ts';

const rows = readReferenceRows(new URL('./rows.csv', import.meta.url));
const named = rows.map((row) => ({ row, name: `${row.source} row ${row.row}` }));

describe('reference rows', () => {
  test.each(named)('$name', ({ row }) => {
    const [least, most] = acceptedRange(row.expected, row.tolerance);
    const ours = ourValue(row);
    const words = `${row.target} ${row.output}: ours ${ours}, expected ${row.expected} (${row.tolerance})`;
    expect(ours, words).toBeGreaterThanOrEqual(least);
    expect(ours, words).toBeLessThanOrEqual(most);
  });
});

describe('the rows themselves', () => {
  test('are many, from tables that the code does not hold, with memory counted apart', () => {
    const checked = rows.filter(({ mark }) => mark !== 'memory');
    const independent = checked.filter(({ mark, inCode }) => mark === 'verified' && !inCode);
    expect(checked.length).toBeGreaterThanOrEqual(120);
    expect(independent.length).toBeGreaterThanOrEqual(40);
  });

  test('count from 1 within each source, in order', () => {
    const counts = new Map<string, number>();
    for (const { source, row } of rows) {
      expect(row, source).toBe((counts.get(source) ?? 0) + 1);
      counts.set(source, row);
    }
  });

  test('name sources that the README describes, and it describes no others', () => {
    const sources = readReferenceSources(new URL('./README.md', import.meta.url));
    const described = sources.map(([key]) => key);
    expect([...new Set(rows.map(({ source }) => source))].sort()).toEqual(described.sort());
  });

  test('read a tolerance of every form', () => {
    expect(acceptedRange(100, '2%')).toEqual([98, 102]);
    expect(acceptedRange(-100, '0.5')).toEqual([-100.5, -99.5]);
    const [least, most] = acceptedRange(100, '0..+2%');
    expect(least).toBeCloseTo(100, 6);
    expect(most).toBeCloseTo(102, 6);
    expect(() => acceptedRange(1, 'about')).toThrow(/tolerance/);
  });
});
