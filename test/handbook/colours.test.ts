import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  chassisColours,
  colourHexes,
  colourNames,
  findCircuitFunction,
  findColourHex,
  findLeadColours,
  formatColour,
  leadColours,
  nearestColour,
  parseColour
} from '#handbook/index.ts';

const read = (text: string): string | null => {
  const parsed = parseColour(text);
  return parsed && [formatColour(parsed), parsed.tracer].filter(Boolean).join('/');
};

describe('colours as people write them', () => {
  test.each([
    ['red', 'red'],
    ['red/yel', 'red/yellow'],
    ['GRN-WHT', 'green/white'],
    ['slate', 'gray'],
    ['grey', 'gray'],
    ['purple', 'violet'],
    ['white w/ red tracer', 'white/red'],
    ['white w/red', 'white/red'],
    ['wht with blk stripe', 'white/black'],
    ['blk w wht', 'black/white'],
    ['w/r', 'white/red'],
    ['R/Y', 'red/yellow'],
    ['W', 'white'],
    ['dk. blue', 'dark blue'],
    ['Lt Grn', 'light green'],
    ['BLK.', 'black'],
    ['wht (red)', 'white/red']
  ])('%s', (text, expected) => expect(read(text)).toBe(expected));

  test.each(['', 'bl', 'gr', 'b', 'g', 'red/white/blue', 'cloth', 'red?', 'n/a', '22'])(
    '"%s" is left as it is',
    (text) => expect(read(text)).toBeNull()
  );

  test('any text is read or refused, never an error (seed 7)', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 120 }), (text) => {
        const parsed = parseColour(text);
        expect(parsed === null || colourNames.includes(parsed.colour)).toBe(true);
      }),
      { seed: 7, numRuns: 500 }
    );
  });

  test('each name is shown in its own colour', () => {
    expect(new Set(Object.values(colourHexes)).size).toBe(colourNames.length);
    expect(findColourHex('dark red')).toBe(colourHexes.red);
    expect(findColourHex('plaid')).toBeNull();
  });
});

describe('the colour code', () => {
  // Source: NAVEDTRA 14040, Fig. 6-15 (RETMA/EIA chassis wiring); digits of RETMA REC-116.
  test('function, colour and digit', () => {
    expect(chassisColours.map(({ digit, colour }) => `${digit} ${colour}`)).toEqual([
      '0 black',
      '1 brown',
      '2 red',
      '3 orange',
      '4 yellow',
      '5 green',
      '6 blue',
      '7 violet',
      '8 gray',
      '9 white'
    ]);
    const colours = Object.fromEntries(chassisColours.map((row) => [row.circuit, row.colour]));
    expect(colours).toMatchObject({
      ground: 'black',
      heater: 'brown',
      'supply plus': 'red',
      'screen grid': 'orange',
      cathode: 'yellow',
      'control grid': 'green',
      plate: 'blue',
      'supply minus': 'violet',
      'power line': 'gray'
    });
  });

  // Source: EIA transformer lead colour code, published table.
  test('power transformer leads', () => {
    expect(findLeadColours('power transformer', 'red', 'yellow').map(({ lead }) => lead)).toEqual([
      'high voltage center tap'
    ]);
    expect(findLeadColours('power transformer', 'yellow', null)[0]?.lead).toBe(
      'rectifier filament'
    );
    expect(findLeadColours('power transformer', 'black', 'red')[0]?.lead).toBe('primary finish');
    expect(findLeadColours('IF transformer', 'blue', null)[0]?.lead).toBe('plate');
    expect(leadColours.filter((row) => row.mark === 'from memory').length).toBe(3);
  });

  test.each([
    ['B+ 285', 'supply plus'],
    ['boosted B+', 'supply plus'],
    ['B-', 'supply minus'],
    ['V3 plate', 'plate'],
    ['screen grid V7', 'screen grid'],
    ['V7 g1', 'control grid'],
    ['heater trunk', 'heater'],
    ['6.3 fil.', 'heater'],
    ['gnd return', 'ground'],
    ['AC line to switch', 'power line'],
    ['cathode bias', 'cathode'],
    ['vertical sync', null],
    ['B-scan', null]
  ])('"%s" speaks of %s', (text, circuit) => expect(findCircuitFunction(text)).toBe(circuit));
});

describe('a slip of the key', () => {
  test.each([
    ['yelow', 'yellow'],
    ['Oragne', 'orange'],
    ['grean', 'green'],
    ['bllue', 'blue'],
    ['dark grean/whte', 'dark green/white'],
    ['yelow/blk', 'yellow/black']
  ])('%s is offered as %s', (typed, meant) => expect(nearestColour(typed)).toBe(meant));

  test.each(['red', 'wht/red', 'mauve', 'cloth', '', 'yeeelow', 'x'.repeat(90)])(
    '%s is offered as nothing',
    (typed) => expect(nearestColour(typed)).toBeNull()
  );
});
