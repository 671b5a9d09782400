import { describe, expect, test } from 'vitest';
import { sortByOrder } from '#document/index.ts';
import { maxListCharacters, maxListRows } from '#intake/read-table.ts';
import { partsOf, readText, runsOf, wireOf, wiresOf } from './read-list.ts';

const documentOf = (text: string) => readText(text).document!;

describe('the chassis', () => {
  test('each mention is a lug of its own, a named lug is one', () => {
    const document = documentOf(
      'From,To\nV1-1,chassis\nV1-2,chassis\nV1-3,ground 4\nV1-4,gnd 4\nV1-5,chassis at TS2\nV1-6,chassis at TS2\nchassis,ground'
    );
    expect(runsOf(document)).toEqual([
      '1 V1-1 > chassis 1',
      '2 V1-2 > chassis 2',
      '3 V1-3 > ground 4',
      '4 V1-4 > ground 4',
      '5 V1-5 > chassis at TS2',
      '6 V1-6 > chassis at TS2',
      '7 chassis 3 > chassis 4'
    ]);
    const lugs = sortByOrder(document.parts).filter(({ kind }) => kind === 'ground lug');
    expect(lugs.length).toBe(6);
    expect(lugs.every(({ terminals }) => Object.values(terminals)[0]!.grounded)).toBe(true);
  });

  test('a name that the list uses itself is not given away', () => {
    expect(runsOf(documentOf('From,To\nV1-1,chassis\nV1-2,chassis 1'))).toEqual([
      '1 V1-1 > chassis 2',
      '2 V1-2 > chassis 1'
    ]);
  });
});

describe('parts', () => {
  test('a pin beyond the base brings none between', () => {
    const { document, notes } = readText('No,From,To\n1,V3 (6CG7)-5,TS2-1\n2,V3-15,TS2-2');
    expect(partsOf(document!)[0]).toBe('V3 tube 6CG7: 1 2 3 4 5 6 7 8 9 15');
    expect(notes.map(({ text }) => text)).toEqual([
      'row 2: V3 is a 6CG7, whose base has no pin 15; the wires are kept as written'
    ]);
  });

  test('one reference is one part, in any case, with its terminals in order', () => {
    expect(partsOf(documentOf('From,To\nTS2-10,ts2-9\nTS2 lug 2,T1 red\nT1 RED,t1 blue'))).toEqual([
      'TS2 terminal strip: 1 2 3 4 5 6 7 8 9 10',
      'T1 transformer: blue red'
    ]);
  });

  test('a type column belongs to the end that is a tube', () => {
    const { document, notes } = readText(
      'From,To,Type\nV1-4,TS1-1,6CG7\nTS1-2,V2-3,6AL5\nV3-1,V4-1,6AQ5\nTS1-3,TS1-4,6AU6\nTS1-5,V5-1,octal'
    );
    const parts = partsOf(document!);
    expect(parts).toContain('V1 tube 6CG7: 1 2 3 4 5 6 7 8 9');
    expect(parts).toContain('V2 tube 6AL5: 1 2 3 4 5 6 7');
    expect(parts).toContain('V3 tube: 1');
    expect(parts).toContain('V5 tube octal: 1 2 3 4 5 6 7 8');
    expect(notes.filter(({ column }) => column === 'Type').map(({ row }) => row)).toEqual([4, 5]);
    expect(wireOf(document!, '3').notes).toBe('Type: 6AQ5');
  });

  test('a type column may say what the wire is made of', () => {
    const document = documentOf(
      'From,To,Type\nV1-4,TS1-1,bare bus\nTS1-2,V2-3,coax\nV1-1,V2-1,UL 1015'
    );
    expect(wiresOf(document).map(({ construction }) => construction)).toEqual([
      'bare bus',
      'coax',
      'hook-up wire'
    ]);
    expect(wireOf(document, '3').found.style).toBe('UL 1015');
  });

  test('two types for one part are told, the first is kept', () => {
    const { document, notes } = readText('From,To\nV1 (6CG7) pin 4,TS1-1\nV1 (6SN7) pin 5,TS1-2');
    expect(partsOf(document!)[0]).toMatch(/^V1 tube 6CG7/);
    expect(
      notes.some(({ text }) => /^row 3: V1 is given as 6SN7 here and as 6CG7 before/.test(text))
    ).toBe(true);
    expect(wireOf(document!, '2').notes).toBe('V1: 6SN7');
  });

  test('a pin that the base does not have is kept and told', () => {
    const { document, notes } = readText('From,To\nV1 (6AL5) pin 9,TS1-1');
    expect(runsOf(document!)).toEqual(['1 V1-9 > TS1-1']);
    expect(notes.some(({ text }) => text.includes('no pin 9'))).toBe(true);
  });

  test('a type that the handbook lacks leaves the base unknown', () => {
    const { document, notes } = readText('From,To\nV1 (6ZZ9) pin 2,TS1-1');
    expect(partsOf(document!)[0]).toBe('V1 tube 6ZZ9: 1 2');
    expect(notes.some(({ text }) => text.includes('the handbook has no 6ZZ9'))).toBe(true);
  });

  test('tubes that go by their type are told of', () => {
    const { document, notes } = readText('From,To\n6CG7 pin 4,TS1-1\n6CG7 (2nd) pin 4,TS1-2');
    expect(runsOf(document!)).toEqual(['1 6CG7-4 > TS1-1', '2 6CG7 (2nd)-4 > TS1-2']);
    expect(notes.some(({ text }) => text.includes('6CG7 names a tube by its type'))).toBe(true);
  });

  test('a name without a terminal is never one big node', () => {
    const document = documentOf('From,To\ntuner,V1-1\ntuner,V1-2\nantenna,V1-3');
    expect(runsOf(document)).toEqual([
      '1 tuner ?1 > V1-1',
      '2 tuner ?2 > V1-2',
      '3 antenna > V1-3'
    ]);
    expect(wireOf(document, '1').from).toMatchObject({ known: 'inferred', as: 'tuner' });
  });

  test('a resistor with a third lug is a control', () => {
    expect(partsOf(documentOf('From,To\nR1-3,R2-1'))).toEqual(['R1 control: 3', 'R2 resistor: 1']);
  });
});

