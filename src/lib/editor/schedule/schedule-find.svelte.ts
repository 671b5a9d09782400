// Find and replace at work: what is looked for, where it stands, which of them is the one now.
import type { CellWrite } from './cell-block.ts';
import type { ColumnId } from './columns.ts';
import {
  findCells,
  keysOf,
  replacedIn,
  rowsOf,
  type FoundCell,
  type SearchedRow
} from './find-cells.ts';

interface Source {
  readonly rows: readonly SearchedRow[];
  /** What a cell holds while it is edited; null where it is not typed into. */
  readonly textToEdit: (row: string, column: ColumnId) => string | null;
}

export class ScheduleFind {
  isOpen = $state(false);
  /** How often the find was asked for: each time its field takes the focus. */
  asked = $state(0);
  text = $state('');
  replacement = $state('');
  column = $state<ColumnId | null>(null);
  readonly #source: () => Source;

  readonly finds = $derived.by(() =>
    this.isOpen
      ? findCells(this.#source().rows, { text: this.text, column: this.column })
      : { cells: [], notKnown: 0, problem: null }
  );
  readonly rows = $derived.by(() => rowsOf(this.finds));
  /** The cells found, each as "row column". */
  readonly keys = $derived.by(() => keysOf(this.finds));

  constructor(source: () => Source) {
    this.#source = source;
  }

  /** Opens the find; where it is open, its field is asked for again. */
  ask(): void {
    this.isOpen = true;
    this.asked += 1;
  }

  /** The find after the cell, or before it; past the last it begins again. */
  from(row: string, column: string, by: 1 | -1): FoundCell | null {
    const { cells } = this.finds;
    const order = this.#source().rows;
    const placeOf = (cell: { row: string; column: string }): number => {
      const at = order.findIndex(({ id }) => id === cell.row);
      const across = order[at]?.cells.findIndex((one) => one.column === cell.column) ?? -1;
      return at < 0 ? (by > 0 ? -1 : Infinity) : at * 1000 + across;
    };
    const here = placeOf({ row, column });
    if (by > 0) return cells.find((cell) => placeOf(cell) > here) ?? cells[0] ?? null;
    return cells.findLast((cell) => placeOf(cell) < here) ?? cells.at(-1) ?? null;
  }

  /** The number of the find that stands in a cell, from 1; 0 where none does. */
  numberOf(row: string, column: string): number {
    return this.finds.cells.findIndex((cell) => cell.row === row && cell.column === column) + 1;
  }

  /** New texts for the finds that can be typed into. */
  replacements(cells: readonly FoundCell[]): readonly CellWrite[] {
    const { textToEdit } = this.#source();
    return cells.flatMap(({ row, column }) => {
      const text = textToEdit(row, column);
      const replaced = text === null ? null : replacedIn(text, this.text, this.replacement);
      return replaced === null ? [] : [{ row, column, text: replaced }];
    });
  }
}
