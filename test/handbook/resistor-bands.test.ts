// IEC 60062, marking codes for resistors: the digits are those of the chassis code's table, the worked
// values below are from memory of the published examples.
import { describe, expect, test } from 'vitest';
import { readBands } from '#handbook/resistor-bands.ts';

describe('bands of a resistor', () => {
  test.each([
    ['yellow violet red gold', 4700, 5, '4.7k'],
    ['brown black black', 10, 20, '10 ohm'],
    ['brown black green silver', 1e6, 10, '1M'],
    ['red red gold gold', 2.2, 5, '2.2 ohm'],
    ['orange white silver silver', 0.39, 10, '0.39 ohm'],
    ['brn/grn/yel', 150e3, 20, '150k'],
    ['gray-red-orange', 82e3, 20, '82k'],
    ['grey red orange brown', 82e3, 1, '82k']
  ])('%s', (text, ohms, tolerance, value) =>
    expect(readBands(text)).toMatchObject({ ohms, tolerance, text: value })
  );

  test.each([
    ['red violet'],
    ['black black red'],
    ['gold red red'],
    ['red red red blue'],
    ['red red red gold gold'],
    ['ts3-2'],
    ['tan red red'],
    ['']
  ])('"%s" is none', (text) => expect(readBands(text)).toBeNull());

  test('say what of them is from memory', () => {
    expect(readBands('red red red')?.fromMemory).toBe('tolerance from memory');
    expect(readBands('red red gold')?.fromMemory).toBe('multiplier and tolerance from memory');
  });
});
