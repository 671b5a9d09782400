// Amounts as restorers and old service data write them.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { baseUnits, parseQuantity, type Dimension, type ParseOptions } from '#quantity/index.ts';

const read = (text: string, dimension: Dimension, options?: ParseOptions) =>
  parseQuantity(text, dimension, options);

type Case = readonly [text: string, dimension: Dimension, value: number, options?: ParseOptions];

describe('is understood', () => {
  const cases: readonly Case[] = [
    ['22 AWG', 'gauge', 22],
    ['22awg', 'gauge', 22],
    ['AWG 22', 'gauge', 22],
    ['#22', 'gauge', 22],
    ['22 ga.', 'gauge', 22],
    ['No. 18', 'gauge', 18],
    ['0', 'gauge', 0],
    ['1/0', 'gauge', 0],
    ['2/0 AWG', 'gauge', -1],
    ['00', 'gauge', -1],
    ['4/0', 'gauge', -3],
    ['0000', 'gauge', -3],
    ['-3', 'gauge', -3],
    ['7 1/2', 'length', 190.5, { defaultUnit: 'in' }],
    ['7½"', 'length', 190.5],
    ['½ in', 'length', 12.7],
    ['1-1/8"', 'length', 28.575],
    ['1 1/8 in.', 'length', 28.575],
    ['3/16 in', 'length', 4.7625],
    ['3⁄16″', 'length', 4.7625],
    ['3/16', 'length', 4.7625, { defaultUnit: 'in' }],
    ['5,5', 'length', 5.5],
    ['5,5 cm', 'length', 55],
    ['10ft', 'length', 3048],
    ["10'", 'length', 3048],
    [`5' 6"`, 'length', 1676.4],
    [`5'6`, 'length', 1676.4],
    [`5′ 6 1/2″`, 'length', 1689.1],
    ['5 ft 6 in', 'length', 1676.4],
    [`-1' 6"`, 'length', -457.2],
    [`6''`, 'length', 152.4],
    ['0.58mm', 'length', 0.58],
    ['0,58 mm', 'length', 0.58],
    ['25 mil', 'length', 0.635],
    ['1.5 m', 'length', 1500],
    ['240', 'length', 240],
    ['2', 'length', 2000, { defaultUnit: 'm' }],
    ['2.5 IN', 'length', 63.5],
    ['6.3 V', 'voltage', 6.3],
    ['12.6VAC', 'voltage', 12.6],
    ['4.5kV', 'voltage', 4500],
    ['18 KV', 'voltage', 18_000],
    ['6V3', 'voltage', 6.3],
    ['1,000 V', 'voltage', 1000],
    ['1,000,000 V', 'voltage', 1e6],
    ['10 000 V', 'voltage', 10_000],
    ['1.234,5 V', 'voltage', 1234.5],
    ['1,234.5 V', 'voltage', 1234.5],
    ['0,005 V', 'voltage', 0.005],
    ['1,500', 'voltage', 1.5, { decimalComma: true }],
    ['1,500', 'voltage', 1500, { decimalComma: false }],
    ['4.7', 'voltage', 4.7, { decimalComma: true }],
    ['−27.5 V', 'voltage', -27.5],
    ['- 27.5 volts', 'voltage', -27.5],
    ['+285 V dc', 'voltage', 285],
    ['285 dc', 'voltage', 285],
    ['285 volts d.c.', 'voltage', 285],
    ['5 kV peak', 'voltage', 5000],
    ['.5 V', 'voltage', 0.5],
    ['5. V', 'voltage', 5],
    ['44 mA', 'current', 0.044],
    ['44', 'current', 0.044, { defaultUnit: 'mA' }],
    ['450MA', 'current', 0.45],
    ['1.2 amps', 'current', 1.2],
    ['1 amp', 'current', 1],
    ['0.6A ac', 'current', 0.6],
    ['300 µA', 'current', 3e-4],
    ['300 μA', 'current', 3e-4],
    ['4k7', 'resistance', 4700],
    ['4K7', 'resistance', 4700],
    ['4k7Ω', 'resistance', 4700],
    ['R47', 'resistance', 0.47],
    ['47R', 'resistance', 47],
    ['2M2', 'resistance', 2.2e6],
    ['1.5 MEG', 'resistance', 1.5e6],
    ['1.5 M', 'resistance', 1.5e6],
    ['1.5 MOhm', 'resistance', 1.5e6],
    ['1.5 megohms', 'resistance', 1.5e6],
    ['47 kΩ', 'resistance', 47_000],
    ['47 k\u2126', 'resistance', 47_000],
    ['47k', 'resistance', 47_000],
    ['75Ω', 'resistance', 75],
    ['470 ohm', 'resistance', 470],
    ['16 mΩ', 'resistance', 0.016],
    ['16 mohm', 'resistance', 0.016],
    ['0.05 MFD', 'capacitance', 5e-8],
    ['0.05 mfd.', 'capacitance', 5e-8],
    ['.05 MF', 'capacitance', 5e-8],
    ['0.05 µF', 'capacitance', 5e-8],
    ['0.05 \u03BCF', 'capacitance', 5e-8],
    ['0.05 uF', 'capacitance', 5e-8],
    ['100 µµF', 'capacitance', 1e-10],
    ['100 uuF', 'capacitance', 1e-10],
    ['100 MMF', 'capacitance', 1e-10],
    ['100 mmfd', 'capacitance', 1e-10],
    ['2000 pF', 'capacitance', 2e-9],
    ['2,2 nF', 'capacitance', 2.2e-9],
    ['4n7', 'capacitance', 4.7e-9],
    ['2u2', 'capacitance', 2.2e-6],
    ['8 mH', 'inductance', 8e-3],
    ['5 W', 'power', 5],
    ['1/2W', 'power', 0.5],
    ['4.5 Mc', 'frequency', 4.5e6],
    ['15.75 kHz', 'frequency', 15_750],
    ['60 cps', 'frequency', 60],
    ['2 min', 'time', 120],
    ['50 °C', 'temperature', 50],
    ['122 F', 'temperature', 50],
    ['50', 'temperature', 50],
    ['-40 deg. F', 'temperature', -40],
    ['69 pF/m', 'line capacitance', 69],
    ['21 pF/ft', 'line capacitance', 21 / 0.3048],
    ['5 %', 'ratio', 0.05],
    ['1.25', 'ratio', 1.25],
    ['1e-7 F', 'capacitance', 1e-7]
  ];
  test.each(cases.map((row) => ({ row, name: `${row[0]} as ${row[1]}` })))('$name', ({ row }) => {
    const [text, dimension, value, options] = row;
    const parsed = read(text, dimension, options);
    expect(parsed).toMatchObject({ ok: true, text, unit: baseUnits[dimension] });
    if (parsed.ok)
      expect(Math.abs(parsed.value - value)).toBeLessThanOrEqual(Math.abs(value) * 1e-12);
  });
});

