// The nearest place for a part where it lies on no other, with room for wires between.
import type { Box } from '../figures/figure.ts';
import type { Spot } from '../presentation/sides.ts';
import { laneMm, toLane } from '../router/lanes.ts';

/** Lanes between two parts, so that wires can leave both and pass; no fewer than the least. */
const room = { wanted: 5 * laneMm, least: 3 * laneMm } as const;
/** So far it is looked for a place, lanes. */
const farthest = 200;

const gapBetween = (a: Box, b: Box): number =>
  Math.max(a.x - b.x - b.width, b.x - a.x - a.width, a.y - b.y - b.height, b.y - a.y - a.height);

/** Whether a box keeps so clear of the others that wires can leave both. */
export const isFree = (box: Box, others: readonly Box[]): boolean =>
  others.every((other) => gapBetween(box, other) > room.least - 1e-6);

/** Whether a box lies on none of the others, however near it comes. */
export const liesClear = (box: Box, others: readonly Box[]): boolean =>
  others.every((other) => gapBetween(box, other) >= 0);

/** The upper left corner nearest to the wish, on lanes, where the box keeps clear of the others; the wish
 *  itself where there is none.
 *  @param from where the box stood: a neighbour that it was near may stay as near */
export const findFreePlace = (box: Box, others: readonly Box[], from?: Box): Spot => {
  const [x, y] = [toLane(box.x), toLane(box.y)];
  const near = others
    .filter(
      (other) =>
        Math.abs(other.x - x) < 600 + other.width && Math.abs(other.y - y) < 600 + other.height
    )
    .map((other) => {
      const had = from ? gapBetween(from, other) : room.wanted;
      return { other, apart: Math.max(room.least, Math.min(room.wanted, had)) };
    });
  const isClear = (there: Box): boolean =>
    near.every(({ other, apart }) => gapBetween(there, other) > apart - 1e-6);
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
        if (isClear({ ...box, x: x + dx * laneMm, y: y + dy * laneMm })) best = { dx, dy };
      }
    }
    if (best) return { x: toLane(x + best.dx * laneMm), y: toLane(y + best.dy * laneMm) };
  }
  return { x, y };
};
