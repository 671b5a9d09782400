// Factors by the international yard and pound agreement of 1959: 1 in = 25.4 mm, 1 ft = 0.3048 m.
import { describe, expect, it } from 'vitest';
import { formatResult } from '#editor/bench/sums/format-result.ts';
import { sums } from '#physics/index.ts';

describe('a result', () => {
  it.each([
    [0.6438033, 'mm', '0.6438 mm', '0.0253 in'],
    [25.4, 'mm', '25.4 mm', '1 in'],
    [3.048, 'm', '3.048 m', '10 ft'],
    [0.32553, 'mm2', '0.3255 mm²', undefined],
    [642.449, 'cmil', '642.4 cmil', undefined],
    [4700, 'ohm', '4.7 kΩ', undefined],
    [0.0529528, 'ohm/m', '52.95 mΩ/m', '16.14 Ω per 1000 ft'],
    [67.75, 'pF/m', '67.75 pF/m', '20.65 pF/ft'],
    [0.3874, 'V', '387.4 mV', undefined],
    [25_000, 'V', '25 kV', undefined],
    [6.149, '%', '6.149 %', undefined],
    [17.64, 's', '17.64 s', undefined],
    [1800, 's', '1800 s', '30 minutes'],
    [86_400, 's', '86400 s', '24 hours'],
    [864_000, 's', '864000 s', '10 days'],
    [0.035, 'C', '35 mC', undefined],
    [0.0000081, 'C', '8.1 µC', undefined],
    [6.125, 'J', '6.125 J', undefined],
    [5, 'sixteenths of an inch', '5/16 in', undefined],
    [8, 'sixteenths of an inch', '1/2 in', undefined],
    [20, 'sixteenths of an inch', '1 1/4 in', undefined],
    [16, 'sixteenths of an inch', '1 in', undefined],
    [0.6652, '', '0.6652', undefined],
    [12, 'furlong', '12 furlong', undefined]
  ])('%d %s reads %s', (value, unit, main, also) => {
    expect(formatResult(value, unit)).toEqual(also === undefined ? { main } : { main, also });
  });

  it('keeps its digits and names a unit, for every unit that a sum answers in', () => {
    for (const unit of new Set(sums.flatMap((sum) => Object.values(sum.results)))) {
      const { main } = formatResult(1.5, unit);
      expect(main, unit).toMatch(/^1[.\d]/);
      if (unit !== '') expect(main, unit).toMatch(/[^\d.]$/);
    }
  });
});
