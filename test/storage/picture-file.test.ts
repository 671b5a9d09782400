// Files of pictures before they are decoded: size, how the camera was held, and nothing said of the place.
import { describe, expect, it } from 'vitest';
import { readPictureHead } from '#storage/index.ts';
import {
  isOnItsSide,
  uprightTransform,
  type Orientation
} from '#storage/picture-file/orientation.ts';

const text = (letters: string): number[] => [...letters].map((letter) => letter.charCodeAt(0));
const two = (value: number): number[] => [value >> 8, value & 255];
const four = (value: number): number[] => [...two(value >>> 16), ...two(value & 0xffff)];

/** EXIF with an orientation and a GPS directory that says 51 degrees north. */
const exif = (orientation: number, order: 'MM' | 'II'): number[] => {
  const flip = (bytes: number[]): number[] => (order === 'MM' ? bytes : bytes.toReversed());
  const entry = (tag: number, type: number, count: number, value: number[]): number[] => [
    ...flip(two(tag)),
    ...flip(two(type)),
    ...flip(four(count)),
    ...value
  ];
  const short = (value: number): number[] =>
    order === 'MM' ? [...two(value), 0, 0] : [...flip(two(value)), 0, 0];
  return [
    ...text(order),
    ...flip(two(42)),
    ...flip(four(8)),
    ...flip(two(2)),
    ...entry(0x0112, 3, 1, short(orientation)),
    ...entry(0x8825, 4, 1, flip(four(38))),
    ...flip(four(0)),
    ...flip(two(1)),
    ...entry(1, 2, 2, [...text('N'), 0, 0, 0]),
    ...flip(four(0)),
    ...text('51.5074 north')
  ];
};

const segment = (marker: number, body: number[]): number[] => [
  0xff,
  marker,
  ...two(body.length + 2),
  ...body
];
const jpeg = (orientation: number, order: 'MM' | 'II' = 'MM'): Uint8Array =>
  Uint8Array.from([
    0xff,
    0xd8,
    ...segment(0xe0, [...text('JFIF'), 0, 1, 1, 0, 0, 1, 0, 1, 0, 0]),
    ...segment(0xe1, [...text('Exif'), 0, 0, ...exif(orientation, order)]),
    ...segment(0xe2, [...text('ICC_PROFILE'), 0, 1, 1, 9, 9]),
    ...segment(0xed, text('Photoshop place of the picture')),
    ...segment(0xfe, text('taken at home')),
    ...segment(0xc0, [8, ...two(300), ...two(400), 1, 1, 0x11, 0]),
    ...segment(0xda, [1, 1, 0, 0, 63, 0]),
    1,
    2,
    3,
    0xff,
    0xd9
  ]);
const lettersOf = (bytes: Uint8Array): string => String.fromCharCode(...bytes);

describe('a JPEG', () => {
  // EXIF 2.32 (CIPA DC-008), 4.6.4 A: the eight ways of holding a camera, in either order of bytes.
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('held in way %i says so', (orientation) => {
    for (const order of ['MM', 'II'] as const) {
      expect(readPictureHead(jpeg(orientation, order))).toMatchObject({
        type: 'image/jpeg',
        width: 400,
        height: 300,
        orientation
      });
    }
  });

  it('keeps its colours and its pixels, and nothing of camera, place or words', () => {
    const bare = lettersOf(readPictureHead(jpeg(6))!.bare);
    expect(lettersOf(jpeg(6))).toContain('51.5074');
    for (const gone of ['Exif', '51.5074', 'Photoshop', 'home']) expect(bare).not.toContain(gone);
    for (const kept of ['JFIF', 'ICC_PROFILE']) expect(bare).toContain(kept);
    expect(bare.endsWith('\x01\x02\x03\xff\xd9')).toBe(true);
  });

  it('that is cut short, at any byte, is refused and never throws', () => {
    const whole = jpeg(6);
    for (let length = 0; length < whole.length; length++) {
      const head = readPictureHead(whole.subarray(0, length));
      if (head !== null) expect(head.width).toBe(400);
    }
    expect(readPictureHead(whole.subarray(0, 40))).toBeNull();
  });

  it('with a way of holding that does not exist is taken as upright', () => {
    expect(readPictureHead(jpeg(9))?.orientation).toBe(1);
  });
});

