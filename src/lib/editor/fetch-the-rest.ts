// Fetches, one after the other while the page is idle, what is only needed when it is asked for: so that a walk
// opens and a file is saved without a wait, also when the page has outlived whatever served it.
import { lateWalk } from './pin-walk/late-walk.ts';
import { lateCellText } from './schedule/late-cell-text.ts';
import { startLayoutWorker } from './sheet/lay-out-in-worker.ts';

const rest: readonly (() => Promise<unknown>)[] = [
  () => lateCellText.load(),
  () => lateWalk.load(),
  () => import('./pin-walk/WalkPage.svelte'),
  () => import('./files/read-any-file.ts'),
  () => import('./photos/photo-edits.ts'),
  () => import('#storage/chassis-zip.ts'),
  () => import('#paperwork/schedule-csv.ts'),
  async () => startLayoutWorker()
];

const whenIdle = (run: () => void): void => {
  if ('requestIdleCallback' in globalThis) requestIdleCallback(run, { timeout: 2000 });
  else setTimeout(run, 200);
};

/** @param isDrawn the drawing stands, or never will: until then it goes first
 *  @returns what stops it */
export const fetchTheRest = (isDrawn: () => boolean): (() => void) => {
  let isStopped = false;
  const next = async (index: number): Promise<void> => {
    if (isStopped) return;
    if (!isDrawn()) {
      setTimeout(() => void next(index), 500);
      return;
    }
    // What does not come now is asked for again when it is needed, and missed in words there.
    await rest[index]?.().catch(() => undefined);
    if (index + 1 < rest.length) whenIdle(() => void next(index + 1));
  };
  whenIdle(() => void next(0));
  return () => (isStopped = true);
};
