import { describe, expect, test } from 'vitest';
import { findElement, sortByOrder } from '#document/index.ts';
import { decodeListBytes } from '#intake/index.ts';
import { partsOf, readListFile, readText, runsOf, wireOf } from './read-list.ts';

// Each expectation was taken from the list by eye.
describe('a console television, commas', () => {
  const { document, notes, counts } = readListFile('console-comma.csv');

  test('every wire is there, end to end', () => {
    expect(runsOf(document)).toEqual([
      '1 T1 brown > V1-4',
      '2 V1-4 > V2-3',
      '3 V1-5 > chassis 1',
      '4 V9-8 > C1 A',
      '5 C1 A > TS4-2',
      '6 TS4-2 > V2-6',
      '7 V7 cap > T3-1',
      '8 T3-5 > V8 cap',
      '9 V8-2 > CRT anode',
      '10 T3-6 > yoke red',
      '11 tuner > V2-1',
      '12 ? > TS4-1'
    ]);
    expect(counts).toMatchObject({ wires: 12, halfKnown: 1, unread: 0 });
  });

  test('one volts column holds ac, dc and pulses', () => {
    const carries = (number: string) => wireOf(document, number).carries;
    expect(carries('1')).toEqual({ acV: 6.3, amps: 4.8 });
    expect(carries('2')).toEqual({ acV: 6.3, amps: 1.2 });
    expect(carries('3')).toEqual({});
    expect(carries('4')).toEqual({ dcV: 330, amps: 0.28 });
    expect(carries('5')).toEqual({ dcV: 310, amps: 0.21 });
    expect(carries('7')).toEqual({ pulseV: 4500 });
    expect(carries('8')).toEqual({ pulseV: 16_000 });
    expect(carries('9')).toEqual({ dcV: 16_000 });
    expect(carries('10')).toEqual({});
  });

  test('inches and their fractions, millimetres in the document', () => {
    expect(wireOf(document, '1').tapedMm).toBeCloseTo(14.5 * 25.4, 9);
    expect(wireOf(document, '5').tapedMm).toBeCloseTo(9.75 * 25.4, 9);
    expect(wireOf(document, '12').tapedMm).toBeUndefined();
  });

  test('a type in brackets gives the base, its pins and its heater', () => {
    const v1 = sortByOrder(document.parts).find(({ reference }) => reference === 'V1')!;
    expect(partsOf(document)).toContain('V1 tube 6CG7: 1 2 3 4 5 6 7 8 9');
    expect(partsOf(document)).toContain('V8 tube 1B3GT: 1 2 3 4 5 6 7 8 cap');
    const [heater] = Object.values(v1.elements!);
    const nameOf = (id: unknown) => v1.terminals[String(id)]!.name;
    expect(heater).toMatchObject({ kind: 'heater', volts: 6.3, amps: 0.6 });
    expect([nameOf(heater!.from), nameOf(heater!.to)]).toEqual(['4', '5']);
  });

  test('titles, sections and sums are no wires and are not lost', () => {
    expect(document.identity.title).toBe('Evening Star 21 console, main chassis');
    expect(document.identity.notes).toBe('traced on the bench in March\nTOTAL 104');
    expect(wireOf(document, '4').notes).toMatch(/Section: B\+ SUPPLY$/);
    expect(notes.filter(({ kind }) => kind === 'left out').map(({ row }) => row)).toEqual([20]);
  });

  test('what was understood beyond the plain value is told and kept', () => {
    expect(wireOf(document, '5').notes).toMatch(/^Volts: 285\/310; old splice/);
    expect(notes.find(({ row }) => row === 11)!.text).toBe(
      'row 11, Volts: "285/310" was read, with the text kept in the notes: two values, the larger is used'
    );
  });
});

