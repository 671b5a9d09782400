import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { makeIdFrom } from '#document/index.ts';
import { DocumentState } from '#editor/core/document-state.svelte.ts';
import { Preferences } from '#editor/core/preferences.svelte.ts';
import { newRow } from '#editor/schedule/cell-access.ts';
import { ScheduleState } from '#editor/schedule/schedule-state.svelte.ts';
import { chassis } from '../helpers/chassis.ts';
import { seeded } from '../helpers/generate-chassis.ts';
import { lateCellText } from '#editor/schedule/late-cell-text.ts';

beforeAll(() => lateCellText.load());

let documents: DocumentState;
let schedule: ScheduleState;
let preferences: Preferences;
let said: string[];
let picked: string[];
let time: number;

beforeEach(() => {
  said = [];
  picked = [];
  time = 0;
  documents = new DocumentState(
    chassis('Bench set')
      .unit('Main chassis', { size: [430, 300] })
      .tube('V1', '6CG7', { at: [60, 60] })
      .tube('V2', '6CG7', { at: [160, 60] })
      .strip('TS1', 5, { at: [120, 60] })
      .wire(12, 'V1-1', 'TS1-2', { colour: 'red', dcV: 285 })
      .wire(13, 'V1-6', 'TS1-4', { colour: 'blue' })
      .build(),
    () => (time += 5000)
  );
  preferences = new Preferences(null);
  schedule = new ScheduleState({
    documents,
    preferences,
    makeId: makeIdFrom(seeded(11)),
    tell: (words) => said.push(words),
    pickWire: (id) => picked.push(id),
    showList: () => said.push('a list is shown')
  });
});

const wire = (number: string) =>
  Object.values(documents.document.wires).find((candidate) => candidate.number === number)!;
const cell = (number: string, column: string): string =>
  schedule.rows
    .find(({ id }) => id === wire(number).id)!
    .cells.find((candidate) => candidate.column === column)!.text;

/** Puts the cursor on a cell, types over it and takes it with Enter. */
const type = (row: string, column: string, text: string): void => {
  schedule.goTo(row, column);
  schedule.open(row, column);
  schedule.text = text;
  schedule.key({ key: 'Enter' });
};

