import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatAmps,
  formatAwg,
  formatFarads,
  formatInches,
  formatMm,
  formatNumber,
  formatOhms,
  formatQuantity,
  formatVolts,
  parseQuantity,
  roundSignificant,
  roundUpTo,
  type Dimension
} from '#quantity/index.ts';

describe('for people', () => {
  test.each([
    [formatVolts(18_000), '18 kV'],
    [formatVolts(6.3), '6.3 V'],
    [formatVolts(999.99), '1 kV'],
    [formatVolts(0), '0 V'],
    [formatVolts(-27.5), '-27.5 V'],
    [formatVolts(0.0061443), '6.144 mV'],
    [formatAmps(0.45), '450 mA'],
    [formatAmps(1.2), '1.2 A'],
    [formatOhms(4700), '4.7 kΩ'],
    [formatOhms(1.5e6), '1.5 MΩ'],
    [formatFarads(5e-8), '0.05 µF'],
    [formatFarads(1e-10), '100 pF'],
    [formatFarads(1e-4), '100 µF'],
    [formatFarads(0), '0 µF'],
    [formatMm(0.6438033), '0.6438 mm'],
    [formatMm(12_345), '12345 mm'],
    [formatAwg(22), '22 AWG'],
    [formatAwg(-3), '4/0 AWG'],
    [formatNumber(293.90954), '293.9'],
    [formatNumber(-0), '0'],
    [formatNumber(NaN), 'not known'],
    [formatVolts(Infinity), 'not known'],
    [formatMm(NaN), 'not known'],
    [formatInches(240), '9 1/2 in'],
    [formatInches(25.4), '1 in'],
    [formatInches(25.5, 'up'), '1 1/8 in'],
    [formatInches(25.4, 'up'), '1 in'],
    [formatInches(3.175), '1/8 in'],
    [formatInches(0), '0 in'],
    [formatInches(-28.575), '-1 1/8 in'],
    [formatInches(-0.1), '0 in']
  ])('%s', (shown, expected) => {
    expect(shown).toBe(expected);
  });
});

describe('read again', () => {
  const ranges: readonly (readonly [Dimension, number, number])[] = [
    ['length', 1e-3, 1e6],
    ['voltage', 1e-5, 1e5],
    ['current', 1e-6, 1e4],
    ['resistance', 1e-3, 1e9],
    ['capacitance', 1e-12, 1],
    ['inductance', 1e-6, 100],
    ['power', 1e-3, 1e5],
    ['frequency', 1, 1e9],
    ['time', 1e-6, 1e6],
    ['line capacitance', 0.1, 1000],
    ['number', 1e-6, 1e9]
  ];
  test.each(ranges)('%s: what is shown is what was meant', (dimension, min, max) => {
    // Spread evenly over the decades.
    const value = fc
      .double({ min: Math.log10(min), max: Math.log10(max), noNaN: true })
      .map((power) => 10 ** power);
    fc.assert(
      fc.property(value, (amount) => {
        const parsed = parseQuantity(formatQuantity(amount, dimension), dimension);
        expect(parsed.ok && Math.abs(parsed.value / amount - 1)).toBeLessThan(6e-4);
      }),
      { seed: 7 }
    );
  });
  test('inches, to a sixteenth or, rounded up, an eighth', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e5, noNaN: true }), (mm) => {
        const nearest = parseQuantity(formatInches(mm), 'length');
        expect(nearest.ok && Math.abs(nearest.value - mm)).toBeLessThan(1.5876);
        const up = parseQuantity(formatInches(mm, 'up'), 'length');
        expect(up.ok && up.value - mm).toBeGreaterThan(-1e-6 * Math.max(1, mm));
        expect(up.ok && up.value - mm).toBeLessThan(3.1751);
      }),
      { seed: 7 }
    );
  });
  test('gauges', () => {
    for (let awg = -3; awg <= 50; awg += 1) {
      expect(parseQuantity(formatAwg(awg), 'gauge')).toMatchObject({ ok: true, value: awg });
    }
  });
});

test('rounding for thresholds', () => {
  expect(roundSignificant(0.1 + 0.2)).toBe(0.3);
  expect(roundSignificant(600.0000001)).toBe(600);
  expect(roundSignificant(NaN)).toBeNaN();
  expect(roundUpTo(0.1 * 3, 0.1)).toBe(0.3);
  expect(roundUpTo(201, 5)).toBe(205);
});