describe('columns', () => {
  test('any order, any case, ends split in two', () => {
    const document = documentOf(
      'COLOUR;TO TERMINAL;TO PART;FROM PART;FROM TERMINAL\nred;5;V1;TS1;2'
    );
    expect(runsOf(document)).toEqual(['1 TS1-2 > V1-5']);
  });

  test('both ends in one cell', () => {
    expect(
      runsOf(documentOf('Number,From - To,Colour\n7,V1-5 to TS1-2,red\n8,V1-6 → T1 red,blue'))
    ).toEqual(['7 V1-5 > TS1-2', '8 V1-6 > T1 red']);
  });

  test('headings that an object has already are kept safely', () => {
    const document = documentOf('From,To,__proto__,constructor,__proto__\nV1-1,V2-1,a,b,c');
    expect(wireOf(document, '1').notes).toBe('__proto__: a; constructor: b; __proto__: c');
  });

  test('lengths without any unit are not guessed, once told', () => {
    const { document, notes } = readText('From,To,Length\nV1-1,V2-1,12\nV1-2,V2-2,9');
    expect(wireOf(document!, '1').tapedMm).toBeUndefined();
    expect(wireOf(document!, '1').notes).toBe('Length: 12');
    expect(notes.filter(({ column }) => column === 'Length').length).toBe(1);
  });

  test('one unit in the cells of a length column holds for its bare numbers', () => {
    const document = documentOf('From,To,Length\nV1-1,V2-1,12 in\nV1-2,V2-2,9');
    expect(wireOf(document, '2').tapedMm).toBeCloseTo(228.6, 9);
  });

  test('a comma that could mean both is not read in a semicolon list', () => {
    const { document, notes } = readText('From;To;V dc\nV1-1;V2-1;1,250');
    expect(wireOf(document!, '1').carries).toEqual({});
    expect(notes.some(({ cell, kind }) => cell === '1,250' && kind === 'unread')).toBe(true);
  });

  test('a kind of volts that the cell says of itself wins over the heading', () => {
    const { document, notes } = readText('From,To,Volts DC\nV1-1,V2-1,6.3 VAC');
    expect(wireOf(document!, '1').carries).toEqual({ acV: 6.3 });
    expect(notes[0]!.text).toContain('V ac');
  });

  test('text that a spreadsheet would run comes back without its apostrophe', () => {
    expect(wireOf(documentOf("From,To,Notes\nV1-1,V2-1,'=SUM(A1)"), '1').notes).toBe('=SUM(A1)');
  });

  test('a cable with its conductor behind a comma', () => {
    const document = documentOf(
      'From,To,Cable\nP1-1,V1-1,"yoke cable, red"\nP1-2,V1-2,"yoke cable, shield"'
    );
    expect(Object.values(document.cables).map(({ name }) => name)).toEqual(['yoke cable']);
    expect(
      wiresOf(document).map(({ conductor, construction }) => [conductor, construction])
    ).toEqual([
      ['red', 'hook-up wire'],
      ['shield', 'shield']
    ]);
  });

  test('numbers as written; without any, the wires are numbered and it is told', () => {
    expect(
      wiresOf(documentOf('No,From,To\n12a,V1-1,V2-1\n,V1-2,V2-2\n12a,V1-3,V2-3')).map(
        ({ number }) => number
      )
    ).toEqual(['12a', '', '12a']);
    expect(readText('From,To\nV1-1,V2-1').notes[0]!.text).toMatch(/numbered 1 to 1/);
  });

  test('a quote that is never closed swallows nothing', () => {
    const { counts } = readText('From,To,Notes\nV1-1,V2-1,"open\nV1-2,V2-2,x\nV1-3,V2-3,y');
    expect(counts.wires).toBe(3);
  });

  test('a separator line of a spreadsheet is no row', () => {
    expect(runsOf(documentOf('sep=;\nFrom;To\nV1-1;V2-1'))).toEqual(['1 V1-1 > V2-1']);
  });

  test('cells beyond the last heading are kept', () => {
    expect(wireOf(documentOf('From,To\nV1-1,V2-1,stray'), '1').notes).toBe('column 3: stray');
  });

  test('the title is the given one, else the line above, else the file', () => {
    expect(documentOf('My set\nFrom,To\nV1-1,V2-1').identity.title).toBe('My set');
    expect(readText('From,To\nV1-1,V2-1', 'shop/radio 5.csv').document!.identity.title).toBe(
      'radio 5'
    );
  });
});

