// The schedule's keyboard as a plain state machine: which cell is active, whether it is being
// edited, and what a key does about it. The components only carry keys in and effects out.

export interface GridShape {
  /** Row ids from top to bottom; the last is the row that adds a wire. */
  readonly rows: readonly string[];
  readonly columns: readonly string[];
  readonly isEditable: (row: string, column: string) => boolean;
}

export interface GridCursor {
  readonly row: string;
  readonly column: string;
  /** `start` is what the field holds when it opens: the cell's text, or the letter just typed. */
  readonly editing: { readonly start: 'text' | 'typed'; readonly typed: string } | null;
  /** The cell where a block of several began; absent where the cursor's cell is alone. */
  readonly anchor?: { readonly row: string; readonly column: string };
}

export interface GridKey {
  readonly key: string;
  readonly shift?: boolean;
  readonly command?: boolean;
}

export type GridEffect = 'none' | 'commit' | 'cancel' | 'clear' | 'fill-down' | 'remove-rows';

export interface GridStep {
  readonly cursor: GridCursor;
  readonly effect: GridEffect;
  /** False: the key is none of the grid's business and goes where keys go. */
  readonly handled: boolean;
}

const pageRows = 12;

/** The cursor on a cell that exists: one that went away falls back to its nearest neighbour. */
export const settleCursor = (
  cursor: GridCursor,
  shape: GridShape,
  before: readonly string[] = shape.rows
): GridCursor => {
  const column = shape.columns.includes(cursor.column) ? cursor.column : (shape.columns[0] ?? '');
  if (shape.rows.includes(cursor.row)) {
    const { anchor } = cursor;
    const isWhole =
      anchor === undefined ||
      (shape.rows.includes(anchor.row) && shape.columns.includes(anchor.column));
    if (column === cursor.column && isWhole) return cursor;
    const { row, editing } = cursor;
    return { row, column, editing };
  }
  const index = Math.min(Math.max(0, before.indexOf(cursor.row)), shape.rows.length - 1);
  return { row: shape.rows[index] ?? '', column, editing: null };
};

const moved = (cursor: GridCursor, shape: GridShape, down: number, right: number): GridCursor => {
  const row = shape.rows.indexOf(cursor.row) + down;
  const column = shape.columns.indexOf(cursor.column) + right;
  return {
    row: shape.rows[Math.min(Math.max(0, row), shape.rows.length - 1)] ?? cursor.row,
    column: shape.columns[Math.min(Math.max(0, column), shape.columns.length - 1)] ?? cursor.column,
    editing: null
  };
};

/** The cursor on another cell, with the block from where it was held to there. */
export const extendedTo = (cursor: GridCursor, row: string, column: string): GridCursor => {
  const anchor = cursor.anchor ?? { row: cursor.row, column: cursor.column };
  return anchor.row === row && anchor.column === column
    ? { row, column, editing: null }
    : { row, column, editing: null, anchor };
};

// Tab from the last column goes on to the next row, as a person fills in a form.
const movedByTab = (cursor: GridCursor, shape: GridShape, back: boolean): GridCursor => {
  const column = shape.columns.indexOf(cursor.column);
  const last = shape.columns.length - 1;
  if (!back && column === last && cursor.row !== shape.rows.at(-1)) {
    return { ...moved(cursor, shape, 1, 0), column: shape.columns[0] ?? cursor.column };
  }
  if (back && column === 0 && cursor.row !== shape.rows[0]) {
    return { ...moved(cursor, shape, -1, 0), column: shape.columns[last] ?? cursor.column };
  }
  return moved(cursor, shape, 0, back ? -1 : 1);
};

const isPrintable = (key: GridKey): boolean =>
  key.command !== true && [...key.key].length === 1 && key.key !== ' ';

