// The layout engine for tests: elk's own worker file in a thread, as the command line runs it.
import { fileURLToPath } from 'node:url';
import type { LayoutEngine } from '#drawing/index.ts';
import { createNodeEngine } from '../../src/cli/elk-in-node.ts';

const workerFile = fileURLToPath(
  new URL('../../node_modules/elkjs/lib/elk-worker.min.js', import.meta.url)
);

/** A fresh engine; stop it when the tests of a file are done. */
export const startEngine = (): LayoutEngine => createNodeEngine(workerFile);
