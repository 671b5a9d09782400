// Runs the command line: builds it first when a source is newer than the last build, and the
// editor too when it is to be served. The build's own words never reach stdout, which belongs
// to the results.
import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const top = dirname(dirname(fileURLToPath(import.meta.url)));

const newest = (place) => {
  const stat = statSync(place);
  return stat.isDirectory()
    ? readdirSync(place).reduce((latest, name) => Math.max(latest, newest(join(place, name))), 0)
    : stat.mtimeMs;
};
const isStale = (built, sources) =>
  !existsSync(built) ||
  statSync(built).mtimeMs < Math.max(...sources.map((name) => newest(join(top, name))));

const program = join(top, 'build/cli/underchassis.js');
if (isStale(program, ['src/lib', 'src/cli', 'package.json', '.config/bundle.mjs'])) {
  const { bundle } = await import('./bundle.mjs');
  await bundle(top, 'src/cli/main.ts', 'build/cli', 'underchassis.js');
}
if (process.argv[2] === 'serve') {
  const page = join(top, 'build/site/index.html');
  if (isStale(page, ['src', 'static', 'package.json', 'svelte.config.js', 'vite.config.ts'])) {
    process.stderr.write('Building the editor, once …\n');
    const { build } = await import('vite');
    await build({ root: top, logLevel: 'error' });
  }
}
process.env.UNDERCHASSIS_HOME ??= top;
await import(pathToFileURL(program).href);
