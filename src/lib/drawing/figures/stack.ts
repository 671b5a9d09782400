// Ends one above the other along the east or west side of a part: how much room each takes, and
// where each then leaves.
import { toLane } from '../router/lanes.ts';
import type { Side } from '../presentation/sides.ts';
import type { Port, Sketch } from './figure.ts';
import { drawMark, measureMark } from './mark.ts';
import type { PartEnd } from './part-end.ts';
import { componentDrop, pitch } from './sizes.ts';

export const roomOf = (end: PartEnd, side: Side): { pitch: number; depth: number } =>
  !end.mark
    ? { pitch: pitch.line, depth: 0 }
    : end.mark.kind === 'gather'
      ? { pitch: pitch.gather, depth: 0 }
      : measureMark(end.mark, side);

/** How far below the middle of its room an end lies. */
export const dropOf = ({ mark }: PartEnd): number =>
  mark?.kind === 'component' ? componentDrop : 0;

/** Height that ends take on a side, mm. */
export const stackHeight = (ends: readonly PartEnd[], side: Side): number =>
  ends.reduce((sum, end) => sum + roomOf(end, side).pitch, 0);

/** How many of them are lines. */
export const lineCount = (ends: readonly PartEnd[]): number =>
  ends.filter(({ mark }) => !mark).length;

/** How far the marks among them reach out, mm. */
export const stackDepth = (ends: readonly PartEnd[], side: Side): number =>
  Math.max(0, ...ends.map((end) => roomOf(end, side).depth));

/** Where each end's middle stands, stacked around `middle` in their order. */
export const stackPlaces = (
  ends: readonly PartEnd[],
  side: Side,
  middle: number
): { end: PartEnd; y: number }[] => {
  const ordered = [...ends].sort((a, b) => a.sort - b.sort);
  const lines = lineCount(ends) * pitch.line;
  // Lines stand around the middle, or whole lanes above it where marks take the room below.
  const marks = stackHeight(ordered, side) - lines;
  let y = middle - (lines === 0 ? marks / 2 : lines / 2 + toLane(marks / 2));
  return ordered.map((end) => {
    const { pitch: own } = roomOf(end, side);
    const place = { end, y: y + own / 2 + dropOf(end) };
    y += own;
    return place;
  });
};

/** Draws the marks and adds the ports of ends that leave `fromX` towards `toX` at their places. */
export const leave = (
  sketch: Sketch,
  ports: Port[],
  places: readonly { end: PartEnd; y: number }[],
  side: 'east' | 'west',
  fromX: number,
  toX: number
): void => {
  for (const { end, y } of places) {
    if (end.mark && end.mark.kind !== 'gather') {
      drawMark(sketch, end.mark, { x: fromX, y }, side);
    } else if (!end.mark) {
      const path =
        fromX === toX
          ? [{ x: toX, y }]
          : [
              { x: fromX, y },
              { x: toX, y }
            ];
      ports.push({ end: end.id, x: toX, y, side, path });
    }
  }
};
