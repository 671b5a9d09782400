// Plain decimals with plain units, against the units of mathjs.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { unit } from 'mathjs';
import { parseQuantity, type Dimension } from '#quantity/index.ts';

const pairs: readonly (readonly [Dimension, base: string, units: readonly string[]])[] = [
  ['length', 'mm', ['mm', 'cm', 'm', 'km', 'in', 'ft', 'yd', 'mil']],
  ['voltage', 'V', ['mV', 'V', 'kV']],
  ['current', 'A', ['mA', 'A', 'uA']],
  ['resistance', 'ohm', ['ohm', 'kohm', 'Mohm', 'mohm']],
  ['capacitance', 'F', ['pF', 'nF', 'uF', 'F']],
  ['inductance', 'H', ['uH', 'mH', 'H']],
  ['power', 'W', ['mW', 'W', 'kW']],
  ['frequency', 'Hz', ['Hz', 'kHz', 'MHz', 'GHz']],
  ['time', 's', ['us', 'ms', 's']],
  ['temperature', 'degC', ['degC', 'degF', 'K']]
];

test.each(pairs)('%s', (dimension, base, units) => {
  const value = fc.double({ min: 0.001, max: 99_999, noNaN: true });
  fc.assert(
    fc.property(value, fc.constantFrom(...units), (number, name) => {
      const text = `${number.toPrecision(8)} ${name}`;
      const parsed = parseQuantity(text, dimension);
      const expected = unit(Number(number.toPrecision(8)), name).toNumber(base);
      expect(parsed.ok, text).toBe(true);
      if (parsed.ok)
        expect(parsed.value).toBeCloseTo(
          expected,
          9 - Math.ceil(Math.log10(Math.abs(expected) + 1))
        );
    }),
    { seed: 8, numRuns: 60 }
  );
});
