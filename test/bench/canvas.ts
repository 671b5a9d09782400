// What was timed in Chromium (`canvas/page.ts`), against its goals.
import { readFileSync } from 'node:fs';
import type { CanvasTimes } from './canvas/page.ts';
import { judge, type Verdict } from './goals.ts';
import type { Timing } from './measure.ts';

const timing = (name: string, ms: number): Timing => ({ name, ms, runs: 15 });

/** Judges the times that lie beside the bundle. */
export const judgeCanvas = (): readonly Verdict[] => {
  const file = new URL('./canvas-times.json', import.meta.url);
  const times = JSON.parse(readFileSync(file, 'utf8')) as CanvasTimes;
  const { wires, items, heldWires } = times;
  return [
    judge(
      `dragging a part with ${heldWires} wires`,
      timing('a move of the hand', times.dragMs),
      timing(`a full redraw of ${items} items`, times.redrawMs),
      1 / 20
    ),
    judge(
      `panning ${wires} wires`,
      timing('the canvas', times.panMs),
      timing('a bare canvas', times.barePanMs),
      1.5
    ),
    judge(
      `zooming ${wires} wires`,
      timing('the canvas', times.zoomMs),
      timing('a bare canvas', times.bareZoomMs),
      1.5
    )
  ];
};
