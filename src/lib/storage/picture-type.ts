// What kind of picture a file's bytes are: a name can be wrong, and what is none of these is not shown.
import type { Picture } from '#document/index.ts';

/** How the bytes of each kind begin.
 *  Sources: PNG Specification (Third Edition), W3C, 5.2; ITU-T T.81, B.1.1.3 (SOI, then a marker);
 *  RFC 9649 (WebP), 2.4. */
const beginnings: readonly (readonly [Picture['type'], RegExp])[] = [
  ['image/png', /^89504e470d0a1a0a/],
  ['image/jpeg', /^ffd8ff/],
  ['image/webp', /^52494646.{8}57454250/]
];

/** Undefined where the bytes are no picture that is taken. */
export const pictureTypeOf = (bytes: Uint8Array): Picture['type'] | undefined => {
  const start = [...bytes.subarray(0, 12)].map((byte) => byte.toString(16).padStart(2, '0'));
  return beginnings.find(([, pattern]) => pattern.test(start.join('')))?.[0];
};

export const pictureEndings: Readonly<Record<Picture['type'], string>> = {
  'image/png': 'png',
  'image/jpeg': 'jpg',
  'image/webp': 'webp'
};
