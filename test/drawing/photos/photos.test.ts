// Photos: straightened as OpenCV does it, measured back to the grid that was photographed, laid where they
// belong on either face, and the same in every writer.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { ChassisDocument, Photo } from '#document/index.ts';
import {
  buildPictorial,
  isOnPhoto,
  layPhoto,
  layPictorial,
  straightenRectangle,
  toPixel,
  toSvg,
  warpPixels,
  type Pixels
} from '#drawing/index.ts';
import { pictureCorners } from '#drawing/picture-corners.ts';
import { invertHomography, mapPoint, rectangleToMm } from '#physics/index.ts';
import { buildStudy } from '#study/index.ts';
import { paintPicture } from '#editor/sheet/paint-picture.ts';
import { chassis } from '../../helpers/chassis.ts';

const hash = 'a'.repeat(64);
const corners = [
  { x: 9, y: 7 },
  { x: 56, y: 4 },
  { x: 60, y: 43 },
  { x: 5, y: 40 }
] as const;

const picture = (
  width: number,
  height: number,
  colour: (x: number, y: number) => readonly [number, number, number]
): Pixels => {
  const data = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) data.set([...colour(x, y), 255], (y * width + x) * 4);
  }
  return { width, height, data };
};

describe('a straightened picture', () => {
  // test/drawing/photos/opencv.json: OpenCV 5.0.0, warpPerspective, made by by-opencv.py beside it.
  const reference = JSON.parse(readFileSync(new URL('./opencv.json', import.meta.url), 'utf8')) as {
    opencv: string;
    width: number;
    height: number;
    rgb: number[];
  };

  it(`has the pixels that OpenCV ${reference.opencv} gives it`, () => {
    const { width, height, rgb } = reference;
    const photo = picture(64, 48, (x, y) => [
      Math.round((x * 4) % 256),
      Math.round((y * 5) % 256),
      Math.round(127.5 + 127.5 * Math.sin(x / 7) * Math.cos(y / 5))
    ]);
    const toPhoto = invertHomography(rectangleToMm(corners, width, height));
    const made = warpPixels(photo, { toPhoto, width, height });
    let worst = 0;
    for (let pixel = 0; pixel < width * height; pixel++) {
      for (let part = 0; part < 3; part++) {
        const far = Math.abs(made.data[pixel * 4 + part]! - rgb[pixel * 3 + part]!);
        worst = Math.max(worst, far);
      }
    }
    // OpenCV reckons with 1/32 of a pixel between samples: red and green rise by 4 and 5 a pixel.
    expect(worst).toBeLessThanOrEqual(2);
  });

  it('gives a photographed grid back within 1 % of its true distances', () => {
    // A plate of 300 by 200 mm with a dark dot every 50 mm, seen at an angle.
    const seen = [
      { x: 210, y: 150 },
      { x: 1010, y: 95 },
      { x: 1130, y: 760 },
      { x: 120, y: 690 }
    ] as const;
    const toMm = rectangleToMm(seen, 300, 200);
    const photo = picture(1280, 860, (x, y) => {
      const { x: u, y: v } = mapPoint(toMm, { x: x + 0.5, y: y + 0.5 });
      const far = Math.hypot(u - Math.round(u / 50) * 50, v - Math.round(v / 50) * 50);
      const level = Math.round(Math.min(1, Math.max(0, far - 2)) * 220);
      return [level, level, level];
    });
    const scale = {
      by: 'rectangle',
      corners: [seen[0], seen[1], seen[2], seen[3]] as Extract<
        Photo['scale'],
        { by: 'rectangle' }
      >['corners'],
      widthMm: 300,
      heightMm: 200
    } as const;
    const straight = straightenRectangle(scale, { width: 1280, height: 860 });
    const made = warpPixels(photo, straight.straightening);
    const mmPerPx = straight.width / made.width;
    /** The middle of the dark dot near a place of the plate, mm. */
    const dotNear = (u: number, v: number): { x: number; y: number } => {
      const [px, py] = [(u - straight.corner.x) / mmPerPx, (v - straight.corner.y) / mmPerPx];
      const reach = Math.round(12 / mmPerPx);
      let [sum, sumX, sumY] = [0, 0, 0];
      for (let y = Math.round(py) - reach; y <= py + reach; y++) {
        for (let x = Math.round(px) - reach; x <= px + reach; x++) {
          const at = (y * made.width + x) * 4;
          if (made.data[at + 3] !== 255) continue;
          const dark = 220 - made.data[at]!;
          [sum, sumX, sumY] = [sum + dark, sumX + dark * (x + 0.5), sumY + dark * (y + 0.5)];
        }
      }
      expect(sum).toBeGreaterThan(0);
      return { x: (sumX / sum) * mmPerPx, y: (sumY / sum) * mmPerPx };
    };
    for (const [from, to] of [
      [
        [50, 50],
        [250, 50]
      ],
      [
        [50, 150],
        [250, 150]
      ],
      [
        [100, 50],
        [100, 150]
      ],
      [
        [50, 50],
        [250, 150]
      ]
    ] as const) {
      const [a, b] = [dotNear(from[0], from[1]), dotNear(to[0], to[1])];
      const measured = Math.hypot(a.x - b.x, a.y - b.y);
      const truth = Math.hypot(from[0] - to[0], from[1] - to[1]);
      expect(Math.abs(measured / truth - 1)).toBeLessThan(0.01);
    }
  });

  it('stays of a sensible size where the photo reaches the horizon', () => {
    const steep = [
      { x: 480, y: 300 },
      { x: 520, y: 300 },
      { x: 900, y: 700 },
      { x: 100, y: 700 }
    ] as const;
    const scale = { by: 'rectangle', corners: [...steep], widthMm: 300, heightMm: 400 } as const;
    const made = straightenRectangle(
      scale as unknown as Extract<NonNullable<Photo['scale']>, { by: 'rectangle' }>,
      { width: 1000, height: 800 }
    );
    expect(made.width).toBeLessThanOrEqual(900);
    expect(made.height).toBeLessThanOrEqual(1200);
    expect(Math.max(made.straightening.width, made.straightening.height)).toBeLessThanOrEqual(3000);
  });
});