/** What a key does in the grid. */
export const stepGrid = (cursor: GridCursor, key: GridKey, shape: GridShape): GridStep => {
  const step = (next: GridCursor, effect: GridEffect = 'none'): GridStep => ({
    cursor: next,
    effect,
    handled: true
  });
  return cursor.editing === null
    ? restingKey(cursor, key, shape, step)
    : editingKey(cursor, key, shape, step);
};

const opened = (
  { row, column }: GridCursor,
  editing: NonNullable<GridCursor['editing']>
): GridCursor => ({ row, column, editing });

// The row that adds a wire is never part of a block that is taken whole.
const wholeGrid = (shape: GridShape): GridCursor | null => {
  const [row, last] = [shape.rows[0], shape.rows.at(-2)];
  const [column, lastColumn] = [shape.columns[0], shape.columns.at(-1)];
  if (row === undefined || last === undefined) return null;
  if (column === undefined || lastColumn === undefined) return null;
  return { row: last, column: lastColumn, editing: null, anchor: { row, column } };
};

const commandKey = (
  cursor: GridCursor,
  key: GridKey,
  shape: GridShape,
  step: MakeStep
): GridStep => {
  const all = key.key === 'a' ? wholeGrid(shape) : null;
  if (all !== null) return step(all);
  if (key.key === 'd') return step(cursor, 'fill-down');
  return { cursor, effect: 'none', handled: false };
};

type MakeStep = (cursor: GridCursor, effect?: GridEffect) => GridStep;

const editingKey = (
  cursor: GridCursor,
  key: GridKey,
  shape: GridShape,
  step: MakeStep
): GridStep => {
  switch (key.key) {
    case 'Enter':
      return step(moved(cursor, shape, key.shift === true ? -1 : 1, 0), 'commit');
    case 'ArrowDown':
      return step(moved(cursor, shape, 1, 0), 'commit');
    case 'ArrowUp':
      return step(moved(cursor, shape, -1, 0), 'commit');
    case 'Tab':
      return step(movedByTab(cursor, shape, key.shift === true), 'commit');
    case 'Escape':
      return step({ ...cursor, editing: null }, 'cancel');
    default:
      return { cursor, effect: 'none', handled: false };
  }
};

const restingKey = (
  cursor: GridCursor,
  key: GridKey,
  shape: GridShape,
  step: MakeStep
): GridStep => {
  const rows = shape.rows.length;
  const columns = shape.columns.length;
  const editable = shape.isEditable(cursor.row, cursor.column);
  const go = (down: number, right: number): GridStep => {
    const to = moved(cursor, shape, down, right);
    return step(key.shift === true ? extendedTo(cursor, to.row, to.column) : to);
  };
  switch (key.key) {
    case 'ArrowDown':
      return go(1, 0);
    case 'ArrowUp':
      return go(-1, 0);
    case 'ArrowRight':
      return go(0, 1);
    case 'ArrowLeft':
      return go(0, -1);
    case 'PageDown':
      return go(pageRows, 0);
    case 'PageUp':
      return go(-pageRows, 0);
    case 'Home':
      return go(key.command === true ? -rows : 0, -columns);
    case 'End':
      return go(key.command === true ? rows : 0, columns);
    case 'Escape':
      return cursor.anchor === undefined
        ? { cursor, effect: 'none', handled: false }
        : step({ row: cursor.row, column: cursor.column, editing: null });
    case 'Enter':
    case 'F2':
      return editable
        ? step(opened(cursor, { start: 'text', typed: '' }))
        : { cursor, effect: 'none', handled: false };
    case 'Delete':
    case 'Backspace':
      if (key.command === true) return step(cursor, 'remove-rows');
      return editable || cursor.anchor !== undefined
        ? step(cursor, 'clear')
        : { cursor, effect: 'none', handled: false };
    default:
      if (key.command === true) return commandKey(cursor, key, shape, step);
      return editable && isPrintable(key)
        ? step(opened(cursor, { start: 'typed', typed: key.key }))
        : { cursor, effect: 'none', handled: false };
  }
};