describe('what nothing is read from', () => {
  const toldBy = (text: string): string[] => readText(text).notes.map((note) => note.text);

  test('columns without a known heading are named, and the end that is missing', () => {
    expect(toldBy('No,From,Whither,Gauge,Fate\n1,V3-5,TS2-1,20,x9\n2,V3-6,TS2-2,20,')).toEqual([
      'no heading says where the second end is, so every wire has one end only: give its column a heading such as To',
      'columns kept as text: "Whither", "Fate"; if one holds an end or a value, give it a heading such as To, Gauge or Length (in)'
    ]);
  });

  test('a known heading of something that is kept as text, and an empty column, are not', () => {
    expect(toldBy('No,From,To,V p-p,Fate\n1,V3-5,TS2-1,90,\n2,V3-6,TS2-2,90,')).toEqual([]);
  });

  test('"Starts", "Finishes" and "How long" are ends and a length', () => {
    const { document, counts } = readText('No,Starts,Finishes,How long\n1,V3-5,TS2-1,5 in');
    expect(counts.halfKnown).toBe(0);
    expect(wireOf(document!, '1').tapedMm).toBeCloseTo(127, 9);
  });
});

describe('a colour that is not known', () => {
  test('is kept as written, told once for all its rows, with the nearest that is known', () => {
    const list =
      'No,From,To,Colour,Tracer\n1,V3-5,TS2-1,yelow,\n2,V3-6,TS2-2,yelow,\n3,V3-7,TS2-3,red,mauve\n4,V3-8,TS2-4,red,blue';
    const { document, notes } = readText(list);
    expect(wireOf(document!, '1').found.colour).toBe('yelow');
    expect(notes.map(({ text }) => text)).toEqual([
      'rows 2, 3, Colour: "yelow" is no colour known here: kept as written; if yellow is meant, write yellow',
      'row 4, Tracer: "mauve" is no colour known here: kept as written'
    ]);
  });
});

