// What is done to photos, as edits.
import {
  addElement,
  buildEmptyDocument,
  changeElement,
  doMany,
  orderAt,
  orderAtEnd,
  sortByOrder,
  type ChassisDocument,
  type Edit,
  type Id,
  type MakeId,
  type Photo,
  type PhotoScale,
  type Picture
} from '#document/index.ts';
import { isUnderlay, layPhoto } from '#drawing/index.ts';

/** What a photo is given when it comes: the lines over it stay readable. */
const firstOpacity = 0.75;

export interface NewPhoto {
  readonly id: Id;
  readonly name: string;
  readonly picture: Picture;
  readonly face: Photo['face'];
  readonly unit?: Id | undefined;
  readonly of?: Photo['of'];
}

/** The unit that a photo belongs to: the one that was meant, else the first. */
const homeOf = ({ units }: ChassisDocument, wished: Id | undefined): Id | undefined =>
  (wished === undefined ? undefined : units[wished]?.id) ?? sortByOrder(units)[0]?.id;

/** Adds a photo, and the unit for it where the set has none. */
export const addPhoto = (document: ChassisDocument, photo: NewPhoto, makeId: MakeId): Edit => {
  const { id, name, picture, face, of } = photo;
  const unit = homeOf(document, photo.unit);
  const [made] =
    unit === undefined ? Object.values(buildEmptyDocument({ title: '', makeId }).units) : [];
  const home = unit ?? made?.id;
  const adding = addElement('photo', {
    id,
    order: orderAtEnd(document.photos),
    unit: home ?? '',
    name,
    picture,
    face,
    ...(of === undefined ? { opacity: firstOpacity } : { of })
  });
  return made === undefined
    ? adding
    : doMany(`add photo ${name}`, [addElement('unit', made), adding]);
};

/** "IMG_2041.jpg" as a name that says something: of a camera's number nothing is left. */
export const photoName = (
  fileName: string,
  { photos }: Pick<ChassisDocument, 'photos'>
): string => {
  const stem = fileName.replace(/\.[^.]*$/, '').trim();
  const isSpoken = /[a-z]{3}/i.test(
    stem.replace(/^(img|dsc[fn]?|pxl|image|photo|picture|p)(?=\W|_|\d|$)/i, '')
  );
  const base = isSpoken ? stem.replaceAll('_', ' ').slice(0, 60) : 'photo';
  const taken = new Set(Object.values(photos).map(({ name }) => name));
  if (base !== 'photo' && !taken.has(base)) return base;
  for (let count = base === 'photo' ? 1 : 2; ; count++) {
    if (!taken.has(`${base} ${count}`)) return `${base} ${count}`;
  }
};

/** The photos under the drawing of a unit, seen from a side, the topmost first. */
export const underlaysOf = (
  { photos }: Pick<ChassisDocument, 'photos'>,
  unit: Id,
  face?: Photo['face']
): readonly Photo[] =>
  sortByOrder(photos)
    .filter(
      (photo) =>
        isUnderlay(photo) && photo.unit === unit && (face === undefined || photo.face === face)
    )
    .reverse();

/** Moves a photo above or below the next of its unit and side; null where there is none. */
export const shiftPhoto = (
  document: ChassisDocument,
  photo: Photo,
  by: 'up' | 'down'
): Edit | null => {
  const beneath = underlaysOf(document, photo.unit, photo.face).toReversed();
  const at = beneath.findIndex(({ id }) => id === photo.id);
  const to = at + (by === 'up' ? 1 : -1);
  if (at < 0 || to < 0 || to >= beneath.length) return null;
  const others = beneath.filter(({ id }) => id !== photo.id);
  return changeElement('photo', photo.id, { order: orderAt(others, to) });
};

const roundMm = (value: number): number => Math.round(value * 100) / 100;

export interface ScaleWish {
  readonly scale: PhotoScale;
  /** The rectangle is the edge of the unit itself: the unit gets its size, and the photo lies on it. */
  readonly isEdge: boolean;
}

/** Gives a photo its scale. */
export const scalePhoto = (
  document: ChassisDocument,
  photo: Photo,
  { scale, isEdge }: ScaleWish
): Edit => {
  const before = Object.fromEntries(Object.keys(photo.scale ?? {}).map((key) => [key, null]));
  const scaling: Edit = {
    kind: 'change-photo',
    args: { id: photo.id, fields: { scale: { ...before, ...scale } } }
  };
  const name = `scale of photo ${photo.name}`;
  if (!isEdge || scale.by !== 'rectangle') return doMany(name, [scaling]);
  const { widthMm, heightMm } = scale;
  const lay = layPhoto({ ...photo, scale }, document.units[photo.unit] ?? null);
  const { x, y } = lay.rectangle ?? { x: 0, y: 0 };
  return doMany(name, [
    scaling,
    changeElement('unit', photo.unit, {
      size: { width: roundMm(widthMm), height: roundMm(heightMm) }
    }),
    changeElement('photo', photo.id, {
      place: {
        x: roundMm(photo.face === 'above' ? widthMm + x : -x),
        y: roundMm(-y),
        rotation: null
      }
    })
  ]);
};
