// elk for the command line and the tests: its worker file, as it came, in a thread of its own, so
// that a layout that takes too long can be ended.
import { Worker as Thread } from 'node:worker_threads';
import ELK from 'elkjs/lib/elk-api.js';
import type { ElkGraph, LayoutEngine } from '#drawing/index.ts';

/** What runs first in the thread: the worker file wants to find itself in a browser's worker. */
const prelude = `
const { parentPort, workerData } = require('node:worker_threads');
globalThis.self = globalThis;
globalThis.postMessage = (message) => parentPort.postMessage(message);
parentPort.on('message', (data) => globalThis.onmessage({ data }));
require(workerData.file);
`;

/** The thread, behind the few words that elk's api uses of a browser's worker. */
const startThread = (file: string) => {
  const thread = new Thread(prelude, {
    eval: true,
    workerData: { file },
    // Deep recursion: a thousand wires pass with this much.
    resourceLimits: { stackSizeMb: 16 }
  });
  thread.unref();
  const worker = {
    onmessage: null as ((event: { data: unknown }) => void) | null,
    postMessage: (message: unknown) => thread.postMessage(message),
    terminate: () => void thread.terminate()
  };
  thread.on('message', (data) => worker.onmessage?.({ data }));
  return { thread, worker };
};

/** An engine whose worker file lies at `workerFile`, an absolute path. The thread starts with the
 *  first layout and stays warm; `stop` ends it. */
export const createNodeEngine = (workerFile: string): LayoutEngine => {
  let running: { elk: InstanceType<typeof ELK>; thread: Thread } | null = null;
  let fail: ((reason: Error) => void) | null = null;

  const start = () => {
    const { thread, worker } = startThread(workerFile);
    const elk = new ELK({ workerFactory: () => worker as unknown as Worker });
    thread.on('error', (error) => {
      running = null;
      fail?.(error);
    });
    running = { elk, thread };
    return running;
  };

  return {
    layout: (graph) => {
      const { elk, thread } = running ?? start();
      thread.ref();
      return new Promise<ElkGraph>((resolve, reject) => {
        fail = reject;
        elk.layout(graph as never).then(
          (result) => {
            thread.unref();
            resolve(result as unknown as ElkGraph);
          },
          (error: unknown) => {
            thread.unref();
            reject(error instanceof Error ? error : new Error(String(error)));
          }
        );
      });
    },
    stop: () => {
      const stopped = running;
      running = null;
      void stopped?.thread.terminate();
      fail?.(new Error('the layout was stopped'));
    }
  };
};
