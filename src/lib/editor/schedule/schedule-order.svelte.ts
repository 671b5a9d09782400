// How the schedule is arranged just now: sorted, grouped, only what was found. A view of the document,
// never a part of it.
import {
  asNumbered,
  entriesOf,
  holdRows,
  keepArranged,
  type Arrangement,
  type Entry,
  type Held,
  type SortKey
} from './arrange-rows.ts';
import type { RowView } from './build-rows.ts';
import { columnOf, type ColumnId, type RowSource } from './columns.ts';

interface Source {
  readonly rows: readonly RowView[];
  /** What the cells of a row are made from; null where it is gone. */
  readonly sourceOf: (row: string) => RowSource | null;
}

export type ScheduleEntry = Entry<RowView>;

export class ScheduleOrder {
  #arrangement = $state.raw<Arrangement>(asNumbered);
  #held = $state.raw<Held | null>(null);
  readonly #source: () => Source;

  /** The rows in the order in which they stand. */
  readonly rows = $derived.by((): readonly RowView[] => {
    const { rows } = this.#source();
    return this.#held === null ? rows : keepArranged(this.#held, rows);
  });
  readonly entries = $derived.by(() => entriesOf(this.rows, this.#held));

  constructor(source: () => Source) {
    this.#source = source;
  }

  get arrangement(): Arrangement {
    return this.#arrangement;
  }

  /** Arranges the rows as they are now. */
  arrange(change: Partial<Arrangement>): void {
    this.#arrangement = { ...this.#arrangement, ...change };
    const { sort, group, only } = this.#arrangement;
    if (sort === null && group === null && only === null) {
      this.#held = null;
      return;
    }
    const ids = this.#source().rows.map(({ id }) => id);
    this.#held = holdRows(ids, this.#arrangement, this.#keyOf, (id, column) =>
      this.#textOf(id, column)
    );
  }

  /** A press on a heading: sorted up, then down, then as numbered again. */
  sortBy(column: ColumnId): void {
    const { sort } = this.#arrangement;
    if (sort?.column !== column) this.arrange({ sort: { column, down: false } });
    else this.arrange({ sort: sort.down ? null : { column, down: true } });
  }

  reset(): void {
    this.#arrangement = asNumbered;
    this.#held = null;
  }

  #textOf(row: string, column: ColumnId): string {
    const source = this.#source().sourceOf(row);
    return source === null ? '' : columnOf(column).show(source);
  }

  readonly #keyOf = (row: string, column: ColumnId): SortKey => {
    const source = this.#source().sourceOf(row);
    if (source === null) return null;
    const { sortBy } = columnOf(column);
    if (sortBy !== undefined) return sortBy(source);
    return columnOf(column).show(source).trim() || null;
  };
}
