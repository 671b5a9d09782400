// Lines as restorers write them in a notebook: common practice, no source.
import { describe, expect, it, test } from 'vitest';
import { leadsAtTerminal, type Lead } from '#editor/pin-walk/leads.ts';
import { completeWalkLine, readWalkLine } from '#editor/pin-walk/read-walk-line.ts';
import { EndNames } from '#editor/schedule/end-text.ts';
import { buildStudy } from '#study/index.ts';
import { chassis } from '../../helpers/chassis.ts';

const document = chassis('Bench set')
  .unit('Main chassis')
  .tube('V1', '6CG7')
  .tube('V2', '6AU6A')
  .strip('TS3', 5)
  .part('resistor', 'R47', [{ name: 'A', on: 'V1-2' }, { name: 'B' }])
  .wire(1, 'V1-1', null, { colour: 'blue' })
  .build();
const study = buildStudy(document);
const ends = new EndNames(document, study.index);
const [part] = study.index.parts;
const leadAt = (label: string): Lead => {
  const entry = study.index.terminals.find(
    (one) => `${one.part.reference}-${one.terminal.name}` === label
  )!;
  return leadsAtTerminal(study, entry.key)[0]!;
};
const read = (line: string, asked: Lead | null) => {
  const reading = readWalkLine(line, { part: part!, asked, ends });
  return reading.ok ? `${reading.event.kind}: ${reading.understood}` : `refused: ${reading.why}`;
};

describe('with nothing asked', () => {
  test.each([
    ['', 'next: on to the next terminal'],
    ['blue', 'note: blue, other end not yet'],
    ['blue ts3-2', 'note: blue, to TS3-2'],
    ['blue 5', 'note: blue, to V1-5'],
    ['red to pin 4', 'note: red, to V1-4'],
    ['resistor 47k v2-4', 'note: resistor 47k, to V2-4']
  ])('"%s"', (line, expected) => expect(read(line, null)).toBe(expected));
  it('refuses what begins with nothing it knows', () =>
    expect(read('some wire', null)).toMatch(/^refused: .*blue\/white ts3-2/));
});

describe('asked where a wire goes', () => {
  test.each([
    ['', 'far-end: blue: other end not yet'],
    ['?', 'far-end: blue: other end not yet'],
    ['ts3 2', 'far-end: blue to TS3-2'],
    ['5', 'far-end: blue to V1-5'],
    ['splice', 'splice: blue to a splice in the air'],
    ['into the loom', 'far-end: blue: "into the loom" as written, no part of that name'],
    ['red', 'note: red, other end not yet'],
    ['red ts3-1', 'note: red, to TS3-1'],
    ['47k', 'far-end: blue: "47k" as written, no part of that name']
  ])('"%s"', (line, expected) => expect(read(line, leadAt('V1-1'))).toBe(expected));
});

describe('asked where a resistor goes', () => {
  test.each([
    ['47k', 'value: resistor R47 of 47k'],
    ['yellow violet orange', 'value: resistor R47 of 47k'],
    ['v2-4', 'far-end: resistor R47 to V2-4']
  ])('"%s"', (line, expected) => expect(read(line, leadAt('V1-2'))).toBe(expected));
});

describe('names offered while a line is typed', () => {
  const lines = (line: string, asked: Lead | null = null) =>
    completeWalkLine(line, { part: part!, asked, ends }).map((name) => name.line);
  it('complete the end of the line, whatever stands before it', () => {
    expect(lines('blue ts').slice(0, 2)).toEqual(['blue TS3-1', 'blue TS3-2']);
    expect(lines('resistor 47k ts3-4')).toEqual(['resistor 47k TS3-4']);
    expect(lines('ts3-5', leadAt('V1-1'))).toEqual(['TS3-5']);
  });
  it('leave a colour alone', () => expect(lines('blue')).toEqual([]));
});
