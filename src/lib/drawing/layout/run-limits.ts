// Time and stop for a layout: between its steps it lets others have their turn, and ends where it has to.
import { LayoutError, type LayoutOptions } from './layout-options.ts';

const defaultLimitMs = 10_000;
/** After this share of the time no further improvement is begun. */
const enoughShare = 0.3;

export interface Limits {
  /** Lets others have their turn; rejects with a LayoutError where the layout is to end. */
  readonly pause: () => Promise<void>;
  /** True once so much time has passed that what there is has to do. */
  readonly isEnough: () => boolean;
  readonly end: () => void;
}

const seconds = (ms: number): string => `${Number((ms / 1000).toPrecision(2))} s`;

/** Starts to watch. `end` must be called, whatever happens. */
export const startLimits = ({ signal, timeLimitMs = defaultLimitMs }: LayoutOptions): Limits => {
  let isOver = false;
  let isEnough = false;
  const timer = setTimeout(() => (isOver = true), timeLimitMs);
  const enoughTimer = setTimeout(() => (isEnough = true), timeLimitMs * enoughShare);
  return {
    pause: async () => {
      await new Promise((resolve) => setTimeout(resolve));
      if (signal?.aborted) throw new LayoutError('stopped', 'the layout was stopped');
      if (isOver)
        throw new LayoutError(
          'time',
          `the layout took longer than ${seconds(timeLimitMs)} and was stopped; allow it more time`
        );
    },
    isEnough: () => isEnough,
    end: () => {
      clearTimeout(timer);
      clearTimeout(enoughTimer);
    }
  };
};
