// Bundles the command line into one file, with elk's worker beside it, byte for byte as published.
import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';

/** @param {string} top the top of the tree */
export const buildCli = async (top) => {
  const outDir = join(top, 'build/cli');
  await build({
    root: top,
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: join(top, 'src/cli/main.ts'),
      target: 'node20',
      outDir,
      emptyOutDir: true,
      minify: false,
      rollupOptions: {
        output: { entryFileNames: 'underchassis.js', codeSplitting: false }
      }
    }
  });
  mkdirSync(outDir, { recursive: true });
  for (const name of ['elk-worker.min.js'])
    copyFileSync(join(top, 'node_modules/elkjs/lib', name), join(outDir, name));
};
