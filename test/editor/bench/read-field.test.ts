// Fields: the units are those of any handbook; 1 ft = 0.3048 m and 1 in = 25.4 mm exactly by the
// international yard and pound agreement of 1959, the gauge by ASTM B258.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readField, type FieldReading } from '#editor/bench/sums/read-field.ts';
import { findSum, sums } from '#physics/index.ts';

const read = (id: string, name: string, text: string): FieldReading =>
  readField(findSum(id)!, name, text);

describe('a field', () => {
  it.each([
    ['voltage-drop', 'length', '10ft', '3.048 m'],
    ['voltage-drop', 'length', '5', '5 m'],
    ['voltage-drop', 'amps', '450 mA', '450 mA'],
    ['voltage-drop', 'awg', '#22', '22 AWG, 0.6438 mm bare'],
    ['voltage-drop', 'awg', '2/0', '2/0 AWG, 9.266 mm bare'],
    ['voltage-drop', 'temperature', '149 F', '65 °C'],
    ['bend-radius', 'diameter', '1/8in', '3.175 mm'],
    ['discharge', 'capacitance', '.05 MFD', '0.05 µF'],
    ['discharge', 'resistance', '4k7', '4.7 kΩ'],
    ['stress', 'ac', '6.3VAC', '6.3 V ac'],
    ['insulation-class', 'margin', '1.4', '1.4'],
    ['bundle', 'diameters', '7x1.6,2.4', '7 × 1.6 mm, 2.4 mm: 8 in all'],
    ['bundle', 'diameters', '1.6', '1.6 mm: one'],
    ['post-wrap', 'post', '1.14', '1.14 × 1.14 mm'],
    ['air-gap', 'field', 'Homogeneous', 'homogeneous']
  ])('%s %s says how it took %j', (id, name, text, words) => {
    expect(read(id, name, text)).toEqual({ state: 'understood', words });
  });

  it('says what is taken where it is blank, or that it is needed', () => {
    expect(read('voltage-drop', 'temperature', ' ')).toEqual({ state: 'taken', words: '20 °C' });
    expect(read('ampacity', 'basis', '')).toEqual({ state: 'taken', words: 'cabinet' });
    expect(read('voltage-drop', 'awg', '')).toEqual({ state: 'needed' });
  });

  it('says what is wrong, the limit and the way out, without the name before the value', () => {
    expect(read('voltage-drop', 'length', '10q')).toEqual({
      state: 'refused',
      words:
        'Cannot read "10q": "q" is no unit of length known here. Accepted: from 0 to 100000 m. Write it as 10ft.'
    });
    expect(read('voltage-drop', 'amps', '-1')).toEqual({
      state: 'refused',
      words: 'Out of range: -1 A. Accepted: from 0 to 1000 A. Give it as 1.2A.'
    });
    const none = read('discharge', 'resistance', '0');
    expect(none).toMatchObject({ state: 'refused' });
    expect(none).toHaveProperty('words', expect.stringContaining('treat the capacitor as charged'));
  });

  it('refuses what could be read in two ways, and volts of the wrong kind', () => {
    expect(read('discharge', 'resistance', '1.5m')).toMatchObject({ state: 'refused' });
    expect(read('stress', 'dc', '6.3VAC')).toHaveProperty(
      'words',
      expect.stringContaining('This says ac, but dc takes dc')
    );
  });

  it('never throws and never shows what is not a number, whatever is typed', () => {
    const fields = sums.flatMap((sum) =>
      Object.keys(sum.inputs.shape).map((name) => ({ sum, name }))
    );
    const text = fc.oneof(
      fc.string({ maxLength: 30 }),
      fc.stringMatching(/^-?[0-9.,/x ]{0,12}(V|kV|mm|in|ft|ohm|k|MEG|uF|%|e9)?$/)
    );
    fc.assert(
      fc.property(fc.constantFrom(...fields), text, ({ sum, name }, typed) => {
        const reading = readField(sum, name, typed);
        const words = reading.state === 'needed' ? 'needed' : reading.words;
        expect(words).not.toBe('');
        if (reading.state !== 'refused') expect(words).not.toMatch(/NaN|Infinity|undefined|null/);
      }),
      { seed: 20_115, numRuns: 1500 }
    );
  });
});
