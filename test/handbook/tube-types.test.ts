import { describe, expect, test } from 'vitest';
import {
  findTubeType,
  formatPinFunction,
  heaterElements,
  pinPlaces,
  readPinNotation,
  tubeTerminals,
  tubeTypes
} from '#handbook/index.ts';

const pinsOf = (name: string): Record<string, string> =>
  Object.fromEntries(
    findTubeType(name)!.pinFunctions.map((pin) => [pin.pin, formatPinFunction(pin)])
  );

describe('pins that a published source gives', () => {
  // Source: 6SN7GTB data sheet.
  test('6SN7GTB', () => {
    expect(pinsOf('6SN7GTB')).toEqual({
      1: 'control grid 2',
      2: 'plate 2',
      3: 'cathode 2',
      4: 'control grid 1',
      5: 'plate 1',
      6: 'cathode 1',
      7: 'heater',
      8: 'heater'
    });
  });
  // Source: 6CG7 data sheet.
  test('6CG7', () => {
    expect(pinsOf('6CG7')).toEqual({
      1: 'plate 2',
      2: 'control grid 2',
      3: 'cathode 2',
      4: 'heater',
      5: 'heater',
      6: 'plate 1',
      7: 'control grid 1',
      8: 'cathode 1',
      9: 'internal shield'
    });
  });
  // Source: 6V6GT data sheet.
  test('6V6GT', () => {
    const pins = pinsOf('6V6GT');
    expect([pins[2], pins[7]]).toEqual(['heater', 'heater']);
    expect([pins[3], pins[4], pins[5]]).toEqual(['plate', 'screen grid', 'control grid']);
    expect(pins[8]).toMatch(/^cathode/);
  });
  // Source: 12AX7 data sheet; published list of tube connections, as ECC82, ECC81.
  test.each(['12AX7A', '12AU7A', '12AT7'])('%s has its heater tap on pin 9', (name) => {
    const pins = pinsOf(name);
    expect([pins[4], pins[5], pins[9]]).toEqual(['heater', 'heater', 'heater tap']);
    expect([pins[1], pins[2], pins[3]]).toEqual(['plate 2', 'control grid 2', 'cathode 2']);
    expect([pins[6], pins[7], pins[8]]).toEqual(['plate 1', 'control grid 1', 'cathode 1']);
  });
  // Source: published list of tube connections, as EB91.
  test('6AL5', () => {
    expect(pinsOf('6AL5')).toEqual({
      1: 'cathode 1',
      2: 'diode plate 2',
      3: 'heater',
      4: 'heater',
      5: 'cathode 2',
      6: 'internal shield',
      7: 'diode plate 1'
    });
  });
  // Source: 6BM8 data sheet.
  test('6BM8', () => {
    expect(pinsOf('6BM8')).toMatchObject({
      1: 'triode control grid',
      2: 'pentode cathode',
      3: 'pentode control grid',
      6: 'pentode plate',
      7: 'pentode screen grid',
      8: 'triode cathode',
      9: 'triode plate'
    });
  });
  // Source: published data on the 6BE3.
  test('6BE3', () => {
    expect(pinsOf('6BE3')).toEqual({
      1: 'heater',
      4: 'plate',
      7: 'cathode',
      10: 'plate',
      12: 'heater'
    });
  });

  test('nothing else is marked verified', () => {
    const verified = tubeTypes.filter((type) => type.pins === 'verified').map(({ name }) => name);
    expect(verified.toSorted()).toEqual(
      ['12AT7', '12AU7A', '12AX7A', '6AL5', '6BE3', '6BM8', '6CG7', '6SN7GTB', '6V6GT'].toSorted()
    );
  });
});

// Volts and amperes as the named sources print them.
test.each([
  ['6SN7GTB', 6.3, 0.6, '6SN7GTB data sheet'],
  ['6V6GT', 6.3, 0.45, '6V6GT data sheet'],
  ['6CG7', 6.3, 0.6, '6CG7 data sheet'],
  ['12AX7A', 12.6, 0.15, '12AX7 data sheet'],
  ['6AX4GT', 6.3, 1.2, 'published description of the 6AU4 and its kin'],
  ['6AU4GTA', 6.3, 1.8, 'published description of the 6AU4 and its kin'],
  ['6BQ6GTB', 6.3, 1.2, 'published description of the 6BQ6GTB']
])('%s: heater %f V, %f A (%s)', (name, volts, amps, source) => {
  expect(findTubeType(name)!.heater).toMatchObject({ volts, amps, mark: 'verified', source });
});

