// Finding in the schedule: words in cells, and "over 1 kV" for what a wire must stand. Replacing makes new
// texts for the cells in which the words stand; they are read as if they had been typed.
import { parseQuantity } from '#quantity/index.ts';
import type { ColumnId } from './columns.ts';

export interface FoundCell {
  readonly row: string;
  readonly column: ColumnId;
}

/** A row as it is searched. */
export interface SearchedRow {
  readonly id: string;
  readonly cells: readonly { readonly column: ColumnId; readonly text: string }[];
  /** V peak that its insulation must stand; null where that is not known. */
  readonly stressV: number | null;
  readonly halfTraced: boolean;
}

export interface FindWhat {
  readonly text: string;
  /** Where to look; null looks in all columns that are shown. */
  readonly column: ColumnId | null;
}

type Test = (row: SearchedRow) => boolean;

// "over 1 kV" leaves out what is not known: it may be over it, and says so beside the count.
const testOf = (text: string): Test | string | null => {
  const bound = /^(over|above|under|below)\s+(.+)$/i.exec(text);
  if (bound?.[1] !== undefined && bound[2] !== undefined) {
    const parsed = parseQuantity(bound[2], 'voltage');
    if (!parsed.ok) return parsed.problem;
    const isOver = /^(over|above)$/i.test(bound[1]);
    return ({ stressV }) =>
      stressV !== null && (isOver ? stressV > parsed.value : stressV < parsed.value);
  }
  if (/^half[- ]traced$/i.test(text)) return ({ halfTraced }) => halfTraced;
  return null;
};

export interface Finds {
  readonly cells: readonly FoundCell[];
  /** Rows whose stress is not known, where the search was for volts; else 0. */
  readonly notKnown: number;
  /** Why the search could not be understood, or null. */
  readonly problem: string | null;
}

const none: Finds = { cells: [], notKnown: 0, problem: null };

/** The cells in which the words stand, row by row. A search for volts finds the cells of "needs". */
export const findCells = (rows: readonly SearchedRow[], { text, column }: FindWhat): Finds => {
  const wanted = text.trim().toLowerCase();
  if (wanted === '') return none;
  const test = testOf(wanted);
  if (typeof test === 'string') return { ...none, problem: test };
  if (test !== null) {
    const isVolts = !wanted.startsWith('half');
    return {
      cells: rows.filter(test).map(({ id }) => ({ row: id, column: isVolts ? 'needs' : 'from' })),
      notKnown: isVolts ? rows.filter(({ stressV }) => stressV === null).length : 0,
      problem: null
    };
  }
  const cells = rows.flatMap(({ id, cells: all }) =>
    all
      .filter((cell) => column === null || cell.column === column)
      .filter((cell) => cell.text.toLowerCase().includes(wanted))
      .map((cell) => ({ row: id, column: cell.column }))
  );
  return { ...none, cells };
};

/** The rows in which something was found. */
export const rowsOf = ({ cells }: Finds): ReadonlySet<string> =>
  new Set(cells.map(({ row }) => row));

/** The cells found, each as "row column". */
export const keysOf = ({ cells }: Finds): ReadonlySet<string> =>
  new Set(cells.map(({ row, column }) => `${row} ${column}`));

const special = /[$()*+.?[\\\]^{|}]/g;

/** The text with each occurrence of `what` replaced, whatever its case; null where there is none. */
export const replacedIn = (text: string, what: string, by: string): string | null => {
  const words = what.trim();
  if (words === '') return null;
  const replaced = text.replace(new RegExp(words.replaceAll(special, '\\$&'), 'gi'), () => by);
  return replaced === text ? null : replaced;
};
