// The nearest place for a part where it lies on no other, with room for wires between.
import type { Box } from '../figures/figure.ts';
import type { Spot } from '../presentation/sides.ts';
import { laneMm, toLane } from '../router/lanes.ts';

/** Lanes between two parts, so that wires can leave both. */
const roomMm = 3 * laneMm;
/** So far it is looked for a place, lanes. */
const farthest = 200;

const isApart = (a: Box, b: Box): boolean =>
  Math.max(a.x - b.x - b.width, b.x - a.x - a.width, a.y - b.y - b.height, b.y - a.y - a.height) >
  roomMm - 1e-6;

/** Whether a box keeps clear of the others. */
export const isFree = (box: Box, others: readonly Box[]): boolean =>
  others.every((other) => isApart(box, other));

/** The upper left corner nearest to the wish, on lanes, where the box keeps clear of the others; the wish
 *  itself where there is none. */
export const findFreePlace = (box: Box, others: readonly Box[]): Spot => {
  const [x, y] = [toLane(box.x), toLane(box.y)];
  const near = others.filter(
    (other) =>
      Math.abs(other.x - x) < 600 + other.width && Math.abs(other.y - y) < 600 + other.height
  );
  for (let ring = 0; ring <= farthest; ring++) {
    let best: { dx: number; dy: number } | null = null;
    for (let step = -ring; step <= ring; step++) {
      for (const [dx, dy] of [
        [step, -ring],
        [step, ring],
        [-ring, step],
        [ring, step]
      ] as const) {
        const far = Math.abs(dx) + Math.abs(dy);
        if (best && Math.abs(best.dx) + Math.abs(best.dy) <= far) continue;
        if (isFree({ ...box, x: x + dx * laneMm, y: y + dy * laneMm }, near)) best = { dx, dy };
      }
    }
    if (best) return { x: toLane(x + best.dx * laneMm), y: toLane(y + best.dy * laneMm) };
  }
  return { x, y };
};
