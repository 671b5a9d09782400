// From the four corners of a known rectangle to a picture seen square on: how large it comes out, and from
// where in the photo each of its pixels is taken. Only numbers: what makes the pixels is warp.ts.
import type { Photo, PhotoScale } from '#document/index.ts';
import { invertHomography, mapPoint, rectangleToMm, type Homography } from '#physics/index.ts';
import { boxAround } from '../pictorial/boxes.ts';
import type { Spot } from '../presentation/sides.ts';
import { clipPolygon } from './clip-polygon.ts';

export interface Straightening {
  /** From a place in the straightened picture, pixels, to the place in the photo that it shows. */
  readonly toPhoto: Homography;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}

export interface StraightPicture {
  readonly straightening: Straightening;
  /** mm. */
  readonly width: number;
  readonly height: number;
  /** The upper left corner of the picture, from the rectangle's own, mm. */
  readonly corner: Spot;
  /** What of it the photo shows, mm from the picture's upper left corner. */
  readonly outline: readonly Spot[];
  /** From a place in the photo, pixels, to mm from the picture's upper left corner. */
  readonly toMm: Homography;
}

/** The longest side of a straightened picture, pixels. */
const longestPx = 3000;
/** Nothing is shown that lies so much nearer to the horizon than the rectangle's middle: it would be
 *  drawn out of few pixels. */
const leastDepth = 0.3;
/** Nor what lies further from the rectangle than this many of its sides. */
const mostSides = 1;

const times = (matrix: Homography, factor: number): Homography => {
  const [a, b, c, d, e, f, g, h, i] = matrix;
  const by = (value: number): number => value * factor;
  return [by(a), by(b), by(c), by(d), by(e), by(f), by(g), by(h), by(i)];
};

const depthAt = ([, , , , , , g, h, i]: Homography, { x, y }: Spot): number => g * x + h * y + i;

const areaOf = (corners: readonly Spot[]): number =>
  Math.abs(
    corners.reduce((sum, { x, y }, index) => {
      const before = corners.at(index - 1) ?? { x, y };
      return sum + before.x * y - x * before.y;
    }, 0) / 2
  );

/** The picture that comes of a rectangle. Throws SumError for corners that are none. */
export function straightenRectangle(
  { corners, widthMm, heightMm }: Extract<PhotoScale, { by: 'rectangle' }>,
  picture: Pick<Photo['picture'], 'width' | 'height'>
): StraightPicture {
  const first = rectangleToMm(corners, widthMm, heightMm);
  const middle = mapPoint(invertHomography(first), { x: widthMm / 2, y: heightMm / 2 });
  const toMm = times(first, 1 / depthAt(first, middle));
  const whole = [
    { x: 0, y: 0 },
    { x: picture.width, y: 0 },
    { x: picture.width, y: picture.height },
    { x: 0, y: picture.height }
  ];
  const near = clipPolygon(whole, (spot) => depthAt(toMm, spot) - leastDepth);
  const [wide, high] = [widthMm * mostSides, heightMm * mostSides];
  const limits: readonly ((spot: Spot) => number)[] = [
    ({ x }) => x + wide,
    ({ x }) => widthMm + wide - x,
    ({ y }) => y + high,
    ({ y }) => heightMm + high - y
  ];
  const shown = limits.reduce<readonly Spot[]>(
    clipPolygon,
    near.map((spot) => mapPoint(toMm, spot))
  );
  const box = boxAround(shown);
  const wished = Math.sqrt(areaOf(corners) / (widthMm * heightMm));
  const pxPerMm = Math.min(wished, longestPx / Math.max(box.width, box.height));
  const [a, b, c, d, e, f, g, h, i] = invertHomography(first);
  const step = 1 / pxPerMm;
  return {
    straightening: {
      toPhoto: [
        a * step,
        b * step,
        a * box.x + b * box.y + c,
        d * step,
        e * step,
        d * box.x + e * box.y + f,
        g * step,
        h * step,
        g * box.x + h * box.y + i
      ],
      width: Math.max(1, Math.round(box.width * pxPerMm)),
      height: Math.max(1, Math.round(box.height * pxPerMm))
    },
    width: box.width,
    height: box.height,
    corner: { x: box.x, y: box.y },
    outline: shown.map(({ x, y }) => ({ x: x - box.x, y: y - box.y })),
    toMm: movedBy(toMm, -box.x, -box.y)
  };
}

/** The map, with what comes out moved. */
const movedBy = ([a, b, c, d, e, f, g, h, i]: Homography, x: number, y: number): Homography => [
  a + x * g,
  b + x * h,
  c + x * i,
  d + y * g,
  e + y * h,
  f + y * i,
  g,
  h,
  i
];
