import { describe, expect, it } from 'vitest';
import { findCells, replacedIn, type SearchedRow } from '#editor/schedule/find-cells.ts';

const row = (
  id: string,
  from: string,
  colour: string,
  stressV: number | null,
  halfTraced = false
): SearchedRow => ({
  id,
  cells: [
    { column: 'from', text: from },
    { column: 'colour', text: colour }
  ],
  stressV,
  halfTraced
});
const rows = [
  row('w1', 'V5-4', 'yellow', 40),
  row('w2', 'V5-40', 'Red/Yellow', 1200, true),
  row('w3', 'L4-1', 'blue', 18_000),
  row('w4', 'V1-1', '', null)
];
const found = (text: string, column: 'from' | 'colour' | null = null): string =>
  findCells(rows, { text, column })
    .cells.map((cell) => `${cell.row}.${cell.column}`)
    .join(' ');

describe('finding cells', () => {
  it.each([
    ['yellow', 'w1.colour w2.colour'],
    ['V5-4', 'w1.from w2.from'],
    ['  v5 ', 'w1.from w2.from'],
    ['', ''],
    ['over 1 kV', 'w2.needs w3.needs'],
    ['above 1.2kV', 'w3.needs'],
    ['under 50 V', 'w1.needs'],
    ['half-traced', 'w2.from'],
    ['(', '']
  ])('%s: %s', (text, cells) => {
    expect(found(text)).toBe(cells);
  });

  it('looks in one column where asked', () => {
    expect(found('4', 'from')).toBe('w1.from w2.from w3.from');
    expect(found('4', 'colour')).toBe('');
  });

  it('says how many are not known where it looks for volts: they may be over it', () => {
    expect(findCells(rows, { text: 'over 1 kV', column: null }).notKnown).toBe(1);
  });

  it('says why an amount cannot be read', () => {
    expect(findCells(rows, { text: 'over pink', column: null }).problem).toMatch(/pink/);
  });
});

describe('replacing', () => {
  it.each([
    ['Red/yellow', 'yellow', 'green', 'Red/green'],
    ['a.b.c', '.', '-', 'a-b-c'],
    ['YELLOW yellow', 'yellow', '$&', '$& $&'],
    ['red', 'blue', 'x', null],
    ['red', '', 'x', null]
  ])('%s: %s by %s', (text, what, by, result) => {
    expect(replacedIn(text, what, by)).toBe(result);
  });
});
