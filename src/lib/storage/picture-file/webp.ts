// WebP: its size, how the camera was held, and the file without what it says besides the picture.
// Source: RFC 9649 (WebP Image Format), 2.3 to 2.7; RFC 6386, 9.1 (VP8's frame header).
import { joinBytes, lettersAt, numberAt } from './bytes.ts';
import type { FileRead } from './jpeg.ts';
import { orientationOf, type Orientation } from './orientation.ts';

const low = (bytes: Uint8Array, at: number, count: number) => numberAt(bytes, at, count, 'low');

const sizeIn = (
  kind: string,
  bytes: Uint8Array,
  at: number
): { readonly width: number; readonly height: number } | null => {
  if (kind === 'VP8X') {
    const [width, height] = [low(bytes, at + 4, 3), low(bytes, at + 7, 3)];
    return width === undefined || height === undefined
      ? null
      : { width: width + 1, height: height + 1 };
  }
  if (kind === 'VP8 ') {
    const [width, height] = [low(bytes, at + 6, 2), low(bytes, at + 8, 2)];
    return width === undefined || height === undefined
      ? null
      : { width: width & 0x3fff, height: height & 0x3fff };
  }
  const bits = kind === 'VP8L' ? low(bytes, at + 1, 4) : undefined;
  return bits === undefined
    ? null
    : { width: (bits & 0x3fff) + 1, height: (Math.floor(bits / 0x4000) & 0x3fff) + 1 };
};

/** In the flags of VP8X: there is EXIF, there is XMP. */
const aboutFlags = 0x08 | 0x04;

/** Null where the file ends before it says its size. */
export const readWebp = (bytes: Uint8Array): FileRead | null => {
  const kept: Uint8Array[] = [];
  let size: { readonly width: number; readonly height: number } | null = null;
  let orientation: Orientation = 1;
  for (let at = 12; at + 8 <= bytes.length;) {
    const kind = lettersAt(bytes, at, 4);
    const length = low(bytes, at + 4, 4) ?? 0;
    const body = at + 8;
    const end = body + length + (length % 2);
    size ??= sizeIn(kind, bytes, body);
    if (kind === 'EXIF') {
      const block = bytes.subarray(body, body + length);
      orientation = orientationOf(
        lettersAt(block, 0, 6) === 'Exif\0\0' ? block.subarray(6) : block
      );
    } else if (kind !== 'XMP ') {
      const chunk = bytes.slice(at, end);
      if (kind === 'VP8X') chunk[8] = (chunk[8] ?? 0) & ~aboutFlags;
      kept.push(chunk);
    }
    at = end;
  }
  if (size === null) return null;
  const body = joinBytes(kept);
  const head = Uint8Array.from(bytes.subarray(0, 12));
  new DataView(head.buffer).setUint32(4, body.length + 4, true);
  return { ...size, orientation, bare: joinBytes([head, body]) };
};
