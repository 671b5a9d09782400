// What is looked at before a picture is decoded: decoding a bad one can take the page's memory with it.
import { readPictureHead, type PictureHead } from '#storage/index.ts';

/** Limits before decoding. Our own, for what a browser on a telephone stands; no source. */
export const pictureLimits = {
  /** Bytes of the file. */
  bytes: 64 * 1024 * 1024,
  /** Width times height. */
  pixels: 120_000_000,
  /** Pixels; smaller pictures show nothing. */
  leastSide: 16
} as const;

/** The longest side of a picture as it is kept, pixels. */
export const keptSidePx = 3000;

/** Boxes of the ISO base media format (ISO/IEC 14496-12, 4.3) by their brand. */
const brands: readonly (readonly [RegExp, string])[] = [
  [/^(hei[cmsx]|hev[cmsx]|mif1|msf1)$/, 'HEIC'],
  [/^avi[fs]$/, 'AVIF']
];
const beginnings: readonly (readonly [RegExp, string])[] = [
  [/^GIF8/, 'GIF'],
  [/^BM/, 'BMP'],
  [/^(II\*\0|MM\0\*)/, 'TIFF or raw'],
  [/^%PDF/, 'PDF']
];

const kindOf = (bytes: Uint8Array): string | undefined => {
  const letters = String.fromCharCode(...bytes.subarray(0, 12));
  const brand = letters.slice(4, 8) === 'ftyp' ? letters.slice(8, 12) : null;
  return brand === null
    ? beginnings.find(([pattern]) => pattern.test(letters))?.[1]
    : brands.find(([pattern]) => pattern.test(brand))?.[1];
};

export type PictureCheck =
  | { readonly ok: true; readonly head: PictureHead }
  /** What is wrong, and the way out, as one sentence without a name. */
  | { readonly ok: false; readonly problem: string };

const refused = (problem: string): PictureCheck => ({ ok: false, problem });
const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1024 / 1024)} MB`;

/** Why a file is too large to be read at all, or null. */
export const tooManyBytes = (size: number): string | null =>
  size <= pictureLimits.bytes
    ? null
    : `has ${megabytes(size)} and the most is ${megabytes(pictureLimits.bytes)}: scale it down first.`;

/** Whether a file is a picture that can be decoded. */
export const checkPicture = (bytes: Uint8Array): PictureCheck => {
  const heavy = tooManyBytes(bytes.length);
  if (heavy !== null) return refused(heavy);
  if (bytes.length === 0) return refused('is empty: choose another.');
  const head = readPictureHead(bytes);
  if (head === null) {
    const kind = kindOf(bytes);
    return refused(
      kind === 'HEIC'
        ? 'is a HEIC picture, which browsers do not read: set the camera to JPEG, or save the picture as JPEG first.'
        : kind === undefined
          ? 'is no picture, or it is broken: JPEG, PNG and WebP can be read.'
          : `is ${kind}: JPEG, PNG and WebP can be read, so save it as one of these first.`
    );
  }
  const { width, height } = head;
  if (Math.min(width, height) < pictureLimits.leastSide) {
    return refused(
      `is ${width} by ${height} pixels: at least ${pictureLimits.leastSide} each way are needed to see anything.`
    );
  }
  if (width * height > pictureLimits.pixels) {
    return refused(
      `has ${Math.round((width * height) / 1e6)} million pixels and the most is ${pictureLimits.pixels / 1e6} million: scale it down first.`
    );
  }
  return { ok: true, head };
};

/** The size of a picture with its longest side at most `keptSidePx`; never larger than it is. */
export const keptSize = (
  width: number,
  height: number
): { readonly width: number; readonly height: number } => {
  const share = Math.min(1, keptSidePx / Math.max(width, height));
  return {
    width: Math.max(1, Math.round(width * share)),
    height: Math.max(1, Math.round(height * share))
  };
};
