// Sums with points of the sheet: millimetres, x to the right, y down the page. A turn to the right
// is clockwise as seen on the page.
import type { Spot } from '../presentation/sides.ts';

export const plus = (a: Spot, b: Spot): Spot => ({ x: a.x + b.x, y: a.y + b.y });
export const minus = (a: Spot, b: Spot): Spot => ({ x: a.x - b.x, y: a.y - b.y });
export const times = ({ x, y }: Spot, factor: number): Spot => ({ x: x * factor, y: y * factor });
export const middleOf = (a: Spot, b: Spot): Spot => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
export const distance = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y);
/** Greater than 0 where `b` points to the right of `a`. */
export const cross = (a: Spot, b: Spot): number => a.x * b.y - a.y * b.x;
export const dot = (a: Spot, b: Spot): number => a.x * b.x + a.y * b.y;

/** A step of length 1 in the same direction; to the right where there is none. */
export const unitOf = (way: Spot): Spot => {
  const length = Math.hypot(way.x, way.y);
  return length < 1e-9 ? { x: 1, y: 0 } : { x: way.x / length, y: way.y / length };
};

/** Turned by a quarter to the right. */
export const rightOf = ({ x, y }: Spot): Spot => ({ x: -y, y: x });

/** Turned clockwise by degrees. */
export const turnedBy = ({ x, y }: Spot, degrees: number): Spot => {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: x * cos - y * sin, y: x * sin + y * cos };
};

/** How far the way turns to the right from `before` to `after`, in radians from -pi to pi. */
export const turnBetween = (before: Spot, after: Spot): number =>
  Math.atan2(cross(before, after), dot(before, after));

/** Where two straight lines meet, each given by a point and a direction; null where they are parallel
 *  or nearly so. */
export const meetingOf = (a: Spot, alongA: Spot, b: Spot, alongB: Spot): Spot | null => {
  const across = cross(unitOf(alongA), unitOf(alongB));
  if (Math.abs(across) < 0.12) return null;
  const t = cross(minus(b, a), alongB) / cross(alongA, alongB);
  return plus(a, times(alongA, t));
};

/** Distance from a point to a straight piece. */
export const distanceToPiece = (at: Spot, from: Spot, to: Spot): number => {
  const way = minus(to, from);
  const squared = dot(way, way);
  const along = squared === 0 ? 0 : Math.min(1, Math.max(0, dot(minus(at, from), way) / squared));
  return distance(at, plus(from, times(way, along)));
};
