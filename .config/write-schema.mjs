// Writes static/chassis.schema.json from the schema that the program itself uses.
// Run it after the schema changes: node .config/write-schema.mjs
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const top = fileURLToPath(new URL('..', import.meta.url));
const { module } = await runnerImport(`${top}src/lib/document/json-schema.ts`, {
  root: top,
  configFile: false
});
writeFileSync(`${top}static/chassis.schema.json`, module.buildJsonSchemaText());
