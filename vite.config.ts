import { sveltekit } from '@sveltejs/kit/vite';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

/** The page checks documents and never writes a JSON Schema: what zod writes one with stays out of it. */
const withoutSchemaWriter: Plugin = {
  name: 'without-schema-writer',
  apply: 'build',
  transform: (code, id) => {
    if (!/zod\/v4\/core\/(?:json-schema-processors|to-json-schema)\.js$/.test(id)) return null;
    const names = [...code.matchAll(/^export (?:const|function) (\w+)/gm)].map(([, name]) => name);
    return {
      code: names.map((name) => `export const ${name} = () => () => undefined;`).join('\n'),
      map: null
    };
  }
};

export default defineConfig({
  plugins: [sveltekit(), withoutSchemaWriter],
  build: {
    target: 'es2023',
    chunkSizeWarningLimit: 1700,
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            // What every visit needs of the document, in one file: in a dozen it packs worse. What only sharing
            // and opening files need stays apart.
            {
              name: 'document',
              test: /src\/lib\/document\/(?!compare\/|page-metadata|packed-text|svg-metadata|xml-tokens|json-schema)/
            }
          ]
        }
      }
    }
  },
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/e2e/**', 'test/bench/**'],
    environment: 'node',
    testTimeout: 60_000
  }
});
