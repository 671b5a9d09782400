import { describe, expect, test } from 'vitest';
import { readHeading } from '#intake/heading-words.ts';
import { findHeadings } from '#intake/find-headings.ts';

const short = (heading: string): string => {
  const meaning = readHeading(heading);
  return meaning ? `${meaning.role}${meaning.unit === null ? '' : ` ${meaning.unit}`}` : 'nothing';
};

// Headings as people write them (common practice, no source).
describe('what a heading means', () => {
  test.each([
    ['No', 'number'],
    ['#', 'number'],
    ['Wire', 'number'],
    ['WIRE NO.', 'number'],
    ['Tag #', 'number'],
    ['From', 'from'],
    ['Start', 'from'],
    ['Starts', 'from'],
    ['Finish', 'to'],
    ['Finishes', 'to'],
    ['Ends', 'to'],
    ['Starts at', 'from'],
    ['Ends at', 'to'],
    ['Finish pin', 'toTerminal'],
    ['How long', 'length'],
    ['How long (in)', 'length in'],
    ['End A', 'from'],
    ['Destination', 'to'],
    ['goes to', 'to'],
    ['From part', 'fromPart'],
    ['from terminal', 'fromTerminal'],
    ['To pin', 'toTerminal'],
    ['To (pin)', 'toTerminal'],
    ['From unit', 'fromUnit'],
    ['From - To', 'both'],
    ['Ref 1', 'fromPart'],
    ['Pin 2', 'toTerminal'],
    ['Node B', 'to'],
    ['Colour/Tracer', 'colour'],
    ['Tracer colour', 'tracer'],
    ['kV peak', 'pulseV kV'],
    ['Volts to chassis', 'volts'],
    ['Colour', 'colour'],
    ['color', 'colour'],
    ['Jacket', 'colour'],
    ['Wire Color', 'colour'],
    ['Tracer', 'tracer'],
    ['Gauge/AWG', 'gauge'],
    ['AWG', 'gauge'],
    ['Size', 'gauge'],
    ['Gauge found AWG', 'gauge'],
    ['Gauge planned AWG', 'plannedGauge'],
    ['planned gauge', 'plannedGauge'],
    ['New wire', 'planned'],
    ['Replacement', 'planned'],
    ['New colour', 'plannedColour'],
    ['Function', 'function'],
    ['Signal', 'function'],
    ['circuit', 'function'],
    ['used for', 'function'],
    ['Volts DC', 'dcV'],
    ['V dc', 'dcV'],
    ['VDC', 'dcV'],
    ['DC (kV)', 'dcV kV'],
    ['B+', 'dcV'],
    ['Volts AC', 'acV'],
    ['V ac rms', 'acV'],
    ['Pulse', 'pulseV'],
    ['V peak', 'pulseV'],
    ['Pulse (kV pk)', 'pulseV kV'],
    ['V p-p', 'extra'],
    ['Volts', 'volts V'],
    ['Voltage (dc)', 'dcV'],
    ['Current (mA)', 'amps mA'],
    ['mA', 'amps mA'],
    ['Load (mA)', 'amps mA'],
    ['Guage', 'gauge'],
    ['Lgth (")', 'length in'],
    ['Amps', 'amps A'],
    ['Length (in)', 'length in'],
    ['Length, mm', 'length mm'],
    ['taped length', 'length'],
    ['inches', 'length in'],
    ['cut length', 'nothing'],
    ['Cable', 'cable'],
    ['Condition', 'condition'],
    ['State', 'state'],
    ['Remarks', 'notes'],
    ['Type', 'type'],
    ['Rating (V)', 'rating V'],
    ['Insulation rating', 'rating'],
    ['Rating planned V', 'plannedRating V'],
    ['Current rating', 'extra'],
    ['Temp rating', 'ratingC'],
    ['Insulation', 'insulation'],
    ['UL style', 'style'],
    ['Unit', 'unit'],
    ['Connected points', 'derived'],
    ['Class needed V', 'derived V'],
    ['Shelf bin', 'nothing'],
    ['constructor', 'nothing'],
    ['__proto__', 'nothing'],
    ['', 'nothing']
  ])('%s', (heading, expected) => expect(short(heading)).toBe(expected));
});

describe('where the headings stand', () => {
  test('below title lines', () => {
    const rows = [
      ['My set', '', ''],
      ['', '', ''],
      ['Colour', 'To', 'From'],
      ['red', 'V1-1', 'V2-2']
    ];
    const found = findHeadings(rows)!;
    expect(found.row).toBe(2);
    expect(found.columns.map(({ role }) => role)).toEqual(['colour', 'to', 'from']);
  });

  test('part and pin twice are the first end and the second', () => {
    const rows = [['Part', 'Pin', 'Part', 'Pin', 'Notes', 'Notes', 'Gauge', 'Gauge']];
    expect(findHeadings(rows)!.columns.map(({ role }) => role)).toEqual([
      'fromPart',
      'fromTerminal',
      'toPart',
      'toTerminal',
      'notes',
      'notes',
      'gauge',
      'extra'
    ]);
  });

  test('beside From and To, a pin belongs to the end before it, an item is a number', () => {
    const rolesOf = (headings: string[]) =>
      findHeadings([headings])!.columns.map(({ role }) => role);
    expect(rolesOf(['Item', 'From', 'Pin', 'To', 'Pin', 'Location'])).toEqual([
      'number',
      'from',
      'fromTerminal',
      'to',
      'toTerminal',
      'extra'
    ]);
    expect(rolesOf(['From', 'To', 'Pin', 'Part'])).toEqual(['from', 'to', 'toTerminal', 'extra']);
  });

  test('on two lines', () => {
    const rows = [
      ['', 'From', '', 'To', '', 'Volts', ''],
      ['No', 'Part', 'Pin', 'Part', 'Pin', 'dc', 'ac'],
      ['1', 'V1', '5', 'V2', '4', '250', '']
    ];
    const found = findHeadings(rows)!;
    expect([found.row, found.count]).toEqual([0, 2]);
    expect(found.columns.map(({ role }) => role)).toEqual([
      'number',
      'fromPart',
      'fromTerminal',
      'toPart',
      'toTerminal',
      'dcV',
      'acV'
    ]);
  });

  test('A and B are ends where both stand there, else A is amperes', () => {
    expect(findHeadings([['A', 'B', 'Colour']])!.columns[0]!.role).toBe('from');
    expect(findHeadings([['From', 'To', 'A']])!.columns[2]!.role).toBe('amps');
  });

  test('no row names an end', () => {
    expect(
      findHeadings([
        ['Colour', 'Gauge'],
        ['red', '22']
      ])
    ).toBeNull();
  });
});
