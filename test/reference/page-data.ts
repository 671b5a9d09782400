// The rows and sources as the page "How we know" reads them: one row a line, every cell as text.
import { readReferenceSources, readReferenceTable } from './rows.ts';

/** The text of src/lib/editor/bench/proof/reference-rows.json. */
export function buildReferencePageData(): string {
  const { columns, rows } = readReferenceTable(new URL('./rows.csv', import.meta.url));
  const sources = readReferenceSources(new URL('./README.md', import.meta.url));
  const cells = rows.map((row) => columns.map((column) => row[column] ?? ''));
  const lines = (lists: readonly (readonly string[])[]): string =>
    lists.map((list) => `  ${JSON.stringify(list)}`).join(',\n');
  return `{
"columns": ${JSON.stringify(columns)},
"rows": [
${lines(cells)}
],
"sources": [
${lines(sources)}
]
}
`;
}
