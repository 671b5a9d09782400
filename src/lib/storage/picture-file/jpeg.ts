// JPEG: its size, how the camera was held, and the file without what it says besides the picture.
// Source: ITU-T T.81 (1992), annex B: markers and segments; EXIF 2.32, 4.5: the APP1 segment.
import { joinBytes, lettersAt, numberAt } from './bytes.ts';
import { orientationOf, type Orientation } from './orientation.ts';

export interface FileRead {
  readonly width: number;
  readonly height: number;
  readonly orientation: Orientation;
  readonly bare: Uint8Array;
}

const startOfScan = 0xda;
const comment = 0xfe;
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
/** Colours depend on these: a profile (APP2) and the kind of colours (APP14, "Adobe"). */
const keepsColours = (marker: number, bytes: Uint8Array, at: number): boolean =>
  (marker === 0xe2 && lettersAt(bytes, at, 11) === 'ICC_PROFILE') ||
  (marker === 0xee && lettersAt(bytes, at, 5) === 'Adobe') ||
  (marker === 0xe0 && lettersAt(bytes, at, 4) === 'JFIF');
const isAbout = (marker: number): boolean =>
  (marker >= 0xe0 && marker <= 0xef) || marker === comment;

/** Null where the file ends before it says its size. */
export const readJpeg = (bytes: Uint8Array): FileRead | null => {
  const kept: Uint8Array[] = [bytes.subarray(0, 2)];
  let size: { width: number; height: number } | null = null;
  let orientation: Orientation = 1;
  let at = 2;
  for (;;) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1];
    if (marker === undefined) return null;
    // Any number of fill bytes may stand before a marker.
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === startOfScan) break;
    const length = numberAt(bytes, at + 2, 2);
    if (length === undefined || length < 2) return null;
    const body = at + 4;
    const end = at + 2 + length;
    if (marker === 0xe1 && lettersAt(bytes, body, 6) === 'Exif\0\0') {
      orientation = orientationOf(bytes.subarray(body + 6, end));
    }
    if (isFrame(marker)) {
      const [height, width] = [numberAt(bytes, body + 1, 2), numberAt(bytes, body + 3, 2)];
      if (width === undefined || height === undefined) return null;
      size = { width, height };
    }
    if (!isAbout(marker) || keepsColours(marker, bytes, body)) kept.push(bytes.subarray(at, end));
    at = end;
  }
  if (size === null) return null;
  kept.push(bytes.subarray(at));
  return { ...size, orientation, bare: joinBytes(kept) };
};
