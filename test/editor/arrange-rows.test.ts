import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  arrangeRows,
  asNumbered,
  entriesOf,
  holdRows,
  keepArranged,
  type Arrangement,
  type SortKey
} from '#editor/schedule/arrange-rows.ts';

const volts: Readonly<Record<string, number | null>> = {
  a: 600,
  b: null,
  c: 300,
  d: 25_000,
  e: 300
};
const keyOf = (row: string): SortKey => volts[row] ?? null;
const textOf = (row: string): string => (volts[row] === null ? '' : `${volts[row]} V`);
const ids = Object.keys(volts);
const rows = (change: Partial<Arrangement>): string =>
  arrangeRows(ids, { ...asNumbered, ...change }, keyOf, textOf).rows.join('');

describe('arranged rows', () => {
  it('sorts up and down; equals keep their order, and what is not known is last either way', () => {
    expect(rows({ sort: { column: 'needs', down: false } })).toBe('ceadb');
    expect(rows({ sort: { column: 'needs', down: true } })).toBe('daceb');
  });

  it('sorts words as people count: 2 before 10', () => {
    const names = ['V10', 'V2', 'V1'];
    const sorted = arrangeRows(
      names,
      { ...asNumbered, sort: { column: 'from', down: false } },
      (row) => row,
      (row) => row
    );
    expect(sorted.rows).toEqual(['V1', 'V2', 'V10']);
  });

  it('groups by what is shown, with a title and a count over each', () => {
    const held = holdRows(ids, { ...asNumbered, group: 'needs' }, keyOf, textOf);
    const list = held.rows.map((id) => ({ id }));
    expect(
      entriesOf(list, held).map((entry) =>
        entry.kind === 'group' ? `${entry.title} (${entry.count})` : entry.id
      )
    ).toEqual([
      '300 V (2)',
      'c',
      'e',
      '600 V (1)',
      'a',
      '25000 V (1)',
      'd',
      'nothing written (1)',
      'b'
    ]);
  });

  it('shows only the rows asked for', () => {
    expect(rows({ only: new Set(['e', 'a']) })).toBe('ae');
  });

  it('loses and doubles no row, whatever came and went since', () => {
    const some = fc.uniqueArray(fc.integer({ min: 0, max: 40 }).map(String), { maxLength: 30 });
    fc.assert(
      fc.property(some, some, fc.boolean(), (before, after, down) => {
        const held = holdRows(
          before,
          { ...asNumbered, sort: { column: 'number', down } },
          (row) => Number(row),
          (row) => row
        );
        const kept = keepArranged(
          held,
          after.map((id) => ({ id }))
        );
        expect(kept.map(({ id }) => id).sort()).toEqual([...after].sort());
      }),
      { seed: 7, numRuns: 200 }
    );
  });
});
