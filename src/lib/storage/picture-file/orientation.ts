// How a camera was held: EXIF's tag 274, and what it takes to see the picture upright.
// Source: JEITA CP-3451 / CIPA DC-008 (EXIF 2.32), 4.6.4 A, "Orientation"; TIFF 6.0, section 8.
import { lettersAt, numberAt } from './bytes.ts';

/** 1 is upright. The others say where the picture's first row and first column belong:
 *  2 top right, 3 bottom right, 4 bottom left, 5 left top, 6 right top, 7 right bottom, 8 left bottom. */
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

const orientationTag = 0x0112;
const shortType = 3;

/** The orientation that a block of EXIF gives, beginning with its byte order mark; 1 where it gives none. */
export const orientationOf = (tiff: Uint8Array): Orientation => {
  const mark = lettersAt(tiff, 0, 2);
  if (mark !== 'II' && mark !== 'MM') return 1;
  const first = mark === 'II' ? 'low' : 'high';
  if (numberAt(tiff, 2, 2, first) !== 42) return 1;
  const directory = numberAt(tiff, 4, 4, first) ?? 0;
  const count = numberAt(tiff, directory, 2, first) ?? 0;
  for (let index = 0; index < count; index++) {
    const entry = directory + 2 + index * 12;
    const tag = numberAt(tiff, entry, 2, first);
    if (tag === undefined) return 1;
    if (tag !== orientationTag) continue;
    if (numberAt(tiff, entry + 2, 2, first) !== shortType) return 1;
    return asOrientation(numberAt(tiff, entry + 8, 2, first));
  }
  return 1;
};

const orientations: readonly Orientation[] = [1, 2, 3, 4, 5, 6, 7, 8];
const asOrientation = (value: number | undefined): Orientation =>
  orientations.find((one) => one === value) ?? 1;

/** True where upright width and height trade places. */
export const isOnItsSide = (orientation: Orientation): boolean => orientation >= 5;

/** What a canvas of the upright size must be given (a, b, c, d, e, f) so that the picture, drawn into
 *  0, 0, width, height, comes out upright.
 *  @param width of the picture as it lies in the file
 *  @param height likewise */
export const uprightTransform = (
  orientation: Orientation,
  width: number,
  height: number
): readonly [number, number, number, number, number, number] => {
  switch (orientation) {
    case 1:
      return [1, 0, 0, 1, 0, 0];
    case 2:
      return [-1, 0, 0, 1, width, 0];
    case 3:
      return [-1, 0, 0, -1, width, height];
    case 4:
      return [1, 0, 0, -1, 0, height];
    case 5:
      return [0, 1, 1, 0, 0, 0];
    case 6:
      return [0, 1, -1, 0, height, 0];
    case 7:
      return [0, -1, -1, 0, height, width];
    case 8:
      return [0, -1, 1, 0, 0, width];
  }
};
