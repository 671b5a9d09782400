import { describe, expect, it } from 'vitest';
import { best, rankOf } from '#editor/command-box/rank.ts';
import { searchPlaces } from '#editor/command-box/search-places.ts';
import { buildStudy } from '#study/index.ts';
import { chassis } from '../../helpers/chassis.ts';

const study = buildStudy(
  chassis('Bench set')
    .unit('Main chassis', { size: [430, 300] })
    .tube('V1', '6CG7', { at: [60, 60] })
    .tube('V2', '12AX7', { at: [160, 60] })
    .strip('TS1', 5, { at: [120, 60] })
    .wire(2, 'V1-4', 'TS1-1', { colour: 'brown', acV: 6.3, dcV: 0 })
    .wire(12, 'V1-1', 'TS1-2', { colour: 'red', dcV: 285 })
    .wire(13, 'V1-6', 'TS1-4', { colour: 'yellow' })
    .wire(14, 'V2-6', 'TS1-5', { colour: 'blue', dcV: 1500 })
    .build()
);
const titles = (typed: string, limit = 12): string[] =>
  searchPlaces(study, typed, limit).places.map(({ title }) => title);

describe('places by what they are called', () => {
  it.each([
    ['12', 'Wire 12'],
    ['wire 13', 'Wire 13'],
    ['v1-4', 'V1-4'],
    ['6CG7', 'V1'],
    ['yellow', 'Wire 13'],
    ['TS1', 'TS1']
  ])('%s: %s first', (typed, title) => {
    expect(titles(typed)[0]).toBe(title);
  });

  it('finds round figures: heaters at 6.3 V by "6 V"', () => {
    expect(titles('6 V')).toContain('Wire 2');
    expect(titles('6V')).toContain('Wire 2');
    expect(titles('6 V')).not.toContain('Wire 12');
  });

  it('finds what stands over a figure, and says of how many it is not known', () => {
    const found = searchPlaces(study, 'over 1 kV', 12);
    expect(found.places.map(({ title }) => title)).toEqual(['Wire 14']);
    expect(found.leftOut).toBe('of 1 wire it is not known');
  });

  it('never counts what is not known as under a figure', () => {
    expect(titles('under 100 V')).not.toContain('Wire 13');
  });

  it('counts the wires that end at a terminal, one wire too', () => {
    const detailOf = (typed: string) =>
      searchPlaces(study, typed, 12).places.find(({ pick }) => pick.kind === 'terminal')?.detail;
    expect(detailOf('V1-4')).toBe('1 wire ends here');
    expect(detailOf('V1-9')).toBe('0 wires end here');
  });

  it('says that there is more than it lists', () => {
    expect(searchPlaces(study, 'TS1', 2).leftOut).toMatch(/more/);
    expect(searchPlaces(study, '  ', 2)).toEqual({ places: [], leftOut: '' });
  });
});

describe('likeness', () => {
  it('puts the text itself before its beginning, a word before a piece of one', () => {
    const ranks = ['V1', 'V12', 'the V1', 'xV1'].map((text) => rankOf(text, 'v1'));
    expect([...ranks].sort((a, b) => a - b)).toEqual(ranks);
    expect(new Set(ranks).size).toBe(4);
  });

  it('wants every word', () => {
    expect(rankOf('blue to V1', 'v1 blue')).toBeLessThan(Infinity);
    expect(rankOf('blue to V1', 'v1 red')).toBe(Infinity);
    expect(best(['a', 'b'], '', (text) => [text], 5)).toEqual([]);
  });
});
