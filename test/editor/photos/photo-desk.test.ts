// Photos before and after they are taken, without a page: what is refused, names, order, and scale.
import { describe, expect, it } from 'vitest';
import {
  applyEdit,
  makeIdFrom,
  type ChassisDocument,
  type Edit,
  type Photo
} from '#document/index.ts';
import { layPictorial } from '#drawing/index.ts';
import { BitmapCache } from '#editor/photos/bitmap-cache.ts';
import {
  addPhoto,
  photoName,
  scalePhoto,
  shiftPhoto,
  underlaysOf
} from '#editor/photos/photo-edits.ts';
import {
  checkPicture,
  keptSize,
  pictureLimits,
  tooManyBytes
} from '#editor/photos/picture-limits.ts';
import { movePoint, nudgePoint, readScale, startScale } from '#editor/photos/scale-draft.ts';
import { spotPhotosOf } from '#editor/photos/spot-photos.ts';
import { buildStudy } from '#study/index.ts';
import { chassis } from '../../helpers/chassis.ts';

let seed = 7;
const makeId = makeIdFrom(() => (seed = (seed * 16_807) % 2_147_483_647) / 2_147_483_647);
const picture = { hash: 'b'.repeat(64), type: 'image/jpeg', width: 1000, height: 800 } as const;
const made = (document: ChassisDocument, edit: Edit): ChassisDocument => {
  const applied = applyEdit(document, edit);
  if (!applied.ok) throw new Error(applied.problem);
  return applied.document;
};
const blank = chassis('Blank').unit('Main').build();
const withPhotos = (...names: string[]): ChassisDocument =>
  names.reduce(
    (document, name) =>
      made(
        document,
        addPhoto(document, { id: makeId('photo'), name, picture, face: 'below' }, makeId)
      ),
    blank
  );
const named = ({ photos }: ChassisDocument, name: string): Photo =>
  Object.values(photos).find((photo) => photo.name === name)!;

describe('a file that is no picture to be read', () => {
  const bytesOf = (text: string): Uint8Array =>
    Uint8Array.from(text, (letter) => letter.charCodeAt(0));
  it.each([
    ['\0\0\0\x18ftypheic\0\0\0\0', 'HEIC'],
    ['GIF89a......', 'GIF'],
    ['no picture at all', 'no picture'],
    ['', 'empty'],
    ['\xff\xd8\xff', 'broken']
  ])('%j is refused in words', (text, word) => {
    const checked = checkPicture(bytesOf(text));
    expect(checked.ok).toBe(false);
    if (!checked.ok) expect(checked.problem).toContain(word);
  });

  it('too many bytes or pixels are refused before anything is decoded', () => {
    expect(tooManyBytes(pictureLimits.bytes)).toBeNull();
    expect(tooManyBytes(pictureLimits.bytes + 1)).toContain('64 MB');
    // The head of a PNG of 20,000 by 20,000.
    const head = `\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR\0\0\x4e\x20\0\0\x4e\x20\x08\x02\0\0\0\0\0\0\0`;
    const checked = checkPicture(bytesOf(head));
    expect(checked).toMatchObject({ ok: false });
    if (!checked.ok) expect(checked.problem).toContain('400 million pixels');
  });

  it('is kept with its longest side at most 3000 pixels, never larger than it was', () => {
    expect(keptSize(6000, 4000)).toEqual({ width: 3000, height: 2000 });
    expect(keptSize(4000, 6000)).toEqual({ width: 2000, height: 3000 });
    expect(keptSize(640, 480)).toEqual({ width: 640, height: 480 });
  });
});

describe('photos of a unit', () => {
  it('get a name that says something', () => {
    expect(photoName('underside_of_the_set.jpg', blank)).toBe('underside of the set');
    expect(photoName('IMG_2041.JPG', blank)).toBe('photo 1');
    expect(photoName('IMG_2041.JPG', withPhotos('photo 1'))).toBe('photo 2');
    expect(photoName('tuner.png', withPhotos('tuner'))).toBe('tuner 2');
  });

  it('come with the unit that they need, as one step', () => {
    const bare = { ...blank, units: {} };
    const next = made(
      bare,
      addPhoto(bare, { id: makeId('photo'), name: 'a', picture, face: 'below' }, makeId)
    );
    expect(Object.keys(next.units)).toEqual([named(next, 'a').unit]);
  });

  it('change places with their neighbours', () => {
    const start = withPhotos('a', 'b', 'c');
    const order = (document: ChassisDocument): string =>
      underlaysOf(document, named(document, 'a').unit)
        .map(({ name }) => name)
        .join('');
    expect(order(start)).toBe('cba');
    const up = made(start, shiftPhoto(start, named(start, 'a'), 'up')!);
    expect(order(up)).toBe('cab');
    expect(order(made(up, shiftPhoto(up, named(up, 'c'), 'down')!))).toBe('acb');
    expect(shiftPhoto(start, named(start, 'c'), 'up')).toBeNull();
  });

  it('of one spot are found by it and lie under nothing', () => {
    const of = { part: 'p000000001', terminal: 't1' };
    const edit = addPhoto(
      blank,
      { id: makeId('photo'), name: 's', picture, face: 'below', of },
      makeId
    );
    const next = made(blank, edit);
    expect(spotPhotosOf(next, of)).toHaveLength(1);
    expect(spotPhotosOf(next, { part: 'p000000001' })).toHaveLength(0);
    expect(underlaysOf(next, named(next, 's').unit)).toHaveLength(0);
  });
});

