// Makes the straightened picture's pixels out of the photo's.
import type { Straightening } from './straighten.ts';

/** Red, green, blue and how much it covers, 0 to 255 each, row by row. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

/** Takes every pixel of the straightened picture from the four pixels of the photo nearest to where it
 *  comes from (bilinear). What lies outside the photo stays clear.
 *  @param onRows called now and then with the share that is done, 0 to 1
 *  Source:  Heckbert, "Fundamentals of Texture Mapping and Image Warping" (1989): inverse mapping, bilinear
 *           reconstruction; from memory. Held against OpenCV's warpPerspective in the tests. */
export function warpPixels(
  photo: Pixels,
  { toPhoto, width, height }: Straightening,
  onRows?: (share: number) => void
): Pixels {
  const data = new Uint8ClampedArray(width * height * 4);
  const [a, b, c, d, e, f, g, h, i] = toPhoto;
  for (let row = 0; row < height; row++) {
    const y = row + 0.5;
    for (let column = 0; column < width; column++) {
      const x = column + 0.5;
      const depth = g * x + h * y + i;
      // Pixels are counted from their upper left corner, samples from their middle.
      const fromX = (a * x + b * y + c) / depth - 0.5;
      const fromY = (d * x + e * y + f) / depth - 0.5;
      samplePixel(photo, fromX, fromY, data, (row * width + column) * 4);
    }
    if (row % 64 === 63) onRows?.((row + 1) / height);
  }
  onRows?.(1);
  return { width, height, data };
}

function samplePixel(
  { width, height, data }: Pixels,
  x: number,
  y: number,
  into: Uint8ClampedArray,
  at: number
): void {
  if (!(x > -0.5 && y > -0.5 && x < width - 0.5 && y < height - 0.5)) return;
  // At the rim the outermost pixel goes on.
  const left = Math.max(0, Math.floor(x));
  const top = Math.max(0, Math.floor(y));
  const right = Math.min(width - 1, left + 1);
  const bottom = Math.min(height - 1, top + 1);
  const u = Math.max(0, x - left);
  const v = Math.max(0, y - top);
  const upper = top * width;
  const lower = bottom * width;
  for (let part = 0; part < 4; part++) {
    const p = data[(upper + left) * 4 + part] ?? 0;
    const q = data[(upper + right) * 4 + part] ?? 0;
    const r = data[(lower + left) * 4 + part] ?? 0;
    const s = data[(lower + right) * 4 + part] ?? 0;
    into[at + part] = (p + (q - p) * u) * (1 - v) + (r + (s - r) * u) * v;
  }
}
