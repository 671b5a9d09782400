// PNG: its size, how the camera was held, and the file without what it says besides the picture.
// Source: PNG Specification (Third Edition), W3C, 5.3 (chunks), 11.2.1 (IHDR), 11.3.
import { joinBytes, lettersAt, numberAt } from './bytes.ts';
import type { FileRead } from './jpeg.ts';
import { orientationOf, type Orientation } from './orientation.ts';

const signatureLength = 8;
/** Texts, EXIF and the time of the last change. */
const about = new Set(['tEXt', 'zTXt', 'iTXt', 'eXIf', 'tIME']);

/** Null where the file ends before it says its size. */
export const readPng = (bytes: Uint8Array): FileRead | null => {
  const [width, height] = [numberAt(bytes, 16, 4), numberAt(bytes, 20, 4)];
  if (lettersAt(bytes, 12, 4) !== 'IHDR' || width === undefined || height === undefined)
    return null;
  const kept: Uint8Array[] = [bytes.subarray(0, signatureLength)];
  let orientation: Orientation = 1;
  for (let at = signatureLength; at < bytes.length;) {
    const length = numberAt(bytes, at, 4);
    if (length === undefined) break;
    const kind = lettersAt(bytes, at + 4, 4);
    const end = at + 12 + length;
    if (kind === 'eXIf') orientation = orientationOf(bytes.subarray(at + 8, at + 8 + length));
    if (!about.has(kind)) kept.push(bytes.subarray(at, end));
    if (kind === 'IEND') break;
    at = end;
  }
  return { width, height, orientation, bare: joinBytes(kept) };
};