// Heater amperes as a compiled set of tube data extracts gives them: a second witness for rows
// whose heater is from memory.
test.each([
  ['6AQ5A', 0.45],
  ['6J6', 0.45],
  ['6AC7', 0.45],
  ['6BQ5', 0.76],
  ['12AT7', 0.15],
  ['12AU7A', 0.15]
])('%s draws %f A', (name, amps) => expect(findTubeType(name)!.heater!.amps).toBe(amps));

describe('every row', () => {
  test('there are at least sixty, each named once', () => {
    expect(tubeTypes.length).toBeGreaterThanOrEqual(60);
    expect(new Set(tubeTypes.map(({ name }) => name)).size).toBe(tubeTypes.length);
  });

  test.each(tubeTypes.map((type) => [type.name, type] as const))('%s holds together', (_, type) => {
    const pins = pinPlaces(type.base).map(({ pin }) => pin);
    const named = type.pinFunctions.map(({ pin }) => pin);
    expect(new Set(named).size).toBe(named.length);
    expect(pins).toEqual(expect.arrayContaining(named));
    expect(type.source).not.toBe('');
    expect(type.pins === 'unknown').toBe(type.pinFunctions.length === 0);
    const ends = type.pinFunctions
      .filter(({ role }) => role === 'heater' || role === 'filament')
      .map(({ pin }) => pin);
    if (!type.heater) expect(ends).toEqual([]);
    else {
      expect(ends).toEqual(expect.arrayContaining([...type.heater.pins]));
      expect(type.heater.pins[0]).not.toBe(type.heater.pins[1]);
      const elements = heaterElements(type);
      expect(elements.reduce((sum, element) => sum + element.volts, 0)).toBeCloseTo(
        type.heater.volts,
        6
      );
      // The number that a receiving type begins with is its heater's volts, near enough (RETMA
      // naming; loctal 7 is 6.3). Picture tubes begin with the inches of the screen.
      const first = /^(\d+)[A-Z]{1,2}\d/.exec(type.name)?.[1];
      if (first !== undefined && type.topCap !== 'second anode') {
        expect(Math.abs(type.heater.volts - Number(first))).toBeLessThan(0.75);
      }
    }
  });
});

describe('finding a type', () => {
  test.each([
    ['6cg7', '6CG7'],
    ['6SN7 GT', '6SN7GTB'],
    ['6SN7', '6SN7GTB'],
    ['6CG7/6FQ7', '6CG7'],
    ['ECC83', '12AX7A'],
    ['EL84', '6BQ5'],
    ['6au6', '6AU6A'],
    ['6BQ6-GTB', '6BQ6GTB'],
    ['OD3', '0D3'],
    ['80', '80']
  ])('%s is the %s', (text, name) => expect(findTubeType(text)?.name).toBe(name));

  test.each(['', '6CG', '9ZZ9', '6CG7X9', '   ', 'plate', '8', '6CG70'])('"%s" is none', (text) => {
    expect(findTubeType(text)).toBeNull();
  });

  test('terminals are all pins in order, then the cap', () => {
    expect(tubeTerminals(findTubeType('6DQ6B')!)).toEqual([
      '1',
      '2',
      '3',
      '4',
      '5',
      '6',
      '7',
      '8',
      'cap'
    ]);
    expect(tubeTerminals(findTubeType('6AL5')!)).toEqual(['1', '2', '3', '4', '5', '6', '7']);
  });

  test('a tapped heater makes two elements', () => {
    expect(heaterElements(findTubeType('12AX7')!)).toEqual([
      { from: '4', to: '9', volts: 6.3, amps: 0.15 },
      { from: '9', to: '5', volts: 6.3, amps: 0.15 }
    ]);
    expect(heaterElements(findTubeType('35W4')!)).toEqual([
      { from: '4', to: '6', volts: 7.5, amps: 0.15 },
      { from: '6', to: '3', volts: 27.5, amps: 0.15 }
    ]);
    expect(heaterElements(findTubeType('0D3')!)).toEqual([]);
  });
});

test('the notation of the table refuses a role that it does not know', () => {
  expect(() => readPinNotation('1:zz')).toThrow(/zz/);
  expect(readPinNotation('8:k+su')).toEqual([
    { pin: '8', role: 'cathode', also: ['suppressor'], section: null }
  ]);
});
