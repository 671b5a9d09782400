import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { findEndLabel } from '#document/index.ts';
import { decodeListBytes } from '#intake/index.ts';
import { readEnd } from '#intake/read-end.ts';
import { readText, wiresOf } from './read-list.ts';

// `readText` itself parses what comes out with the document's schema and looks for loose ends.

const headings = fc.constantFrom(
  'No',
  'From',
  'To',
  'from part',
  'from pin',
  'To',
  'Colour',
  'Tracer',
  'Gauge',
  'Volts',
  'V dc',
  'V ac',
  'Pulse (kV)',
  'mA',
  'Length',
  'Length (in)',
  'Cable',
  'Type',
  'Unit',
  'State',
  'Notes',
  'Rating',
  'Planned wire',
  'Critical',
  'Origin',
  '',
  '__proto__',
  'toString',
  'Odd'
);
const cells = fc.oneof(
  fc.string({ maxLength: 20 }),
  fc.constantFrom(
    'V3-5',
    'T1 red',
    'chassis',
    'chassis at',
    '?',
    'tuner',
    'V3 (6CG7) pin 5',
    'B+ 285',
    '285/310',
    '~',
    '<',
    '1,5',
    '1.234,5',
    '"',
    '""',
    '=1+1',
    "'=1",
    '22',
    '7/30',
    '0.8 mm',
    'red/yel',
    'Total',
    '((((((',
    'V1(((',
    '- - - -',
    '5 kV p-p',
    '1e309',
    'coax',
    'keep length',
    '\u0000',
    'K\u0301'
  )
);
const lists = fc
  .tuple(
    fc.constantFrom(',', ';', '\t', '|'),
    fc.array(headings, { minLength: 1, maxLength: 10 }),
    fc.array(fc.array(cells, { maxLength: 12 }), { maxLength: 12 }),
    fc.constantFrom('\n', '\r\n', '\r')
  )
  .map(([delimiter, head, rows, end]) =>
    [['From', 'To', ...head], ...rows].map((row) => row.join(delimiter)).join(end)
  );

test('any text is read or refused, never an error (seed 20)', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 300, unit: 'binary' }), (text) => {
      const { document, notes } = readText(text);
      expect(document !== null || notes.length > 0).toBe(true);
    }),
    { seed: 20, numRuns: 400 }
  );
});

test('any list of odd cells becomes a valid document or none (seed 21)', () => {
  fc.assert(
    fc.property(lists, (text) => {
      const { document, counts } = readText(text);
      expect(document === null ? 0 : wiresOf(document).length).toBe(counts.wires);
    }),
    { seed: 21, numRuns: 600 }
  );
});

test('any bytes have a text (seed 22)', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
      expect(typeof decodeListBytes(bytes)).toBe('string');
    }),
    { seed: 22, numRuns: 300 }
  );
});

test('long and repetitive cells do not hang the reader', () => {
  const started = process.cpuUsage();
  for (const piece of [
    '(',
    ')',
    'V1-',
    ' ',
    '-',
    '1,',
    '9',
    'a ',
    'red ',
    '?',
    '"',
    'b+ ',
    '1/',
    '$\n'
  ]) {
    const long = piece.repeat(20_000);
    readEnd(long);
    readText(
      `From,To,V dc,Colour,Gauge,Planned wire,Rating,Cable\nV1-1,V2-1,${long},${long},${long},${long},${long},${long}`
    );
    readText(long);
  }
  expect(process.cpuUsage(started).user / 1e6).toBeLessThan(20);
});

// What a list can say without doubt comes back as it was said.
const sureEnds = fc
  .tuple(
    fc.constantFrom('V', 'TS', 'T', 'SW', 'P', 'J', 'R'),
    fc.integer({ min: 1, max: 40 }),
    fc.integer({ min: 1, max: 9 })
  )
  .map(([letters, number, pin]) => `${letters}${number}-${pin}`);

test('plain ends come back under the same label, wire by wire (seed 23)', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(sureEnds, sureEnds), { minLength: 1, maxLength: 30 }), (runs) => {
      const { document } = readText(['From,To', ...runs.map((run) => run.join(','))].join('\n'));
      const read = wiresOf(document!).map(({ from, to }) => [
        findEndLabel(document!, from),
        findEndLabel(document!, to)
      ]);
      expect(read).toEqual(runs);
    }),
    { seed: 23, numRuns: 150 }
  );
});