it('a PNG and a WebP give size and orientation and lose what they say', () => {
  const chunk = (kind: string, body: number[]): number[] => [
    ...four(body.length),
    ...text(kind),
    ...body,
    0,
    0,
    0,
    0
  ];
  const png = Uint8Array.from([
    0x89,
    ...text('PNG'),
    13,
    10,
    26,
    10,
    ...chunk('IHDR', [...four(640), ...four(480), 8, 2, 0, 0, 0]),
    ...chunk('tEXt', text('Author: somebody')),
    ...chunk('eXIf', exif(8, 'II')),
    ...chunk('IDAT', [1, 2, 3]),
    ...chunk('IEND', [])
  ]);
  const readPng = readPictureHead(png)!;
  expect(readPng).toMatchObject({ width: 640, height: 480, orientation: 8 });
  expect(lettersOf(readPng.bare)).not.toMatch(/somebody|51\.5074/);
  expect(lettersOf(readPng.bare)).toContain('IDAT');

  const low = (value: number, count: number): number[] =>
    Array.from({ length: count }, (_, index) => (value >> (8 * index)) & 255);
  const part = (kind: string, body: number[]): number[] => [
    ...text(kind),
    ...low(body.length, 4),
    ...body,
    ...(body.length % 2 === 1 ? [0] : [])
  ];
  const body = [
    ...part('VP8X', [0x0c, 0, 0, 0, ...low(799, 3), ...low(599, 3)]),
    ...part('VP8 ', [9, 9, 9, 0x9d, 1, 0x2a, ...low(800, 2), ...low(600, 2)]),
    ...part('EXIF', exif(3, 'MM')),
    ...part('XMP ', text('place'))
  ];
  const webp = Uint8Array.from([
    ...text('RIFF'),
    ...low(body.length + 4, 4),
    ...text('WEBP'),
    ...body
  ]);
  const readWebp = readPictureHead(webp)!;
  expect(readWebp).toMatchObject({ width: 800, height: 600, orientation: 3 });
  expect(lettersOf(readWebp.bare)).not.toMatch(/EXIF|XMP|51\.5074|place/);
  // The size of what is left, and flags that promise neither EXIF nor XMP.
  expect(readWebp.bare[4]! + readWebp.bare[5]! * 256).toBe(readWebp.bare.length - 8);
  expect(readWebp.bare[20]! & 0x0c).toBe(0);
});

describe('turning upright', () => {
  // EXIF 2.32, 4.6.4 A: where the picture's first row and first column belong, as seen upright.
  const belongs: Readonly<Record<Orientation, readonly [row: string, column: string]>> = {
    1: ['top', 'left'],
    2: ['top', 'right'],
    3: ['bottom', 'right'],
    4: ['bottom', 'left'],
    5: ['left', 'top'],
    6: ['right', 'top'],
    7: ['right', 'bottom'],
    8: ['left', 'bottom']
  };
  it.each([1, 2, 3, 4, 5, 6, 7, 8] as const)('puts way %i where the standard says', (way) => {
    const [width, height] = [40, 30];
    const [a, b, c, d, e, f] = uprightTransform(way, width, height);
    const [wide, high] = isOnItsSide(way) ? [height, width] : [width, height];
    const sideOf = (x: number, y: number): string => {
      const [u, v] = [a * x + c * y + e, b * x + d * y + f];
      const far = { left: u, right: wide - u, top: v, bottom: high - v };
      return Object.entries(far).sort(([, one], [, two_]) => one - two_)[0]![0];
    };
    expect([sideOf(width / 2, 0), sideOf(0, height / 2)]).toEqual(belongs[way]);
    for (const [x, y] of [
      [0, 0],
      [width, height]
    ] as const) {
      expect([0, wide]).toContain(a * x + c * y + e);
      expect([0, high]).toContain(b * x + d * y + f);
    }
  });
});
