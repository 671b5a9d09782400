// The layout engine in the browser: elk in a worker of its own, from its own unmodified file. A stop
// ends the worker in the middle of its work; the next layout starts a new one.
import ELK, { type ElkNode } from 'elkjs/lib/elk-api.js';
import workerUrl from 'elkjs/lib/elk-worker.min.js?url';
import { LayoutError, type ElkGraph, type LayoutEngine } from '#drawing/layout/engine.ts';

const stopped = (): LayoutError => new LayoutError('stopped', 'The layout was stopped.');

/** An engine whose worker starts with the first layout and is kept warm for the next. */
export const createElkEngine = (): LayoutEngine => {
  let elk: InstanceType<typeof ELK> | null = null;
  let waiting = new Set<(error: Error) => void>();

  const start = (): InstanceType<typeof ELK> =>
    // The file is a classic script; as a module it would not run.
    new ELK({ workerUrl, workerFactory: (url) => new Worker(url ?? workerUrl) });

  return {
    layout: (graph) =>
      new Promise<ElkGraph>((resolve, reject) => {
        elk ??= start();
        waiting.add(reject);
        const done = (): boolean => waiting.delete(reject);
        elk.layout(graph as ElkNode).then(
          (result) => {
            done();
            resolve(result as ElkGraph);
          },
          (error: unknown) => {
            done();
            reject(error instanceof Error ? error : new Error(String(error)));
          }
        );
      }),
    stop: () => {
      elk?.terminateWorker();
      elk = null;
      const left = waiting;
      waiting = new Set();
      for (const reject of left) reject(stopped());
    }
  };
};