describe('a minus where there is none', () => {
  test.each([
    ['Length', '-5 in', 'a length has no minus'],
    ['Length (in)', '−5', 'a length has no minus'],
    ['Strip from (mm)', '-6', 'a length has no minus'],
    ['Amps', '-0.3', 'a current in a wire has no minus'],
    ['Amps', '-150 mA', 'a current in a wire has no minus'],
    ['Gauge', '-2', 'a gauge has no minus'],
    ['Gauge', '-22 AWG', 'a gauge has no minus']
  ])('%s %s is not read, told and kept', (heading, cell, why) => {
    const { document, notes, counts } = readText(`No,From,To,${heading}\n7,V3-5,TS2-1,${cell}`);
    const wire = wireOf(document!, '7');
    expect(wire.tapedMm ?? wire.found.awg ?? wire.carries?.amps).toBeUndefined();
    expect(wire.from.stripMm).toBeUndefined();
    expect(wire.notes).toBe(`${heading}: ${cell}`);
    expect(counts.unread).toBe(1);
    expect(notes).toEqual([expect.objectContaining({ kind: 'unread', row: 2, column: heading })]);
    expect(notes[0]!.text).toContain(why);
  });

  test('a negative bias is a voltage as good as any', () => {
    const { document } = readText('No,From,To,V dc\n7,V3-5,TS2-1,-35');
    expect(wireOf(document!, '7').carries?.dcV).toBe(-35);
  });
});

describe('no wire', () => {
  test.each([
    ['', 'no heading row'],
    ['hello', 'no heading row'],
    ['Colour,Gauge\nred,22', 'no heading row'],
    ['From,To', 'no wire below']
  ])('%j', (text, words) => {
    const { document, notes, counts } = readText(text);
    expect(document).toBeNull();
    expect(counts.wires).toBe(0);
    expect(notes.at(-1)!.text).toContain(words);
  });
});

describe('limits', () => {
  test('too long a text is refused with the limit', () => {
    const { document, notes } = readText(`From,To\n${'x'.repeat(maxListCharacters)}`);
    expect(document).toBeNull();
    expect(notes[0]!.text).toContain('20 million characters');
  });

  test('too many rows are refused with the limit', () => {
    const { document, notes } = readText(`From,To\n${'V1-1,V2-1\n'.repeat(maxListRows)}`);
    expect(document).toBeNull();
    expect(notes[0]!.text).toContain('50000 rows');
  });

  test('values beyond what a document holds are told and kept as text', () => {
    const { document, notes } = readText('From,To,V dc,Amps,Gauge\nV1-1,V2-1,900 kV,99999,77');
    expect(wireOf(document!, '1').carries).toEqual({});
    expect(notes.filter(({ kind }) => kind === 'unread').length).toBe(3);
  });

  // About a second on an idle machine; the time of the processor, so that a busy one does not count.
  test('5,000 rows take seconds at most', () => {
    const rows = Array.from(
      { length: 5000 },
      (_, n) =>
        `${n},V${n % 90} (6CG7) pin ${(n % 9) + 1},TS${n % 200} lug ${(n % 7) + 1},red/yel,22,B+ feed,${n % 400},${n % 90} mA,${n % 20} 1/2,note ${n},bin ${n}`
    );
    const text = [
      'No,From,To,Color,Gauge,Function,Volts DC,Current,Length (in),Notes,Bin',
      ...rows
    ].join('\n');
    const before = process.cpuUsage();
    const { counts } = readText(text);
    const { user } = process.cpuUsage(before);
    expect(counts).toMatchObject({ wires: 5000, unread: 0 });
    expect(user / 1e6).toBeLessThan(8);
  });
});
