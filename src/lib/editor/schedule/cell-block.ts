// A block of cells, and what is done with one as a whole: copied, filled down, pasted into. Plain lists
// of texts come out; what the texts mean is read elsewhere.
import type { GridCursor, GridShape } from './grid-cursor.ts';

export interface CellBlock {
  /** Row ids from top to bottom, without the row that adds a wire unless it is the only one. */
  readonly rows: readonly string[];
  readonly columns: readonly string[];
}

/** A text for a cell. A row that is a number is the nth of the wires to be added, from 0. */
export interface CellWrite {
  readonly row: string | number;
  readonly column: string;
  readonly text: string;
}

/** Whether a text can be put into a cell. */
export type Takes = (row: string, column: string) => boolean;

const between = (list: readonly string[], a: string, b: string): readonly string[] => {
  const [from, to] = [list.indexOf(a), list.indexOf(b)].sort((x, y) => x - y);
  return from === undefined || to === undefined || from < 0 ? [] : list.slice(from, to + 1);
};

/** The cells between the cursor and where its block began. */
export const blockOf = ({ row, column, anchor }: GridCursor, shape: GridShape): CellBlock => {
  const rows = between(shape.rows, anchor?.row ?? row, row);
  const adding = shape.rows.at(-1);
  return {
    rows: rows.length > 1 ? rows.filter((id) => id !== adding) : rows,
    columns: between(shape.columns, anchor?.column ?? column, column)
  };
};

/** True where the block is more than one cell. */
export const isMany = ({ rows, columns }: CellBlock): boolean => rows.length * columns.length > 1;

// "12" is followed by "13", "60b" by "61b": two wires never get one number by a fill.
const counted = (text: string, by: number): string =>
  text.replace(/\d{1,9}/, (digits) => String(Number(digits) + by).padStart(digits.length, '0'));

/** The first row of the block written into the rest of it; of a single row, the row above into it. */
export const fillDown = (
  block: CellBlock,
  shape: GridShape,
  takes: Takes,
  textOf: (row: string, column: string) => string
): readonly CellWrite[] => {
  const [first] = block.rows;
  if (first === undefined) return [];
  const isOne = block.rows.length === 1;
  const source = isOne ? shape.rows[shape.rows.indexOf(first) - 1] : first;
  if (source === undefined) return [];
  const targets = isOne ? block.rows : block.rows.slice(1);
  return targets.flatMap((row, index) =>
    block.columns
      .filter((column) => takes(row, column))
      .map((column) => {
        const text = textOf(source, column);
        return { row, column, text: column === 'number' ? counted(text, index + 1) : text };
      })
  );
};

export interface PastePlan {
  readonly writes: readonly CellWrite[];
  /** How many wires have to be added for it. */
  readonly added: number;
  /** Filled cells that found no place: past the last column, or where nothing is typed into. */
  readonly leftOut: number;
}

/** Where pasted cells go. One cell fills a whole block; a heading row says which column is which;
 *  else the cells lie right and down from the block's first, and what passes the last wire is added.
 *  @param takes asked with an empty row for wires that are to be added
 *  @param columnOf the column that a heading names, or null */
export const planPaste = (
  cells: readonly (readonly string[])[],
  block: CellBlock,
  shape: GridShape,
  takes: Takes,
  columnOf: (heading: string) => string | null
): PastePlan => {
  const single = cells.length === 1 && cells[0]?.length === 1 ? cells[0][0] : undefined;
  if (single !== undefined && isMany(block)) return spread(single, block, takes);
  const headings = cells.length > 1 ? cells[0]?.map((text) => columnOf(text)) : undefined;
  const hasHeadings =
    headings !== undefined && headings.length > 1 && headings.every((id) => id !== null);
  const [firstColumn = ''] = block.columns;
  const columns = hasHeadings
    ? headings
    : shape.columns.slice(Math.max(0, shape.columns.indexOf(firstColumn)));
  const start = shape.rows.indexOf(block.rows[0] ?? '');
  const wires = shape.rows.length - 1;
  const writes: CellWrite[] = [];
  let [added, leftOut] = [0, 0];
  (hasHeadings ? cells.slice(1) : cells).forEach((line, index) => {
    const at = start + index;
    const row = at < wires ? (shape.rows[at] ?? '') : added;
    const before = writes.length;
    line.forEach((text, column) => {
      const id = columns[column];
      const isTaken = typeof id === 'string' && takes(typeof row === 'string' ? row : '', id);
      if (isTaken && (typeof row === 'string' || text !== ''))
        writes.push({ row, column: id, text });
      else if (text.trim() !== '') leftOut += 1;
    });
    if (typeof row === 'number' && writes.length > before) added += 1;
  });
  return { writes, added, leftOut };
};

const spread = (text: string, block: CellBlock, takes: Takes): PastePlan => {
  const places = block.rows.flatMap((row) => block.columns.map((column) => ({ row, column })));
  const taken = places.filter(({ row, column }) => takes(row, column));
  return {
    writes: taken.map((place) => ({ ...place, text })),
    added: 0,
    leftOut: places.length - taken.length
  };
};

/** Cells as this program put them on the clipboard, or null where the text is none of ours. */
export const readOwnCells = (text: string): readonly (readonly string[])[] | null => {
  if (text === '') return null;
  try {
    const cells: unknown = JSON.parse(text);
    const isCells =
      Array.isArray(cells) &&
      cells.every((line) => Array.isArray(line) && line.every((cell) => typeof cell === 'string'));
    return isCells ? (cells as string[][]) : null;
  } catch {
    return null;
  }
};