describe('the schedule at work', () => {
  it('shows each wire with what it needs', () => {
    expect(cell('12', 'from')).toBe('V1-1');
    expect(cell('12', 'carries')).toBe('285 V dc');
    // A supply of 285 V dc is judged in the study; here it only has to be shown as known.
    expect(cell('12', 'needs')).toMatch(/V/);
    expect(schedule.rows.map(({ id }) => id)).toEqual([wire('12').id, wire('13').id]);
  });

  it('takes what is typed, judges again at once, and undoes it in one step', () => {
    expect(cell('13', 'needs')).toBe('unknown');
    type(wire('13').id, 'carries', '18kV dc');
    expect(wire('13').carries.dcV).toBe(18_000);
    expect(cell('13', 'needs')).toBe('25 kV');
    expect(schedule.rows[1]!.band).toBe('20k+');
    documents.undo();
    expect(cell('13', 'needs')).toBe('unknown');
    expect(schedule.rows[1]!.band).toBe('not known');
  });

  it('keeps the rows that an edit did not change', () => {
    const before = schedule.rows;
    type(wire('13').id, 'colour', 'blue/white');
    expect(schedule.rows[0]).toBe(before[0]);
    expect(schedule.rows[1]).not.toBe(before[1]);
    expect(wire('13').found).toMatchObject({ colour: 'blue', tracer: 'white' });
  });

  it('keeps what could not be read, says why, and does not touch the document', () => {
    const before = documents.document;
    type(wire('12').id, 'carries', '285 V');
    expect(documents.document).toBe(before);
    expect(schedule.badCell(wire('12').id, 'carries')).toEqual({
      text: '285 V',
      why: '"285 V": is that dc, ac or pulse?'
    });
    expect(said.at(-1)).toContain('dc, ac or pulse');
    schedule.goTo(wire('12').id, 'carries');
    schedule.key({ key: 'F2' });
    expect(schedule.text).toBe('285 V');
    schedule.text = '285 V dc';
    schedule.key({ key: 'Enter' });
    expect(schedule.badCell(wire('12').id, 'carries')).toBeNull();
  });

  it('leaves the cell as it was on Escape', () => {
    const before = documents.document;
    schedule.goTo(wire('12').id, 'colour');
    schedule.key({ key: 'x' });
    expect(schedule.text).toBe('x');
    schedule.key({ key: 'Escape' });
    expect(documents.document).toBe(before);
    expect(schedule.cursor).toMatchObject({ column: 'colour', editing: null });
  });

  it('moves an end to the terminal that is typed', () => {
    type(wire('13').id, 'to', 'v2 pin 3');
    expect(cell('13', 'to')).toBe('V2-3');
    type(wire('13').id, 'to', 'into the loom');
    expect(cell('13', 'to')).toBe('into the loom');
    expect(wire('13').to.at).toBeUndefined();
    expect(schedule.rows[1]!.halfTraced).toBe(true);
  });

  it('makes a numbered wire out of the last row and goes on in it', () => {
    schedule.goTo(newRow, 'from');
    schedule.key({ key: 'V' });
    schedule.text = 'V2-1';
    schedule.key({ key: 'Tab' });
    const made = wire('14');
    expect(cell('14', 'from')).toBe('V2-1');
    expect(schedule.cursor).toEqual({ row: made.id, column: 'to', editing: null });
    expect(documents.undoName).toBe('add wire 14');
  });

  it('fills both ends from terminals picked on the drawing', () => {
    schedule.startWireAt('V2-1');
    expect(schedule.awaitedEnd).toBe('to');
    expect(schedule.fillEnd('TS1-3')).toBe(true);
    expect(cell('14', 'from')).toBe('V2-1');
    expect(cell('14', 'to')).toBe('TS1-3');
    expect(schedule.awaitedEnd).toBeNull();
    expect(schedule.fillEnd('TS1-4')).toBe(false);
    expect(picked.at(-1)).toBe(wire('14').id);
  });

  it('steps through the states of the work and back to the first', () => {
    const { id } = wire('12');
    const seen = Array.from({ length: 5 }, () => {
      schedule.advance(id);
      return wire('12').state;
    });
    expect(seen).toEqual(['tagged', 'removed', 'fitted', 'checked', 'found']);
    schedule.goTo(id, 'state');
    schedule.key({ key: 'Enter' });
    expect(wire('12').state).toBe('tagged');
    schedule.key({ key: 'Enter', shift: true });
    expect(wire('12').state).toBe('found');
  });

  it('deletes a wire, and undo brings it back in its place', () => {
    const { id } = wire('12');
    schedule.goTo(id, 'from');
    schedule.key({ key: 'Delete', command: true });
    expect(schedule.rows.map((row) => row.id)).toEqual([wire('13').id]);
    expect(schedule.cursor.row).toBe(wire('13').id);
    documents.undo();
    expect(schedule.rows[0]!.id).toBe(id);
  });

  it('reads and shows lengths in the unit that was chosen', () => {
    preferences.setColumnSet('found');
    preferences.setLengthUnit('in');
    type(wire('12').id, 'length', '9 1/2');
    expect(wire('12').tapedMm).toBeCloseTo(241.3, 9);
    expect(cell('12', 'length')).toBe('9 1/2 in');
    preferences.setLengthUnit('mm');
    expect(cell('12', 'length')).toBe('241.3 mm');
  });
});

