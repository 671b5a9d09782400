// A line cut to a box: what of it lies inside, in pieces.
import type { Box } from '../figures/figure.ts';

/** From where to where a stretch lies in the box, as parts of its length (Liang and Barsky, 1984). */
const inside = (
  [x0, y0]: readonly [number, number],
  [x1, y1]: readonly [number, number],
  { x, y, width, height }: Box
): readonly [number, number] | null => {
  let [from, to] = [0, 1];
  const [dx, dy] = [x1 - x0, y1 - y0];
  for (const [step, room] of [
    [-dx, x0 - x],
    [dx, x + width - x0],
    [-dy, y0 - y],
    [dy, y + height - y0]
  ] as const) {
    if (step === 0) {
      if (room < 0) return null;
      continue;
    }
    const at = room / step;
    if (step < 0) from = Math.max(from, at);
    else to = Math.min(to, at);
  }
  return from < to ? [from, to] : null;
};

/** The pieces of an open line (x, y pairs) that lie in a box, in order. */
export const clipLine = (points: readonly number[], box: Box): number[][] => {
  const pieces: number[][] = [];
  let open: number[] | null = null;
  for (let at = 0; at + 3 < points.length; at += 2) {
    const a = [points[at] ?? 0, points[at + 1] ?? 0] as const;
    const b = [points[at + 2] ?? 0, points[at + 3] ?? 0] as const;
    const part = inside(a, b, box);
    if (part === null) {
      open = null;
      continue;
    }
    const spot = (along: number): [number, number] => [
      a[0] + (b[0] - a[0]) * along,
      a[1] + (b[1] - a[1]) * along
    ];
    if (open === null || part[0] > 0) {
      open = spot(part[0]);
      pieces.push(open);
    }
    open.push(...spot(part[1]));
    if (part[1] < 1) open = null;
  }
  return pieces;
};
