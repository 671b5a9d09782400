// Bundles the benchmarks and runs them: `npm run bench`. What only a browser can time is timed in
// Chromium first, and judged with the rest.
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { bundle } from './bundle.mjs';
import { timeCanvas } from './time-canvas.mjs';

const top = dirname(dirname(fileURLToPath(import.meta.url)));
await bundle(top, 'test/bench/main.ts', 'build/bench', 'bench.js');
const times = await timeCanvas(top, 'build/bench');
writeFileSync(join(top, 'build/bench/canvas-times.json'), JSON.stringify(times));
await import(pathToFileURL(join(top, 'build/bench/bench.js')).href);