describe('many cells at once', () => {
  const numbers = (): string[] =>
    schedule.rows.map(({ id }) => documents.document.wires[id]!.number);
  const mark = (from: [string, string], to: [string, string]): void => {
    schedule.goTo(...from);
    schedule.goTo(...to, true);
  };

  it('fills down as one step of undo', () => {
    mark([wire('12').id, 'colour'], [wire('13').id, 'colour']);
    schedule.key({ key: 'd', command: true });
    expect(wire('13').found.colour).toBe('red');
    expect(said.at(-1)).toBe('fill down: 1 wire changed');
    expect(documents.undo()).toBe('fill down');
    expect(wire('13').found.colour).toBe('blue');
  });

  it('takes many rows of a spreadsheet, with headings, and adds what is not there', () => {
    preferences.setColumnSet('found');
    schedule.goTo(newRow, 'from');
    schedule.cells.paste('From\tTo\tColor\tNotes\nV1-2\tTS1-1\tgreen\tbrittle\nV2-3\t?\twhite\t\n');
    expect(numbers()).toEqual(['12', '13', '14', '15']);
    expect(cell('14', 'from')).toBe('V1-2');
    expect(wire('14').found.colour).toBe('green');
    expect(wire('14').notes).toBe('brittle');
    expect(wire('15').to.at).toBeUndefined();
    expect(documents.undo()).toBe('paste');
    expect(numbers()).toEqual(['12', '13']);
  });

  it('keeps what could not be read in its cell, with why, and takes the rest', () => {
    schedule.goTo(wire('12').id, 'carries');
    schedule.cells.paste('lots\n6.3 V ac');
    expect(schedule.badCell(wire('12').id, 'carries')?.text).toBe('lots');
    expect(wire('12').carries.dcV).toBe(285);
    expect(wire('13').carries.acV).toBe(6.3);
    expect(said.at(-1)).toMatch(/1 wire changed, 1 cell not taken/);
    schedule.cells.paste('300 V dc');
    expect(schedule.badCell(wire('12').id, 'carries')).toBeNull();
  });

  it('copies what is shown for others and what is written for itself', () => {
    mark([wire('12').id, 'from'], [wire('13').id, 'needs']);
    const { shown, written } = schedule.cells.copy()!;
    expect(shown.split('\n')[0]).toMatch(/^V1-1\tTS1-2\tred\t285 V dc\t/);
    expect(JSON.parse(written)).toEqual([
      ['V1-1', 'TS1-2', 'red', '285 V dc', ''],
      ['V1-6', 'TS1-4', 'blue', '', '']
    ]);
  });

  it('empties and deletes marked cells and rows, each as one step', () => {
    mark([wire('12').id, 'number'], [wire('13').id, 'colour']);
    schedule.key({ key: 'Delete' });
    expect(numbers()).toEqual(['12', '13']);
    expect([wire('12').from.at, wire('13').found.colour]).toEqual([undefined, undefined]);
    documents.undo();
    schedule.key({ key: 'Delete', command: true });
    expect(numbers()).toEqual([]);
    expect(said.at(-1)).toBe('2 wires deleted; undo brings them back');
    documents.undo();
    expect(numbers()).toEqual(['12', '13']);
  });

  it('holds rows still while they are edited, until they are sorted again', () => {
    schedule.order.sortBy('colour');
    const order = (): string[] =>
      schedule.order.rows.map(({ id }) => documents.document.wires[id]!.number);
    expect(order()).toEqual(['13', '12']);
    type(wire('13').id, 'colour', 'violet');
    expect(order()).toEqual(['13', '12']);
    schedule.order.arrange({});
    expect(order()).toEqual(['12', '13']);
  });

  it('finds and replaces, read again as if it had been typed', () => {
    schedule.find.ask();
    schedule.find.text = 'red';
    schedule.find.replacement = 'yellow';
    schedule.goToFind(1);
    expect(schedule.cursor).toMatchObject({ row: wire('12').id, column: 'colour' });
    schedule.replace(schedule.find.finds.cells);
    expect(wire('12').found.colour).toBe('yellow');
    expect(schedule.find.finds.cells).toEqual([]);
  });
});
