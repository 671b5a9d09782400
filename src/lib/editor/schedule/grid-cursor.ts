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
}

export interface GridKey {
  readonly key: string;
  readonly shift?: boolean;
  readonly command?: boolean;
}

export type GridEffect = 'none' | 'commit' | 'cancel' | 'clear' | 'remove-row';

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
    return column === cursor.column ? cursor : { ...cursor, column };
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
  switch (key.key) {
    case 'ArrowDown':
      return step(moved(cursor, shape, 1, 0));
    case 'ArrowUp':
      return step(moved(cursor, shape, -1, 0));
    case 'ArrowRight':
      return step(moved(cursor, shape, 0, 1));
    case 'ArrowLeft':
      return step(moved(cursor, shape, 0, -1));
    case 'PageDown':
      return step(moved(cursor, shape, pageRows, 0));
    case 'PageUp':
      return step(moved(cursor, shape, -pageRows, 0));
    case 'Home':
      return step(moved(cursor, shape, key.command === true ? -rows : 0, -columns));
    case 'End':
      return step(moved(cursor, shape, key.command === true ? rows : 0, columns));
    case 'Enter':
    case 'F2':
      return editable
        ? step({ ...cursor, editing: { start: 'text', typed: '' } })
        : { cursor, effect: 'none', handled: false };
    case 'Delete':
    case 'Backspace':
      if (key.command === true) return step(cursor, 'remove-row');
      return editable ? step(cursor, 'clear') : { cursor, effect: 'none', handled: false };
    default:
      return editable && isPrintable(key)
        ? step({ ...cursor, editing: { start: 'typed', typed: key.key } })
        : { cursor, effect: 'none', handled: false };
  }
};