describe('a scale', () => {
  const start = withPhotos('a');
  const photo = named(start, 'a');
  const draft = startScale(photo, null, 'mm');

  it('needs its lengths, in mm or inches, and says what is missing', () => {
    expect(readScale(draft, 'mm')).toMatchObject({ ok: false, isEmpty: true });
    const read = readScale({ ...draft, width: '13 in', height: '10 in' }, 'mm');
    expect(read).toMatchObject({ ok: true, scale: { widthMm: 330.2, heightMm: 254 } });
    expect(readScale({ ...draft, width: '13', height: '10' }, 'in')).toMatchObject({
      scale: { widthMm: 330.2 }
    });
    expect(readScale({ ...draft, width: '0', height: '5' }, 'mm')).toMatchObject({
      ok: false,
      isEmpty: false
    });
  });

  it('refuses corners out of turn', () => {
    const [a, b, c, d] = draft.corners;
    const crossed = { ...draft, corners: [b, a, c, d] as const, width: '1', height: '1' };
    const read = readScale(crossed, 'mm');
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problem).toContain('upper left, upper right');
  });

  it('has handles that never leave the picture, by hand or key', () => {
    expect(movePoint(draft, 0, { x: -50, y: 9000 }, picture).corners[0]).toEqual({ x: 0, y: 800 });
    const nudged = nudgePoint(draft, 1, { key: 'ArrowLeft', shiftKey: true }, picture)!;
    expect(nudged.corners[1].x).toBe(draft.corners[1].x - 10);
    expect(nudgePoint(draft, 1, { key: 'a', shiftKey: false }, picture)).toBeNull();
  });

  it('by the edge of the chassis lays the photo on its unit, from below and from above', () => {
    const read = readScale({ ...draft, width: '330', height: '254' }, 'mm');
    if (!read.ok) throw new Error(read.problem);
    for (const face of ['below', 'above'] as const) {
      const faced = { ...start, photos: { [photo.id]: { ...photo, face } } };
      const next = made(
        faced,
        scalePhoto(faced, { ...photo, face }, { scale: read.scale, isEdge: true })
      );
      expect(next.units[photo.unit]?.size).toEqual({ width: 330, height: 254 });
      const { places } = layPictorial(buildStudy(next), face);
      const { at, lay } = places.photos[0]!;
      const box = places.units[0]!.box;
      expect(at.x + lay.rectangle!.x).toBeCloseTo(box.x, 1);
      expect(at.y + lay.rectangle!.y).toBeCloseTo(box.y, 1);
    }
  });

  it('of another kind takes the place of the one before', () => {
    const one = made(
      start,
      scalePhoto(start, photo, {
        isEdge: false,
        scale: { by: 'two points', a: { x: 0, y: 0 }, b: { x: 100, y: 0 }, mm: 50 }
      })
    );
    const read = readScale({ ...draft, width: '330', height: '254' }, 'mm');
    if (!read.ok) throw new Error(read.problem);
    const two = made(one, scalePhoto(one, named(one, 'a'), { isEdge: false, scale: read.scale }));
    expect(named(two, 'a').scale).toEqual(read.scale);
  });
});

it('bitmaps that were not looked at for the longest time are let go first', () => {
  const closed: string[] = [];
  const bitmap = (name: string) => ({ close: () => void closed.push(name) });
  const cache = new BitmapCache<ReturnType<typeof bitmap>>(2);
  cache.hold('a', bitmap('a'));
  cache.hold('b', bitmap('b'));
  cache.find('a');
  cache.hold('c', bitmap('c'));
  expect(closed).toEqual(['b']);
  expect(cache.find('a')).toBeDefined();
});
