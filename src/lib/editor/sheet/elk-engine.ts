// Elk in a worker of its own, from its own unmodified file. It is asked from the layout's worker, with which
// it ends; a stop ends it in the middle of its work, and the next layout starts a new one.
import ELK, { type ElkNode } from 'elkjs/lib/elk-api.js';
import workerUrl from 'elkjs/lib/elk-worker.min.js?url';
import type { ElkGraph, LayoutEngine } from '#drawing/index.ts';

/** An engine whose worker starts with the first layout and is kept warm for the next. */
export const createElkEngine = (): LayoutEngine => {
  let elk: InstanceType<typeof ELK> | null = null;
  let fail: ((error: Error) => void) | null = null;

  const end = (words: string): void => {
    elk?.terminateWorker();
    elk = null;
    fail?.(new Error(words));
    fail = null;
  };
  const start = (): InstanceType<typeof ELK> =>
    new ELK({
      workerUrl,
      workerFactory: (url) => {
        // The file is a classic script; as a module it would not run.
        const worker = new Worker(url ?? workerUrl);
        // Elk itself does not hear of a worker that dies, and would wait for its answer.
        worker.addEventListener('error', (event) => {
          event.preventDefault();
          end('its worker ended in the middle of the work');
        });
        return worker;
      }
    });

  return {
    layout: (graph) =>
      new Promise<ElkGraph>((resolve, reject) => {
        elk ??= start();
        fail = reject;
        elk.layout(graph as ElkNode).then(
          (result) => resolve(result as ElkGraph),
          (error: unknown) => reject(error instanceof Error ? error : new Error(String(error)))
        );
      }),
    stop: () => end('the layout was stopped')
  };
};
