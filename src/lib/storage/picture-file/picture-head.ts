// What is known of a picture before it is decoded, and the picture without all that it says of camera,
// time and place.
import type { Picture } from '#document/index.ts';
import type { Orientation } from './orientation.ts';
import { readJpeg } from './jpeg.ts';
import { readPng } from './png.ts';
import { readWebp } from './webp.ts';
import { pictureTypeOf } from '../picture-type.ts';

export interface PictureHead {
  readonly type: Picture['type'];
  /** Pixels as they lie in the file, before they are turned upright. */
  readonly width: number;
  readonly height: number;
  readonly orientation: Orientation;
  /** The file without its metadata: nothing in it says where, when or with what it was taken. */
  readonly bare: Uint8Array;
}

/** Null where the bytes are none of the kinds that are read, or end too early to say their size. */
export const readPictureHead = (bytes: Uint8Array): PictureHead | null => {
  const type = pictureTypeOf(bytes);
  switch (type) {
    case 'image/jpeg': {
      const read = readJpeg(bytes);
      return read && { type, ...read };
    }
    case 'image/png': {
      const read = readPng(bytes);
      return read && { type, ...read };
    }
    case 'image/webp': {
      const read = readWebp(bytes);
      return read && { type, ...read };
    }
    case undefined:
      return null;
  }
};
