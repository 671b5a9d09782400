// Bundles the benchmarks and runs them: `npm run bench`.
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { bundle } from './bundle.mjs';

const top = dirname(dirname(fileURLToPath(import.meta.url)));
await bundle(top, 'test/bench/main.ts', 'build/bench', 'bench.js');
await import(pathToFileURL(join(top, 'build/bench/bench.js')).href);
