// Bundles an entry into one file that Node runs, with elk's worker beside it, byte for byte as
// published.
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';

/** @param {string} top the top of the tree @param {string} entry from the top
 *  @param {string} outDir from the top @param {string} name of the file to write */
export const bundle = async (top, entry, outDir, name) => {
  const folder = join(top, outDir);
  // tsconfig.json builds on what SvelteKit writes; a fresh clone does not have it yet.
  if (!existsSync(join(top, '.svelte-kit/tsconfig.json')))
    spawnSync(process.execPath, [join(top, 'node_modules/@sveltejs/kit/svelte-kit.js'), 'sync'], {
      cwd: top,
      stdio: ['ignore', 'ignore', 'inherit']
    });
  await build({
    root: top,
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: join(top, entry),
      target: 'node20',
      outDir: folder,
      emptyOutDir: true,
      minify: false,
      rollupOptions: { output: { entryFileNames: name, codeSplitting: false } }
    }
  });
  mkdirSync(folder, { recursive: true });
  // The faces that a PDF is written in.
  mkdirSync(join(folder, 'faces'), { recursive: true });
  for (const family of ['sans', 'mono'])
    for (const script of ['latin', 'latin-ext', 'greek', 'cyrillic'])
      for (const weight of [400, 600]) {
        const file = `ibm-plex-${family}-${script}-${weight}-normal.woff`;
        const from = join(top, `node_modules/@fontsource/ibm-plex-${family}/files`, file);
        // The typewriter face has no Greek.
        if (existsSync(from)) copyFileSync(from, join(folder, 'faces', file));
      }
  const worker = 'elk-worker.min.js';
  copyFileSync(join(top, 'node_modules/elkjs/lib', worker), join(folder, worker));
};
