import { describe, expect, it } from 'vitest';
import {
  settleCursor,
  stepGrid,
  type GridCursor,
  type GridShape
} from '#editor/schedule/grid-cursor.ts';

const shape: GridShape = {
  rows: ['w1', 'w2', 'w3', 'new'],
  columns: ['number', 'from', 'needs'],
  isEditable: (_row, column) => column !== 'needs'
};

/** "w2.from" is a cell at rest, "w2.from|" one whose field is open. */
const cursor = (text: string): GridCursor => {
  const [row = '', column = ''] = text.replace('|', '').split('.');
  return { row, column, editing: text.endsWith('|') ? { start: 'text', typed: '' } : null };
};

const press = (start: string, key: string, more: { shift?: true; command?: true } = {}): string => {
  const step = stepGrid(cursor(start), { key, ...more }, shape);
  const { row, column, editing } = step.cursor;
  const field = editing === null ? '' : `|${editing.typed}`;
  const effect = step.effect === 'none' ? '' : ` ${step.effect}`;
  return `${row}.${column}${field}${effect}${step.handled ? '' : ' (not ours)'}`;
};

describe('the keys of the schedule', () => {
  it.each([
    ['w1.from', 'ArrowDown', 'w2.from'],
    ['w1.from', 'ArrowUp', 'w1.from'],
    ['new.from', 'ArrowDown', 'new.from'],
    ['w1.number', 'ArrowLeft', 'w1.number'],
    ['w1.number', 'ArrowRight', 'w1.from'],
    ['w2.needs', 'Home', 'w2.number'],
    ['w2.number', 'End', 'w2.needs'],
    ['w3.from', 'PageUp', 'w1.from'],
    ['w1.from', 'Enter', 'w1.from|'],
    ['w1.from', 'F2', 'w1.from|'],
    ['w1.from', 'v', 'w1.from|v'],
    ['w1.from', 'Delete', 'w1.from clear'],
    ['w1.from|', 'Enter', 'w2.from commit'],
    ['w1.from|', 'ArrowDown', 'w2.from commit'],
    ['w2.from|', 'ArrowUp', 'w1.from commit'],
    ['w1.from|', 'Tab', 'w1.needs commit'],
    ['w1.from|', 'Escape', 'w1.from cancel'],
    ['w1.from|', 'ArrowLeft', 'w1.from| (not ours)'],
    ['w1.from|', 'v', 'w1.from| (not ours)']
  ])('%s, %s: %s', (start, key, end) => {
    expect(press(start, key)).toBe(end);
  });

  it('opens no field in a cell that is not typed into', () => {
    expect(press('w1.needs', 'Enter')).toBe('w1.needs (not ours)');
    expect(press('w1.needs', 'x')).toBe('w1.needs (not ours)');
    expect(press('w1.needs', 'Delete')).toBe('w1.needs (not ours)');
  });

  it('leaves Tab at rest to the page, so that the grid is no trap', () => {
    expect(press('w1.from', 'Tab')).toBe('w1.from (not ours)');
  });

  it('goes on in the next row from the last column, and back', () => {
    const wide = { ...shape, isEditable: () => true };
    const next = stepGrid(cursor('w1.needs|'), { key: 'Tab' }, wide);
    expect(next.cursor).toEqual({ row: 'w2', column: 'number', editing: null });
    const back = stepGrid(cursor('w2.number|'), { key: 'Tab', shift: true }, wide);
    expect(back.cursor).toEqual({ row: 'w1', column: 'needs', editing: null });
  });

  it('takes command keys as such and never as letters', () => {
    expect(press('w1.from', 'z', { command: true })).toBe('w1.from (not ours)');
    expect(press('w1.from', 'Delete', { command: true })).toBe('w1.from remove-rows');
    expect(press('w3.needs', 'Home', { command: true })).toBe('w1.number');
    expect(press('w1.number', 'End', { command: true })).toBe('new.needs');
  });

  it('settles on the neighbour of a row that went away', () => {
    const fewer = { ...shape, rows: ['w1', 'w3', 'new'] };
    expect(settleCursor(cursor('w2.from'), fewer, shape.rows).row).toBe('w3');
    const same = cursor('w1.from');
    expect(settleCursor(same, shape)).toBe(same);
    expect(settleCursor(cursor('w1.notes'), shape).column).toBe('number');
  });
});

describe('a block of cells by key', () => {
  const walk = (start: GridCursor, ...keys: string[]): GridCursor =>
    keys.reduce((at, key) => {
      const [shift, name] = key.startsWith('+') ? [true, key.slice(1)] : [false, key];
      return stepGrid(at, { key: name, shift }, shape).cursor;
    }, start);

  it('grows with Shift from where it began, and is one cell again back there', () => {
    const grown = walk(cursor('w1.number'), '+ArrowDown', '+ArrowRight');
    expect(grown).toMatchObject({
      row: 'w2',
      column: 'from',
      anchor: { row: 'w1', column: 'number' }
    });
    expect(walk(grown, '+ArrowUp', '+ArrowLeft').anchor).toBeUndefined();
  });

  it('ends with a plain move, with Escape and when a field opens', () => {
    const grown = walk(cursor('w1.number'), '+ArrowDown');
    for (const key of ['ArrowDown', 'Escape', 'Enter']) {
      expect(walk(grown, key).anchor).toBeUndefined();
    }
  });

  it('takes all wires with Ctrl+A, without the row that adds one', () => {
    const { cursor: all } = stepGrid(cursor('w2.from'), { key: 'a', command: true }, shape);
    expect(all).toMatchObject({
      row: 'w3',
      column: 'needs',
      anchor: { row: 'w1', column: 'number' }
    });
  });

  it('is given up where a cell of it is gone', () => {
    const grown = walk(cursor('w1.number'), '+ArrowDown');
    const { anchor } = settleCursor(grown, { ...shape, rows: ['w2', 'w3', 'new'] });
    expect(anchor).toBeUndefined();
  });
});