const photoOf = (more: Partial<Photo>): Photo => ({
  id: 'hphoto0001',
  order: 'V',
  unit: '',
  name: 'underside',
  picture: { hash, type: 'image/jpeg', width: 1000, height: 800 },
  face: 'below',
  ...more
});

const withPhoto = (more: Partial<Photo>, size?: [number, number]): ChassisDocument => {
  const blank = chassis('Blank')
    .unit('Main', size ? { size } : {})
    .build();
  const [unit] = Object.keys(blank.units);
  const photo = photoOf({ unit: unit!, ...more });
  return { ...blank, photos: { [photo.id]: photo } };
};
const twoPoints = { by: 'two points', a: { x: 0, y: 0 }, b: { x: 500, y: 0 }, mm: 250 } as const;

describe('a photo on the sheet', () => {
  it('gives a blank chassis its extent', () => {
    const study = buildStudy(withPhoto({ scale: twoPoints }));
    const { places } = layPictorial(study, 'below');
    expect(places.units[0]?.box).toMatchObject({ width: 500, height: 400 });
    const list = buildPictorial(study, { findings: [], withFoot: false });
    const item = list.items.find(({ shape }) => shape.kind === 'picture');
    expect(item?.subject).toEqual({ kind: 'photo', id: 'hphoto0001' });
    expect(list.items.some(({ style }) => style === 'photo.note')).toBe(false);
  });

  it('is shown from its own side only, and not where it is hidden or of one spot', () => {
    const count = (more: Partial<Photo>, face: 'below' | 'above'): number =>
      layPictorial(buildStudy(withPhoto({ scale: twoPoints, ...more })), face).places.photos.length;
    expect(count({}, 'below')).toBe(1);
    expect(count({}, 'above')).toBe(0);
    expect(count({ face: 'above' }, 'above')).toBe(1);
    expect(count({ hidden: true }, 'below')).toBe(0);
    expect(count({ of: { part: 'p000000001' } }, 'below')).toBe(0);
  });

  it('from above lies on the unit as it is seen from there', () => {
    const document = withPhoto({ face: 'above', scale: twoPoints }, [500, 400]);
    const { places } = layPictorial(buildStudy(document), 'above');
    const box = places.units[0]!.box;
    expect(places.photos[0]?.at.x).toBeCloseTo(box.x, 6);
    expect(places.photos[0]?.at.y).toBeCloseTo(box.y, 6);
  });

  it('says on the sheet that it has no scale', () => {
    const list = buildPictorial(buildStudy(withPhoto({})), { findings: [], withFoot: false });
    const note = list.items.find(({ style }) => style === 'photo.note');
    expect(note?.shape).toMatchObject({ text: 'underside: no scale' });
    expect(layPhoto(photoOf({}), null).isScaled).toBe(false);
  });

  it('finds the pixel under a place, turned or not', () => {
    for (const rotation of [0, 30, -110]) {
      const document = withPhoto(
        { scale: twoPoints, place: { x: 40, y: 25, rotation } },
        [500, 400]
      );
      const [placed] = layPictorial(buildStudy(document), 'below').places.photos;
      const turn = (rotation * Math.PI) / 180;
      // 100 mm along the picture's upper edge and 60 mm down: pixel 200, 120.
      const spot = {
        x: placed!.at.x + 100 * Math.cos(turn) - 60 * Math.sin(turn),
        y: placed!.at.y + 100 * Math.sin(turn) + 60 * Math.cos(turn)
      };
      const pixel = toPixel(placed!, spot);
      expect(pixel.x).toBeCloseTo(200, 6);
      expect(pixel.y).toBeCloseTo(120, 6);
      expect(isOnPhoto(placed!, spot)).toBe(true);
      expect(isOnPhoto(placed!, { x: placed!.at.x - 600, y: placed!.at.y - 600 })).toBe(false);
    }
  });
});

