// The reference rows and the titles of their sources, from the copy that is made of test/reference.
import { toReferenceRow, type ReferenceRow } from '#physics/reference/reference-row.ts';
import data from './reference-rows.json';

const columns: readonly string[] = data.columns;

export const referenceRows: readonly ReferenceRow[] = data.rows.map((cells) =>
  toReferenceRow(Object.fromEntries(columns.map((column, at) => [column, cells[at] ?? ''])))
);

const titles: ReadonlyMap<string, string> = new Map(
  data.sources.map(([key = '', title = '']) => [key, title])
);

/** The title of a source; its key where it has none. */
export const sourceTitle = (key: string): string => titles.get(key) ?? key;
