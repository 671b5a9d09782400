// Runs the command line: builds it first when a source is newer than the last build. The build's
// own words never reach stdout, which belongs to the results.
import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const top = dirname(dirname(fileURLToPath(import.meta.url)));
const bundle = join(top, 'build/cli/underchassis.js');

const newest = (place) => {
  const stat = statSync(place);
  return stat.isDirectory()
    ? readdirSync(place).reduce((latest, name) => Math.max(latest, newest(join(place, name))), 0)
    : stat.mtimeMs;
};
const sources = ['src/lib', 'src/cli', 'package.json', '.config/cli-build.mjs'].map((name) =>
  join(top, name)
);

if (!existsSync(bundle) || statSync(bundle).mtimeMs < Math.max(...sources.map(newest))) {
  const { buildCli } = await import('./cli-build.mjs');
  await buildCli(top);
}
process.env.UNDERCHASSIS_HOME ??= top;
await import(pathToFileURL(bundle).href);
