// From places in a photo to places on the flat thing that it shows, and back.
// Holds in the plane of the rectangle only: what stands above it looks further out than it is.
import { checkedNumber } from './guard.ts';
import { SumError } from './sum-error.ts';

export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

type Four<T> = readonly [T, T, T, T];
type Nine = readonly [number, number, number, number, number, number, number, number, number];

/** A map of one plane onto another: three rows of three, the last number 1. */
export type Homography = Nine;

/** No corner may come nearer to a straight line than this: the height of the triangle of a corner and
 *  its neighbours, over the longest side. Our own limit, no source. */
const leastHeight = 0.02;
/** Nearer than that a finger decides the scale. Our own limit, no source. */
const leastPixels = 10;
const sides = { min: 0, max: 10_000, above: true, unit: 'mm' };

/** The map from pixels to mm, for the corners of a rectangle of known sides in turn from the upper
 *  left (right, then down). Its upper left corner becomes 0, 0.
 *  Formula:  unit square to quadrilateral in closed form, turned round, times the sides
 *  Source:   Heckbert, "Fundamentals of Texture Mapping and Image Warping" (1989), formula from memory
 *  Valid:    four corners that bulge outward, clockwise, sides above 0 to 10000 mm; otherwise SumError
 */
export function rectangleToMm(
  corners: Four<PlanePoint>,
  widthMm: number,
  heightMm: number
): Homography {
  const width = checkedNumber('width', widthMm, sides);
  const height = checkedNumber('height', heightMm, sides);
  checkCorners(corners);
  const [a, b, c, d, e, f, g, h, i] = invertHomography(squareTo(corners));
  const [x, y] = [width, height];
  return [a * x, b * x, c * x, d * y, e * y, f * y, g, h, i];
}

/** The map from pixels to mm for a photo taken square on: two places, and how far apart they are.
 *  Formula:  mm per pixel = mm / sqrt(dx^2 + dy^2)
 *  Source:   plane geometry
 *  Valid:    places at least 10 pixels apart, above 0 to 10000 mm; otherwise SumError
 */
export function twoPointsToMm(from: PlanePoint, to: PlanePoint, mm: number): Homography {
  const distance = checkedNumber('distance', mm, sides);
  checkPoints([from, to]);
  const pixels = Math.hypot(to.x - from.x, to.y - from.y);
  checkedNumber('the two places', pixels, {
    min: leastPixels,
    unit: 'pixels apart',
    wayOut: 'Take two places that are further apart.'
  });
  const scale = distance / pixels;
  return [scale, 0, 0, 0, scale, 0, 0, 0, 1];
}

/** The same map the other way round. Throws SumError where there is none. */
export function invertHomography([a, b, c, d, e, f, g, h, i]: Homography): Homography {
  const last = a * e - b * d;
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (!Number.isFinite(determinant) || determinant === 0 || last === 0) {
    throw flat(String(determinant));
  }
  return [
    (e * i - f * h) / last,
    (c * h - b * i) / last,
    (b * f - c * e) / last,
    (f * g - d * i) / last,
    (a * i - c * g) / last,
    (c * d - a * f) / last,
    (d * h - e * g) / last,
    (b * g - a * h) / last,
    1
  ];
}

/** Where a place comes to lie. Throws SumError for one at or beyond the horizon of the photo. */
export function mapPoint(
  [a, b, c, d, e, f, g, h, i]: Homography,
  { x, y }: PlanePoint
): PlanePoint {
  checkPoints([{ x, y }]);
  const depth = g * x + h * y + i;
  if (depth <= 1e-9) {
    throw new SumError({
      problem: 'out of range',
      input: 'place in the photo',
      value: `${x}, ${y}`,
      limit: 'this side of the horizon',
      wayOut: 'Take a place nearer to the rectangle.'
    });
  }
  return { x: (a * x + b * y + c) / depth, y: (d * x + e * y + f) / depth };
}

/** Length in mm of a way along places in a photo; 0 for fewer than two. Throws as mapPoint does. */
export function measuredMm(toMm: Homography, way: readonly PlanePoint[]): number {
  const points = way.map((point) => mapPoint(toMm, point));
  let length = 0;
  for (const [index, to] of points.entries()) {
    const from = points[index - 1];
    if (from) length += Math.hypot(to.x - from.x, to.y - from.y);
  }
  return length;
}

function squareTo([p, q, r, s]: Four<PlanePoint>): Homography {
  const [ux, uy] = [q.x - r.x, q.y - r.y];
  const [vx, vy] = [s.x - r.x, s.y - r.y];
  const [sx, sy] = [p.x - q.x + r.x - s.x, p.y - q.y + r.y - s.y];
  const area = ux * vy - uy * vx;
  const g = (sx * vy - sy * vx) / area;
  const h = (ux * sy - uy * sx) / area;
  return [
    q.x - p.x + g * q.x,
    s.x - p.x + h * s.x,
    p.x,
    q.y - p.y + g * q.y,
    s.y - p.y + h * s.y,
    p.y,
    g,
    h,
    1
  ];
}

function checkCorners(corners: Four<PlanePoint>): void {
  checkPoints(corners);
  const [p, q, r, s] = corners;
  const triples = [
    [s, p, q],
    [p, q, r],
    [q, r, s],
    [r, s, p]
  ] as const;
  for (const [before, at, after] of triples) {
    const cross = (at.x - before.x) * (after.y - at.y) - (at.y - before.y) * (after.x - at.x);
    const longest = Math.max(
      Math.hypot(at.x - before.x, at.y - before.y),
      Math.hypot(after.x - at.x, after.y - at.y),
      Math.hypot(after.x - before.x, after.y - before.y)
    );
    if (longest < leastPixels || cross < leastHeight * longest ** 2) throw flat(`${at.x}, ${at.y}`);
  }
}

function checkPoints(points: readonly PlanePoint[]): void {
  for (const { x, y } of points) {
    checkedNumber('x', x);
    checkedNumber('y', y);
  }
}

const flat = (value: string): SumError =>
  new SumError({
    problem: 'out of range',
    input: 'corners',
    value,
    limit: 'four corners that bulge outward, clockwise from the upper left',
    wayOut: 'Take the corners in turn: upper left, upper right, lower right, lower left.'
  });
