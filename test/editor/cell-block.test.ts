import { describe, expect, it } from 'vitest';
import { blockOf, fillDown, planPaste, readOwnCells } from '#editor/schedule/cell-block.ts';
import { cellsToText, textToCells } from '#editor/schedule/cell-text.ts';
import type { GridCursor, GridShape } from '#editor/schedule/grid-cursor.ts';

const columns = ['number', 'from', 'colour', 'needs'];
const shape: GridShape = {
  rows: ['w1', 'w2', 'w3', 'new'],
  columns,
  isEditable: (_row, column) => column !== 'needs'
};
const takes = (row: string, column: string): boolean =>
  column !== 'needs' && (row !== 'new' || column !== 'number');

/** "w1.from-w3.colour": from where the block began to the cursor. */
const marked = (text: string): GridCursor => {
  const [start = '', end = start] = text.split('-');
  const [row = '', column = ''] = end.split('.');
  const [firstRow = '', firstColumn = ''] = start.split('.');
  return { row, column, editing: null, anchor: { row: firstRow, column: firstColumn } };
};
const block = (text: string) => blockOf(marked(text), shape);
const headings = (heading: string): string | null =>
  ({ no: 'number', from: 'from', colour: 'colour' })[heading.toLowerCase()] ?? null;

describe('a block of cells', () => {
  it.each([
    ['w1.from-w2.colour', ['w1', 'w2'], ['from', 'colour']],
    ['w3.colour-w2.number', ['w2', 'w3'], ['number', 'from', 'colour']],
    ['w2.from-w2.from', ['w2'], ['from']],
    // The row that adds a wire is left out of a larger block.
    ['w3.from-new.from', ['w3'], ['from']],
    ['new.from-new.from', ['new'], ['from']]
  ])('%s', (text, rows, across) => {
    expect(block(text)).toEqual({ rows, columns: across });
  });
});

describe('fill down', () => {
  const textOf = (row: string, column: string): string =>
    column === 'number' ? row.slice(1) : `${row} ${column}`;
  const filled = (text: string) =>
    fillDown(block(text), shape, takes, textOf).map(
      ({ row, column, text: written }) => `${row}.${column}=${written}`
    );

  it('writes the first row into the others, and leaves what is not typed into', () => {
    expect(filled('w1.colour-w3.needs')).toEqual(['w2.colour=w1 colour', 'w3.colour=w1 colour']);
  });

  it('takes the row above where one row is marked, and nothing above the first', () => {
    expect(filled('w2.from-w2.from')).toEqual(['w2.from=w1 from']);
    expect(filled('w1.from-w1.from')).toEqual([]);
  });

  it('counts numbers on, so that no two wires get one', () => {
    expect(filled('w1.number-w3.number')).toEqual(['w2.number=2', 'w3.number=3']);
  });
});

describe('paste', () => {
  const paste = (text: string, at: string) => {
    const { writes, ...plan } = planPaste(textToCells(text), block(at), shape, takes, headings);
    return {
      ...plan,
      writes: writes.map(({ row, column, text: written }) => `${row}.${column}=${written}`)
    };
  };

  it('lies right and down from the cursor, and adds wires past the last', () => {
    expect(paste('V1-1\tred\nV2-3\tblue\n', 'w3.from-w3.from')).toEqual({
      writes: ['w3.from=V1-1', 'w3.colour=red', '0.from=V2-3', '0.colour=blue'],
      added: 1,
      leftOut: 0
    });
  });

  it('adds wires from the last row on', () => {
    expect(paste('V1-1\nV2-3', 'new.from-new.from').writes).toEqual(['0.from=V1-1', '1.from=V2-3']);
  });

  it('goes by a heading row, in whatever order its columns are', () => {
    expect(paste('Colour\tFrom\nred\tV1-1', 'w2.number-w2.number').writes).toEqual([
      'w2.colour=red',
      'w2.from=V1-1'
    ]);
  });

  it('fills a whole block with one cell', () => {
    expect(paste('red', 'w1.colour-w3.needs')).toEqual({
      writes: ['w1.colour=red', 'w2.colour=red', 'w3.colour=red'],
      added: 0,
      leftOut: 3
    });
  });

  it('counts what found no place, and adds no wire for empty cells', () => {
    expect(paste('red\t600 V\tover', 'w1.colour-w1.colour')).toMatchObject({ leftOut: 2 });
    expect(paste('\t\n\t', 'new.from-new.from')).toMatchObject({ added: 0, writes: [] });
  });
});

describe('cells as text', () => {
  it('survives tabs, line ends and quotes', () => {
    const cells = [
      ['a\tb', 'c"d'],
      ['e\nf', 'g']
    ];
    expect(textToCells(cellsToText(cells))).toEqual(cells);
  });

  // CSV injection: a cell that begins with =, +, - or @ is run by a spreadsheet (OWASP, "CSV Injection").
  it('neutralises what a spreadsheet would run', () => {
    expect(textToCells(cellsToText([['=1+1', '@SUM(A1)']]))).toEqual([["'=1+1", "'@SUM(A1)"]]);
  });

  it('knows its own cells on the clipboard and refuses anything else', () => {
    expect(readOwnCells('[["a"],["b"]]')).toEqual([['a'], ['b']]);
    for (const text of ['', '{}', '[1]', '[[1]]', 'x']) expect(readOwnCells(text)).toBeNull();
  });
});