describe('is refused with the reason', () => {
  type Refusal = readonly [text: string, dimension: Dimension, problem: RegExp, ParseOptions?];
  const cases: readonly Refusal[] = [
    ['', 'voltage', /empty/],
    ['   ', 'voltage', /empty/],
    ['?', 'voltage', /no number/],
    ['about 250', 'voltage', /no number/],
    ['250-300 V', 'voltage', /range/],
    ['250 or 300', 'voltage', /no unit/],
    ['5 5', 'voltage', /two numbers/],
    ['1.2.3', 'voltage', /decimals from thousands/],
    ['1,23,456', 'voltage', /decimals from thousands/],
    ['5,5', 'voltage', /decimals from thousands/, { decimalComma: false }],
    ['1.500', 'voltage', /decimals from thousands/, { decimalComma: true }],
    ['5,', 'voltage', /decimals from thousands/],
    ['1/0 V', 'voltage', /below the line/],
    ['1/ V', 'voltage', /fraction/],
    ['7 3/2 in', 'length', /less than one/],
    ['1.5 1/2 in', 'length', /after a decimal/],
    ['12 mA', 'voltage', /no unit of voltage/],
    ['6.3 V', 'current', /no unit of current/],
    ['30 Vpp', 'voltage', /peak to peak/],
    ['5 MV', 'voltage', /mV or kV/],
    ['100 mF', 'capacitance', /µF/],
    ['1.5m', 'resistance', /MEG/],
    ['4k7 kΩ', 'resistance', /after/],
    [`5' 13"`, 'length', /12 or more/],
    ['22.5', 'gauge', /whole number/],
    ['0.64 mm', 'gauge', /whole number/],
    ['51', 'gauge', /beyond/],
    ['-22', 'gauge', /whole number/],
    ['-4', 'gauge', /whole number/],
    ['9'.repeat(400), 'voltage', /longer than/],
    [`${'9'.repeat(90)}e999`, 'voltage', /too large/],
    ['1e308 kV', 'voltage', /too large/],
    ['NaN', 'number', /no number/],
    ['Infinity', 'number', /no number/],
    ['0x10', 'number', /no unit/]
  ];
  test.each(cases.map((row) => ({ row, name: `${row[0]} as ${row[1]}` })))('$name', ({ row }) => {
    const [text, dimension, problem, options] = row;
    const parsed = read(text, dimension, options);
    expect(parsed.ok).toBe(false);
    if (!parsed.ok) expect(parsed.problem).toMatch(problem);
  });
});

describe('what was understood can be shown', () => {
  test.each([
    ['4k7', 'resistance', '4.7 kΩ'],
    ['12.6VAC', 'voltage', '12.6 V ac'],
    ['5 kV pk', 'voltage', '5 kV peak'],
    ['0.05 MFD', 'capacitance', '0.05 µF'],
    ['100 MMF', 'capacitance', '100 pF'],
    ['2/0', 'gauge', '2/0 AWG'],
    ['1-1/8"', 'length', '28.57 mm'],
    ['450 MA', 'current', '450 mA']
  ] as const)('%s', (text, dimension, understood) => {
    expect(read(text, dimension)).toMatchObject({ understood });
  });
});

test('never throws and never answers other than a finite number', () => {
  const dimensions = Object.keys(baseUnits) as Dimension[];
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 120 }),
    fc
      .array(fc.constantFrom(...'0123456789.,-/ \'"eEkMmuµpnΩVAFHRWdcft½°%'), { maxLength: 20 })
      .map((characters) => characters.join(''))
  );
  fc.assert(
    fc.property(text, fc.constantFrom(...dimensions), fc.boolean(), (written, dimension, comma) => {
      for (const options of [{}, { decimalComma: comma }]) {
        const parsed = parseQuantity(written, dimension, options);
        if (parsed.ok) expect(Number.isFinite(parsed.value)).toBe(true);
        else expect(parsed.problem).not.toBe('');
      }
    }),
    { seed: 20, numRuns: 1500 }
  );
});

test('long hostile texts are answered at once', () => {
  const started = performance.now();
  for (const piece of ['1 ', '1/', "1'", '1,', '((', 'a ', '1-1/']) {
    for (const dimension of Object.keys(baseUnits) as Dimension[]) {
      parseQuantity(piece.repeat(45), dimension);
      parseQuantity(piece.repeat(500_000), dimension);
    }
  }
  expect(performance.now() - started).toBeLessThan(2000);
});
