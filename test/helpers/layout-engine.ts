// The layout engine for tests: elk's own worker file in a thread, as the command line runs it. The thread starts
// with the first layout of a test file, and holds up no end.
import { fileURLToPath } from 'node:url';
import { createNodeEngine } from '../../src/cli/elk-in-node.ts';

export const layoutEngine = createNodeEngine(
  fileURLToPath(new URL('../../node_modules/elkjs/lib/elk-worker.min.js', import.meta.url))
);