describe('a radio, semicolons and decimal commas', () => {
  const { document, counts } = readListFile('radio-semicolon.csv');

  test('ends, parts and counts', () => {
    expect(runsOf(document).slice(0, 3)).toEqual([
      '1 S1-2 > V5-4',
      '2 V5-3 > V4-3',
      '3 V4-4 > V1-3'
    ]);
    expect(runsOf(document).slice(8)).toEqual(['9 V5-6 > I1-1', '10 loop antenna green > V1-7']);
    expect(counts).toMatchObject({ wires: 10, unread: 0, halfKnown: 0 });
  });

  test('the whole list decides what a comma means', () => {
    expect(wireOf(document, '1')).toMatchObject({
      tapedMm: 120.5,
      carries: { acV: 117, amps: 0.15 }
    });
    expect(wireOf(document, '7').carries).toEqual({ dcV: 128.5, amps: 0.07 });
    expect(wireOf(document, '8').tapedMm).toBe(95.5);
  });

  test('metric sizes become the nearest gauge, tracers have a column', () => {
    expect(wireOf(document, '1').found.awg).toBe(20);
    expect(wireOf(document, '8').found).toMatchObject({ awg: 22, colour: 'red', tracer: 'yellow' });
  });

  test('a tapped heater is two elements', () => {
    const v5 = sortByOrder(document.parts).find(({ reference }) => reference === 'V5')!;
    expect(Object.values(v5.elements!).map((element) => element['volts'])).toEqual([7.5, 27.5]);
  });
});

describe('a tuner, tabs, part and pin apart', () => {
  const { document } = readListFile('tuner-tabs.tsv');

  test('ends of two cells each', () => {
    expect(runsOf(document)).toEqual([
      '1 V101-6 > TB1-2',
      '2 V101-1 > L7 blue',
      '3 T104 plate > V106 cap',
      '4 T104 + > chassis 1',
      '5 CRT anode > V107-2'
    ]);
  });

  test('kilovolts in the heading count for bare numbers alone', () => {
    expect(wireOf(document, '3').carries).toEqual({ dcV: 540, pulseV: 5200 });
    expect(wireOf(document, '5').carries).toEqual({ dcV: 14_000 });
  });

  test('the same list in UTF-16 reads the same', () => {
    const { document: plain } = readListFile('tuner-tabs.tsv');
    const text = runsOf(plain).join('\n');
    const source = 'Run\tPart\tPin\tPart\tPin\r\n1\tV101\t6\tTB1\t2\r\n';
    const wide = Buffer.from(`\uFEFF${source}`, 'utf16le');
    expect(runsOf(readText(decodeListBytes(wide)).document!)[0]).toBe(text.split('\n')[0]);
    const unmarked = Buffer.from(source, 'utf16le');
    expect(decodeListBytes(unmarked)).toBe(source);
    expect(decodeListBytes(unmarked.swap16())).toBe(source);
    expect(decodeListBytes(Uint8Array.from([0x47, 0x72, 0xfc, 0x6e]))).toBe('Grün');
  });
});

describe('a shop sheet, two heading lines on every page', () => {
  const { document, notes } = readListFile('shop-two-line.csv');

  test('wires of both pages, numbered by the column without a heading', () => {
    expect(runsOf(document)).toEqual([
      '1 V1-5 > R12-1',
      '2 V1-4 > V2-4',
      '3 TS3-3 > SW1-4',
      '4 C4 + > TS3-1',
      '5 P2-7 > J2-7'
    ]);
    expect(notes).toEqual([]);
  });

  test('thousands, a negative supply, a line break in a cell, a foot on the metal', () => {
    expect(wireOf(document, '4').carries.dcV).toBe(1150);
    expect(wireOf(document, '5').carries.dcV).toBe(-35);
    expect(wireOf(document, '1').notes).toBe('plate load\nreplace the resistor');
    const strip = sortByOrder(document.parts).find(({ reference }) => reference === 'TS3')!;
    expect(sortByOrder(strip.terminals).map(({ name, grounded }) => [name, grounded])).toEqual([
      ['1', undefined],
      ['2', undefined],
      ['3', true]
    ]);
  });
});

