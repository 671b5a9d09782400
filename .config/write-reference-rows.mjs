// Writes the rows that the page "How we know" shows from test/reference, where they are kept.
// Run it after they change: node .config/write-reference-rows.mjs
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const top = fileURLToPath(new URL('..', import.meta.url));
const { module } = await runnerImport(`${top}test/reference/page-data.ts`, {
  root: top,
  configFile: false
});
writeFileSync(
  `${top}src/lib/editor/bench/proof/reference-rows.json`,
  module.buildReferencePageData()
);