describe('the writers', () => {
  const scale = {
    by: 'rectangle',
    corners: [
      { x: 120, y: 90 },
      { x: 880, y: 60 },
      { x: 930, y: 720 },
      { x: 80, y: 700 }
    ],
    widthMm: 330,
    heightMm: 254
  } as const;
  const document = withPhoto({
    scale: scale as unknown as NonNullable<Photo['scale']>,
    place: { x: 12, y: 34, rotation: 15 },
    opacity: 0.6
  });
  const list = buildPictorial(buildStudy(document), { findings: [], withFoot: false });
  const item = list.items.find(({ shape }) => shape.kind === 'picture')!;
  const shape = item.shape as Extract<typeof item.shape, { kind: 'picture' }>;

  it('canvas and SVG put a picture at the same place, cut and as clear', () => {
    const svg = toSvg(list, {
      title: 'x',
      pictures: () => ({ bytes: Uint8Array.of(1, 2, 3, 4), type: 'image/jpeg' })
    });
    const calls: string[] = [];
    const context = {
      globalAlpha: 1,
      save: () => calls.push('save'),
      restore: () => calls.push('restore'),
      transform: (...matrix: number[]) =>
        calls.push(`matrix(${matrix.map((value) => Number(value.toFixed(6)) + 0).join(' ')})`),
      beginPath: () => undefined,
      moveTo: (x: number, y: number) => calls.push(`point ${x.toFixed(2)} ${y.toFixed(2)}`),
      lineTo: (x: number, y: number) => calls.push(`point ${x.toFixed(2)} ${y.toFixed(2)}`),
      closePath: () => undefined,
      clip: () => calls.push('clip'),
      drawImage: (_: unknown, x: number, y: number, width: number, height: number) =>
        calls.push(`image ${x} ${y} ${width.toFixed(2)} ${height.toFixed(2)}`)
    };
    paintPicture(context as unknown as CanvasRenderingContext2D, shape, {} as CanvasImageSource);
    const image = /<image [^>]*>/.exec(svg)?.[0] ?? '';
    const attribute = (name: string): string =>
      new RegExp(` ${name}="([^"]*)"`).exec(image)?.[1] ?? '';
    expect(calls).toContain(attribute('transform'));
    expect(calls.at(-2)).toBe(
      `image 0 0 ${Number(attribute('width')).toFixed(2)} ${Number(attribute('height')).toFixed(2)}`
    );
    expect(context.globalAlpha).toBeCloseTo(Number(attribute('opacity')), 6);
    const polygon = /<clipPath id="([^"]+)"><polygon points="([^"]+)"/.exec(svg);
    expect(attribute('clip-path')).toBe(`url(#${polygon?.[1]})`);
    const points = polygon![2]!.split(' ').map((value) => Number(value).toFixed(2));
    const painted = calls.filter((call) => call.startsWith('point'));
    expect(painted).toEqual(
      painted.map((_, index) => `point ${points[index * 2]} ${points[index * 2 + 1]}`)
    );
    expect(attribute('href')).toBe('data:image/jpeg;base64,AQIDBA==');
  });

  it('without the picture draw its edge and its name, and no broken link', () => {
    const svg = toSvg(list, { title: 'x' });
    expect(svg).not.toContain('<image');
    expect(svg).not.toContain('href');
    expect(svg).toContain('>underside</text>');
    const edge = pictureCorners(shape);
    expect(edge.length).toBeGreaterThanOrEqual(4);
  });
});
