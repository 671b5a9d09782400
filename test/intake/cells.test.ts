import { describe, expect, test } from 'vitest';
import { readAmountCell } from '#intake/amount-cells.ts';
import {
  readColourCell,
  readInsulationCell,
  readRatingCell,
  readWholeConductor
} from '#intake/conductor-cells.ts';
import { commaUseOf, decimalCommaOf, isAmbiguousComma } from '#intake/decimal-comma.ts';
import { nearestAwg, readGaugeCell } from '#intake/gauge-cells.ts';

const volts = (text: string, decimalComma?: boolean) =>
  readAmountCell(text, { dimension: 'voltage', unit: 'V', decimalComma });

describe('amounts in cells', () => {
  test.each([
    ['285', 285, null, null],
    ['B+ 285', 285, null, null],
    ['B+ = 285 V', 285, null, null],
    ['-35', -35, null, null],
    ['6.3 VAC', 6.3, 'ac', null],
    ['4.5 kV pulse', 4500, 'peak', null],
    ['16 kV peak', 16_000, 'peak', null],
    ['~280', 280, null, 'marked as about'],
    ['about 110', 110, null, 'marked as about'],
    ['<50', 50, null, 'an upper bound, read as the value'],
    ['280?', 280, null, 'marked as doubtful'],
    ['285/310', 310, null, 'two values, the larger is used'],
    ['310-285 V', 310, null, 'two values, the larger is used'],
    ['0.5/1 kV', 1000, null, 'two values, the larger is used']
  ])('%s', (text, value, current, remark) => {
    expect(volts(text)).toEqual({ kind: 'amount', value, current, remark });
  });

  test.each(['', '-', 'n/a', '?', 'unknown', 'not measured', '...'])('"%s" is blank', (text) => {
    expect(volts(text)).toEqual({ kind: 'blank' });
  });

  // A lower bound taken for the value would understate the stress.
  test.each(['>200', 'over 250', 'hot', '28o', '6.3 ohm', '9 V p-p', '1e999', '4 kV + 285'])(
    '"%s" is not read',
    (text) => expect(volts(text).kind).toBe('unread')
  );

  test('half an ampere may be a fraction, volts never are', () => {
    const amps = { dimension: 'current', unit: 'A', decimalComma: undefined } as const;
    expect(readAmountCell('1/2', amps)).toMatchObject({ value: 0.5 });
    expect(volts('1/2')).toMatchObject({ value: 2 });
  });

  test('a length without any unit is not guessed', () => {
    const length = { dimension: 'length', unit: null, decimalComma: undefined } as const;
    expect(readAmountCell('12', length).kind).toBe('unread');
    expect(readAmountCell('12"', length)).toMatchObject({ value: 304.8 });
    expect(readAmountCell('7 1/2', { ...length, unit: 'in' })).toMatchObject({ value: 190.5 });
  });
});

describe('decimal commas', () => {
  test.each([
    [['5,5', '12'], 'decimal'],
    [['0,075'], 'decimal'],
    [['1.234,5'], 'decimal'],
    [['1,250', '12.5'], 'thousands'],
    [['1,234.5'], 'thousands'],
    [['1,250', '12'], 'not told'],
    [['5,5', '5.5'], 'mixed']
  ] as const)('%j', (cells, use) => expect(commaUseOf(cells)).toBe(use));

  test('the column decides, else the list, else each cell', () => {
    expect(decimalCommaOf('decimal', 'thousands')).toBe(true);
    expect(decimalCommaOf('not told', 'decimal')).toBe(true);
    expect(decimalCommaOf('not told', 'thousands')).toBe(false);
    expect(decimalCommaOf('mixed', 'decimal')).toBeUndefined();
    expect(volts('1,250', true)).toMatchObject({ value: 1.25 });
    expect(volts('1,250', false)).toMatchObject({ value: 1250 });
    expect(isAmbiguousComma('1,250')).toBe(true);
    expect(isAmbiguousComma('0,250')).toBe(false);
  });
});

describe('gauges', () => {
  test.each([
    ['22', 22, null],
    ['#22', 22, null],
    ['22.0', 22, null],
    ['22 AWG', 22, null],
    ['AWG22', 22, null],
    ['20 solid', 20, 'solid'],
    ['18 ga. stranded', 18, 'stranded'],
    ['7/30', 22, 'stranded'],
    ['0.8 mm', 20, null],
    ['0,8 mm', 20, null],
    ['0.5 mm2', 20, null]
  ])('%s', (text, awg, stranding) => {
    expect(readGaugeCell(text)).toMatchObject({ awg, stranding, problem: null });
  });

  test.each(['thick', '22.5', '220', '99 mm', '#'])('"%s" is no gauge', (text) => {
    expect(readGaugeCell(text).awg).toBeNull();
    expect(readGaugeCell(text).problem).not.toBeNull();
  });

  // Source: ASTM B258 as printed in a published wire table: diameters of solid wire in mm.
  test.each([
    [10, 2.5882],
    [18, 1.0237],
    [20, 0.8118],
    [22, 0.6438],
    [24, 0.5106],
    [30, 0.2546]
  ])('%i AWG is the gauge nearest to %f mm', (awg, mm) => expect(nearestAwg(mm)).toBe(awg));
});

describe('insulation', () => {
  test('colours, with what they are made of and what is no colour', () => {
    expect(readColourCell('red/yel').fields).toEqual({ colour: 'red', tracer: 'yellow' });
    expect(readColourCell('brown cloth').fields).toEqual({ colour: 'brown', insulation: 'cloth' });
    expect(readColourCell('blue (faded)')).toEqual({ fields: { colour: 'blue' }, rest: '(faded)' });
    expect(readColourCell('plaid').fields).toEqual({ colour: 'plaid' });
  });

  test('ratings', () => {
    expect(readRatingCell('600')).toEqual({ ratingV: 600 });
    expect(readRatingCell('600 V 105C')).toEqual({ ratingV: 600, ratingC: 105 });
    expect(readRatingCell('20 kV dc')).toEqual({ ratingV: 20_000, ratingKind: 'dc' });
    expect(readRatingCell('5 kV pulse')).toEqual({ ratingV: 5000, ratingKind: 'pulse' });
    expect(readRatingCell('unmarked')).toBeNull();
  });

  test('what is printed on it', () => {
    expect(readInsulationCell('UL 1015')).toEqual({ insulation: 'UL 1015', style: 'UL 1015' });
    expect(readInsulationCell('PVC 600V')).toEqual({ insulation: 'PVC 600V', ratingV: 600 });
    expect(readInsulationCell('rubber')).toEqual({ insulation: 'rubber' });
  });

  test('a whole conductor in one cell', () => {
    expect(readWholeConductor('22 AWG UL1015 600V red/yel solid')).toEqual({
      fields: {
        awg: 22,
        style: 'UL 1015',
        ratingV: 600,
        colour: 'red',
        tracer: 'yellow',
        stranding: 'solid'
      },
      rest: ''
    });
    expect(readWholeConductor('from the blue box, 20 ga').rest).toBe('from the blue box');
  });
});
