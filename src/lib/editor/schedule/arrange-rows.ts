// The order in which the schedule's rows stand: sorted, grouped, or only some of them. It is worked out
// when it is asked for and then holds still, so that no row runs away from under the hand that types in it.
import type { ColumnId } from './columns.ts';

export interface Sorting {
  readonly column: ColumnId;
  readonly down: boolean;
}

export interface Arrangement {
  readonly sort: Sorting | null;
  readonly group: ColumnId | null;
  /** The rows to show; null shows all. */
  readonly only: ReadonlySet<string> | null;
}

export const asNumbered: Arrangement = { sort: null, group: null, only: null };

/** Rows in their order, with the title of the group that each stands in. */
export interface Arranged {
  readonly rows: readonly string[];
  readonly groupOf: ReadonlyMap<string, string>;
}

/** What a row is sorted by: a number, a text, or null where nothing is known. */
export type SortKey = number | string | null;

const inWords = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

// What is not known comes last either way: it is neither low nor high.
const compareKeys = (a: SortKey, b: SortKey, down: boolean): number => {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
  const order =
    typeof a === 'number' && typeof b === 'number' ? a - b : inWords.compare(String(a), String(b));
  return down ? -order : order;
};

/** @param ids all rows, as numbered
 *  @param keyOf what a row is sorted by in a column
 *  @param textOf what the row shows in a column; empty texts are a group of their own */
export const arrangeRows = (
  ids: readonly string[],
  { sort, group, only }: Arrangement,
  keyOf: (row: string, column: ColumnId) => SortKey,
  textOf: (row: string, column: ColumnId) => string
): Arranged => {
  const shown = only === null ? [...ids] : ids.filter((id) => only.has(id));
  // Sorting is stable: equals keep the order of their numbers.
  if (sort !== null) sortBy(shown, sort, keyOf);
  if (group === null) return { rows: shown, groupOf: new Map() };
  const groups = new Map<string, string[]>();
  const firstKey = new Map<string, SortKey>();
  for (const id of shown) {
    const title = textOf(id, group).trim() || 'nothing written';
    const members = groups.get(title);
    if (members === undefined) {
      groups.set(title, [id]);
      firstKey.set(title, keyOf(id, group));
    } else {
      members.push(id);
    }
  }
  const titles = [...groups.keys()].sort((a, b) =>
    compareKeys(firstKey.get(a) ?? null, firstKey.get(b) ?? null, false)
  );
  return {
    rows: titles.flatMap((title) => groups.get(title) ?? []),
    groupOf: new Map(titles.flatMap((title) => (groups.get(title) ?? []).map((id) => [id, title])))
  };
};

const sortBy = (
  ids: string[],
  { column, down }: Sorting,
  keyOf: (row: string, column: ColumnId) => SortKey
): void => {
  const keys = new Map(ids.map((id) => [id, keyOf(id, column)]));
  ids.sort((a, b) => compareKeys(keys.get(a) ?? null, keys.get(b) ?? null, down));
};

/** Rows as they were arranged, and which rows there were then. */
export interface Held extends Arranged {
  readonly known: ReadonlySet<string>;
}

/** The rows arranged, with what there was when they were. */
export const holdRows = (...asked: Parameters<typeof arrangeRows>): Held => ({
  ...arrangeRows(...asked),
  known: new Set(asked[0])
});

/** The rows after some came or went: what is gone is left out, what is new stands at the end. */
export const keepArranged = <T extends { readonly id: string }>(
  held: Held,
  rows: readonly T[]
): readonly T[] => {
  const byId = new Map(rows.map((row) => [row.id, row]));
  const added = rows.filter(({ id }) => !held.known.has(id));
  return [...held.rows.flatMap((id) => byId.get(id) ?? []), ...added];
};

/** A row of the page: a wire, or the title over a group. */
export type Entry<T> =
  | { readonly kind: 'wire'; readonly id: string; readonly row: T }
  | { readonly kind: 'group'; readonly id: string; readonly title: string; readonly count: number };

/** The rows with a title over each group; those that came since stand under one of their own. */
export const entriesOf = <T extends { readonly id: string }>(
  rows: readonly T[],
  held: Held | null
): readonly Entry<T>[] => {
  const wires = rows.map((row) => ({ kind: 'wire', id: row.id, row }) as const);
  const groupOf = held?.groupOf;
  if (groupOf === undefined || groupOf.size === 0) return wires;
  const titleOf = (id: string): string => groupOf.get(id) ?? 'added since';
  const counts = new Map<string, number>();
  for (const { id } of wires) counts.set(titleOf(id), (counts.get(titleOf(id)) ?? 0) + 1);
  return wires.flatMap((wire, index): Entry<T>[] => {
    const title = titleOf(wire.id);
    const before = wires[index - 1];
    if (before !== undefined && titleOf(before.id) === title) return [wire];
    return [{ kind: 'group', id: `group ${title}`, title, count: counts.get(title) ?? 0 }, wire];
  });
};
