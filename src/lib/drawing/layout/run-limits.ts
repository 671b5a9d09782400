// Time and stop for a layout: one place that watches both and ends the engine's worker.
import { LayoutError, type ElkGraph, type LayoutEngine, type LayoutOptions } from './engine.ts';

const defaultLimitMs = 10_000;
/** After this share of the time no further improvement is begun. */
const enoughShare = 0.4;

export interface Limits {
  /** Lays a graph out within the limits; rejects with a LayoutError. */
  readonly lay: (graph: ElkGraph, name: string) => Promise<ElkGraph>;
  /** True once so much time has passed that what there is has to do. */
  readonly isEnough: () => boolean;
  readonly end: () => void;
}

const seconds = (ms: number): string => `${Number((ms / 1000).toPrecision(2))} s`;

/** Starts to watch. `end` must be called, whatever happens. */
export const startLimits = (engine: LayoutEngine, options: LayoutOptions): Limits => {
  const { signal, timeLimitMs = defaultLimitMs } = options;
  let over: LayoutError | null = null;
  let enough = false;
  let rejectNow: ((error: LayoutError) => void) | null = null;
  const stop = (error: LayoutError): void => {
    if (over) return;
    over = error;
    engine.stop();
    rejectNow?.(error);
  };
  const timer = setTimeout(() => {
    const words = `the layout took longer than ${seconds(timeLimitMs)} and was stopped; allow it more time, or split the biggest unit`;
    stop(new LayoutError('time', words));
  }, timeLimitMs);
  const halfTimer = setTimeout(() => (enough = true), timeLimitMs * enoughShare);
  const onAbort = () => stop(new LayoutError('stopped', 'the layout was stopped'));
  signal?.addEventListener('abort', onAbort);
  if (signal?.aborted) onAbort();
  return {
    lay: (graph, name) =>
      new Promise<ElkGraph>((resolve, reject) => {
        if (over) {
          reject(over);
          return;
        }
        rejectNow = reject;
        engine.layout(graph).then(resolve, (cause: unknown) => {
          const what = name === '' ? 'the sheet' : `unit "${name}"`;
          const why = cause instanceof Error ? cause.message : String(cause);
          reject(
            over ??
              new LayoutError('engine', `the layout engine failed on ${what}: ${why}`, { cause })
          );
        });
      }),
    isEnough: () => enough,
    end: () => {
      clearTimeout(timer);
      clearTimeout(halfTimer);
      signal?.removeEventListener('abort', onAbort);
      rejectNow = null;
    }
  };
};
