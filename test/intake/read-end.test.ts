import { describe, expect, test } from 'vitest';
import { readEnd } from '#intake/read-end.ts';

const short = (text: string): string => {
  const end = readEnd(text);
  if (end.kind === 'unknown') return `unknown ${end.text}`.trim();
  if (end.kind === 'ground') {
    return `${end.isApart ? 'apart ' : ''}ground${end.name === null ? '' : ` ${end.name}`}`;
  }
  const type = end.type === null ? '' : ` = ${end.type}`;
  const marks = `${end.isUncertain ? '?' : ''}${end.isGrounded ? '*' : ''}`;
  return `${end.partKind} ${end.reference} [${end.terminal ?? ''}]${type}${marks}`;
};

// Ends as people write them; the expected reading is what a restorer takes each to mean
// (common practice, no source).
describe('a terminal of a part with a reference', () => {
  test.each([
    ['V3-5', 'tube V3 [5]'],
    ['V3 pin 5', 'tube V3 [5]'],
    ['v3 PIN #5', 'tube V3 [5]'],
    ['V3:5', 'tube V3 [5]'],
    ['V3.5', 'tube V3 [5]'],
    ['V3/5', 'tube V3 [5]'],
    ['V3p5', 'tube V3 [5]'],
    ['V3, pin 05', 'tube V3 [5]'],
    ['V 3 pin 5', 'tube V3 [5]'],
    ['V3 (6CG7) pin 5', 'tube V3 [5] = 6CG7'],
    ['V3(6cg7)-5', 'tube V3 [5] = 6CG7'],
    ['V3 6CG7 pin 5', 'tube V3 [5] = 6CG7'],
    ['V3 (horiz. osc.) pin 5', 'tube V3 [5]'],
    ['V3 pin 5 (plate)', 'tube V3 [5]'],
    ['V4A-3', 'tube V4 [3]'],
    ['pin 5 of V3', 'tube V3 [5]'],
    ['pin 5, V3', 'tube V3 [5]'],
    ['red lead of T1', 'transformer T1 [red]'],
    ['V3 [5]', 'tube V3 [5]'],
    ['V3 - 5', 'tube V3 [5]'],
    ['V3 #5', 'tube V3 [5]'],
    ['V8 cap', 'tube V8 [cap]'],
    ['V8 plate cap', 'tube V8 [cap]'],
    ['T1 red', 'transformer T1 [red]'],
    ['T1 (red)', 'transformer T1 [red]'],
    ['T1 RED/YEL lead', 'transformer T1 [red/yellow]'],
    ['T1 S1', 'transformer T1 [S1]'],
    ['TS2 lug 3', 'terminal strip TS2 [3]'],
    ['TS-2-3', 'terminal strip TS2 [3]'],
    ['TS3 lug 3 (ground)', 'terminal strip TS3 [3]*'],
    ['TS2 gnd lug', 'terminal strip TS2 [gnd]'],
    ['SW1-2F', 'switch SW1 [2F]'],
    ['C1A', 'capacitor C1 [A]'],
    ['C1 -', 'capacitor C1 [-]'],
    ['P2.7', 'plug P2 [7]'],
    ['CRT-11', 'picture tube CRT [11]'],
    ['6CG7 pin 5', 'tube 6CG7 [5] = 6CG7'],
    ['6SN7 (2nd) pin 7', 'tube 6SN7 (2nd) [7] = 6SN7'],
    ['V3-5?', 'tube V3 [5]?'],
    ['V3 ?', 'tube V3 []'],
    ['R12', 'resistor R12 []']
  ])('%s', (text, expected) => expect(short(text)).toBe(expected));
});

describe('a part that goes by a name', () => {
  test.each([
    ['tuner', 'other tuner []'],
    ['tuner ?1', 'other tuner [?1]'],
    ['yoke red', 'yoke yoke [red]'],
    ['yoke plug 5', 'plug yoke plug [5]'],
    ['volume control wiper', 'control volume control [wiper]'],
    ['volume control, lug 2', 'control volume control [2]'],
    ['line cord hot', 'plug line cord [hot]'],
    ['speaker +', 'speaker speaker [+]'],
    ['picture tube pin 11', 'picture tube picture tube [11]'],
    ['damper cathode', 'tube damper [cathode]'],
    ['B+', 'other B+ []']
  ])('%s', (text, expected) => expect(short(text)).toBe(expected));
});

describe('the chassis', () => {
  test.each([
    ['chassis', 'ground'],
    ['Ground', 'ground'],
    ['gnd', 'ground'],
    ['GND.', 'ground'],
    ['chassis lug', 'ground'],
    ['ground 4', 'ground ground 4'],
    ['gnd #4', 'ground ground 4'],
    ['ground lug 4', 'ground ground 4'],
    ['chassis at TS2', 'ground chassis at TS2'],
    ['chassis (near T1)', 'ground chassis at T1'],
    ['chassis at G3', 'ground G3'],
    ['chassis ground at V5 socket', 'ground chassis at V5 socket'],
    ['G3', 'ground G3'],
    ['metal at GL6', 'apart ground GL6'],
    ['chassis at TS6-3', 'terminal strip TS6 [3]*']
  ])('%s', (text, expected) => expect(short(text)).toBe(expected));
});

describe('an end that nobody found keeps its words', () => {
  test.each([
    ['', 'unknown'],
    ['?', 'unknown ?'],
    ['???', 'unknown ???'],
    ['unknown', 'unknown unknown'],
    ['not traced', 'unknown not traced'],
    ['n/a', 'unknown n/a'],
    ['cut off', 'unknown cut off'],
    ['? toward the cage', 'unknown ? toward the cage'],
    ['goes under the power transformer', 'unknown goes under the power transformer'],
    ['cut off under the tone plate', 'unknown cut off under the tone plate'],
    ['V3-V4', 'unknown V3-V4'],
    ['V3-5, V4-2', 'unknown V3-5, V4-2'],
    ['12', 'unknown 12']
  ])('"%s"', (text, expected) => expect(short(text)).toBe(expected));
});
