// Writes static/demonstrations from test/demonstrations, where the two sets are described.
// Run it after they change: node .config/write-demonstrations.mjs
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const top = fileURLToPath(new URL('..', import.meta.url));
const { module } = await runnerImport(`${top}test/demonstrations/files.ts`, {
  root: top,
  configFile: false
});
mkdirSync(`${top}static/demonstrations`, { recursive: true });
for (const [name, text] of module.buildDemonstrationFiles()) {
  writeFileSync(`${top}static/demonstrations/${name}`, text);
  console.log(`static/demonstrations/${name}: ${text.length} characters`);
}
