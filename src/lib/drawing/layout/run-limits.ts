// Time and stop for a layout: between its steps it lets others have their turn, and ends where it has to.
import { LayoutError, type LayoutOptions } from './layout-options.ts';

const defaultLimitMs = 10_000;
/** After this share of the time no further improvement is begun. */
const enoughShare = 0.3;

export interface Limits {
  /** Lets others have their turn; rejects with a LayoutError where the layout is to end. */
  readonly pause: () => Promise<void>;
  /** An answer from elsewhere; rejects with a LayoutError where the layout is to end before it is there. */
  readonly within: <T>(answer: Promise<T>) => Promise<T>;
  /** True once so much time has passed that what there is has to do. */
  readonly isEnough: () => boolean;
  readonly end: () => void;
}

const seconds = (ms: number): string => `${Number((ms / 1000).toPrecision(2))} s`;

/** Starts to watch. `end` must be called, whatever happens. */
export const startLimits = ({ signal, timeLimitMs = defaultLimitMs }: LayoutOptions): Limits => {
  let isOver = false;
  const enders = new Set<(error: LayoutError) => void>();
  const stopped = (): LayoutError => new LayoutError('stopped', 'the layout was stopped');
  const late = (): LayoutError =>
    new LayoutError(
      'time',
      `the layout took longer than ${seconds(timeLimitMs)} and was stopped; allow it more time`
    );
  const endWith = (error: LayoutError): void => {
    for (const end of enders) end(error);
  };
  const onAbort = (): void => endWith(stopped());
  signal?.addEventListener('abort', onAbort);
  let isEnough = false;
  const timer = setTimeout(() => {
    isOver = true;
    endWith(late());
  }, timeLimitMs);
  const enoughTimer = setTimeout(() => (isEnough = true), timeLimitMs * enoughShare);
  return {
    pause: async () => {
      await new Promise((resolve) => setTimeout(resolve));
      if (signal?.aborted) throw stopped();
      if (isOver) throw late();
    },
    within: (answer) =>
      new Promise((resolve, reject) => {
        enders.add(reject);
        const done = (): boolean => enders.delete(reject);
        answer.then(
          (value) => {
            done();
            resolve(value);
          },
          (error: unknown) => {
            done();
            reject(error instanceof Error ? error : new Error(String(error)));
          }
        );
      }),
    isEnough: () => isEnough,
    end: () => {
      clearTimeout(timer);
      clearTimeout(enoughTimer);
      signal?.removeEventListener('abort', onAbort);
    }
  };
};
