// Layouts in a worker of their own, so that the page never waits. A stop ends the worker in the middle
// of its work; the next layout starts a new one.
import { LayoutError } from '#drawing/layout/layout-options.ts';
import type { KeptLayout, LayOut, LayoutTask, LayoutWatch, LayoutWord } from './lay-out.ts';

const startWorker = (): Worker =>
  new Worker(new URL('./layout-worker.ts', import.meta.url), { type: 'module' });

const ask = (worker: Worker, task: LayoutTask, watch: LayoutWatch): Promise<KeptLayout> =>
  new Promise((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<LayoutWord>): void => {
      if (data.kind === 'progress') watch.onProgress(data.progress);
      else if (data.kind === 'done') resolve(data.layout);
      else reject(data.why ? new LayoutError(data.why, data.words) : new Error(data.words));
    };
    worker.onerror = (event): void => {
      event.preventDefault();
      reject(
        new Error(
          'it ended in the middle of the work, perhaps for want of memory; close other pages and lay out again'
        )
      );
    };
    watch.signal.addEventListener('abort', () =>
      reject(new LayoutError('stopped', 'the layout was stopped'))
    );
    worker.postMessage(task);
  });

let worker: Worker | null = null;

/** Starts the worker, where it does not run yet; it is kept warm from then on. */
export const startLayoutWorker = (): Worker => (worker ??= startWorker());

export const layOutInWorker: LayOut = async (task, watch) => {
  try {
    return await ask(startLayoutWorker(), task, watch);
  } catch (error) {
    worker?.terminate();
    worker = null;
    throw error;
  }
};