describe('a club database, many columns', () => {
  const { document, notes } = readListFile('club-many-columns.csv');
  const unitOf = (number: string, side: 'from' | 'to'): string =>
    document.units[document.parts[wireOf(document, number)[side].at!.part]!.unit]!.name;

  test('two units each have a V1', () => {
    const v1 = Object.values(document.parts).filter(({ reference }) => reference === 'V1');
    expect(v1.map(({ type }) => type).toSorted()).toEqual(['6BQ7A', '6SN7GT']);
    expect([unitOf('101', 'from'), unitOf('104', 'from')]).toEqual(['Main', 'Tuner']);
    expect([unitOf('102', 'from'), unitOf('102', 'to')]).toEqual(['Main', 'Tuner']);
    expect(unitOf('105', 'from')).toBe('Tuner');
  });

  test('found and planned conductors', () => {
    expect(wireOf(document, '101')).toMatchObject({
      origin: 'original',
      state: 'tagged',
      found: { colour: 'blue', awg: 22, insulation: 'cloth', ratingV: 300, condition: 'good' },
      planned: { awg: 22, style: 'UL 1015', ratingV: 600, colour: 'blue', stranding: 'solid' }
    });
    expect(wireOf(document, '108')).toMatchObject({
      origin: 'modification',
      found: { ratingV: 5000, ratingKind: 'pulse' },
      planned: { way: 'new wire', colour: 'violet' },
      critical: { keepPlace: true, keepShort: true },
      carries: { dcV: 540, pulseV: 4500, amps: 0.12 },
      dress: 'well away from V8'
    });
    expect(wireOf(document, '106').planned.way).toBe('re-sleeve');
  });

  test('cables hold their wires; a braid is a shield', () => {
    const cables = sortByOrder(document.cables).map(({ name, kind, signal, impedanceOhm }) => [
      name,
      kind,
      signal,
      impedanceOhm
    ]);
    expect(cables).toEqual([
      ['W1', 'shielded wire', 'supply', undefined],
      ['coax 75 ohm', 'coax', 'radio frequency', 75],
      ['shielded pair to volume control', 'shielded pair', 'audio', undefined]
    ]);
    expect(wireOf(document, '103').construction).toBe('shield');
    expect(wireOf(document, '104').construction).toBe('coax');
    expect(wireOf(document, '105').construction).toBe('shield');
    expect(findElement(document.cables, wireOf(document, '107').cable!)!.name).toContain('volume');
  });

  test('odd columns are kept under their headings', () => {
    expect(wireOf(document, '101').notes).toMatch(/Shelf bin: B4; Photo: 12/);
  });

  test('what cannot be read is told with row, column and text, and kept', () => {
    expect(notes.filter(({ kind }) => kind === 'unread')).toMatchObject([
      { row: 9, column: 'State', cell: 'painted over' },
      { row: 11, column: 'Rating (V)', cell: 'abc' }
    ]);
    expect(wireOf(document, '110').notes).toMatch(/^Rating \(V\): abc/);
    expect(wireOf(document, '110').carries).toEqual({ dcV: 330, acV: 5, amps: 3 });
  });
});

describe('bench notes, bars and question marks', () => {
  const { document, counts, notes } = readListFile('bench-bars.txt');

  test('half-known wires are kept with their words', () => {
    expect(runsOf(document)).toEqual([
      '1 V2-6 > ?',
      '2 V2-5 > unknown',
      '3 line cord hot > S1 ?1',
      '4 line cord neutral > F1 ?1',
      '5 S1 ?2 > T1 black',
      '6 F1 ?2 > T1 black/red',
      '7 TS1-2 > cut off',
      '8 V3-9 > TS1-3',
      '9 ? > TS1-1',
      '10 ? > ?'
    ]);
    expect(counts.halfKnown).toBe(5);
    expect(wireOf(document, '8').from).toMatchObject({ known: 'inferred', as: 'V3-9?' });
    expect(wireOf(document, '7').to).toEqual({ known: 'unknown', as: 'cut off' });
  });

  test('a lower bound is not taken for the value', () => {
    expect(wireOf(document, '2').carries).toEqual({});
    expect(wireOf(document, '2').notes).toBe('volts: >200');
    expect(notes.some(({ row, kind }) => row === 3 && kind === 'unread')).toBe(true);
  });

  test('the power line is ac where nothing else is said', () => {
    expect(wireOf(document, '3').carries).toEqual({ acV: 117 });
    expect(wireOf(document, '9').carries).toEqual({ dcV: -12 });
  });
});

test('a list without headings is read by what stands in it, and says so', () => {
  const { document, notes } = readListFile('no-headings.csv');
  expect(runsOf(document)).toEqual([
    '1 V1-5 > TS1-2',
    '2 V1-6 > TS1-4',
    '3 V2-1 > T1 green',
    '4 V2-7 > chassis 1',
    '5 TS1-4 > R7-1'
  ]);
  expect(wireOf(document, '3').found).toEqual({ colour: 'green', awg: 20 });
  expect(notes[0]!.text).toMatch(/^no heading row was found/);
});
