// Reads the reference rows and the sources that the README beside them names.
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { toReferenceRow, type ReferenceRow } from '#physics/reference/reference-row.ts';

/** The cells of the rows, as they stand in the file. */
export interface ReferenceTable {
  readonly columns: readonly string[];
  readonly rows: readonly Readonly<Record<string, string>>[];
}

export function readReferenceTable(file: URL): ReferenceTable {
  const parsed = Papa.parse<Record<string, string>>(readFileSync(file, 'utf8'), {
    header: true,
    skipEmptyLines: true
  });
  if (parsed.errors[0]) throw new Error(`${file.pathname}: ${parsed.errors[0].message}`);
  return { columns: parsed.meta.fields ?? [], rows: parsed.data };
}

export const readReferenceRows = (file: URL): ReferenceRow[] =>
  readReferenceTable(file).rows.map(toReferenceRow);

/** Key and title of every source in the README. */
export const readReferenceSources = (file: URL): [key: string, title: string][] =>
  [...readFileSync(file, 'utf8').matchAll(/^\| `([a-z0-9-]+)` \| (.+) \|$/gm)].map(
    ([, key = '', title = '']) => [key, title.replaceAll('`', '')]
  );
