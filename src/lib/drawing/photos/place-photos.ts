// The photos of a sheet: which are shown on a face, in which order, and where they lie.
import type { Id, Photo, Unit } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { mapPoint, invertHomography, type PlanePoint } from '#physics/index.ts';
import type { Affine, Shape } from '../display-list.ts';
import type { Spot } from '../presentation/sides.ts';
import { layPhoto, photoPlace, turned, type PhotoLay } from './lay-photo.ts';

export interface PlacedPhoto {
  readonly photo: Photo;
  readonly lay: PhotoLay;
  /** The picture's upper left corner on the sheet, and its turn, clockwise, degrees. */
  readonly at: Spot;
  readonly rotation: number;
}

/** Underlays alone: photos of one spot are shown beside what they show. */
export const isUnderlay = ({ of }: Photo): boolean => of === undefined;

/** The underlays of the units on a sheet that are seen from `face`, lowest first. */
export function placePhotos(
  photos: Readonly<Record<Id, Photo>>,
  units: readonly { readonly unit: Unit; readonly corner: Spot }[],
  face: Photo['face']
): readonly PlacedPhoto[] {
  const corners = new Map(units.map((placed) => [placed.unit.id, placed]));
  const mirror = face === 'above' ? -1 : 1;
  return sortByOrder(photos).flatMap((photo): PlacedPhoto[] => {
    const home = corners.get(photo.unit);
    if (!home || photo.face !== face || photo.hidden === true || !isUnderlay(photo)) return [];
    const lay = layPhoto(photo, home.unit);
    const { x, y } = photoPlace(photo, lay, home.unit);
    return [
      {
        photo,
        lay,
        at: { x: home.corner.x + x * mirror, y: home.corner.y + y },
        rotation: photo.place?.rotation ?? 0
      }
    ];
  });
}

/** From the picture's own millimetres to the sheet's. */
export function affineOf({ at, rotation }: Pick<PlacedPhoto, 'at' | 'rotation'>): Affine {
  const { x: cos, y: sin } = turned({ x: 1, y: 0 }, rotation);
  return [cos, sin, -sin, cos, at.x, at.y];
}

/** A place on the sheet in the picture's own millimetres. */
export const toPicture = ({ at, rotation }: PlacedPhoto, spot: Spot): Spot =>
  turned({ x: spot.x - at.x, y: spot.y - at.y }, -rotation);

/** A place on the sheet as pixels of the photo as it was taken. */
export const toPixel = (placed: PlacedPhoto, spot: Spot): PlanePoint =>
  mapPoint(invertHomography(placed.lay.toMm), toPicture(placed, spot));

/** Whether a place on the sheet lies on a photo. */
export function isOnPhoto(placed: PlacedPhoto, spot: Spot): boolean {
  const { x, y } = toPicture(placed, spot);
  const { outline } = placed.lay;
  return outline.every((to, index) => {
    const from = outline.at(index - 1) ?? to;
    return (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x) >= 0;
  });
}

/** The shape of a photo, to be painted. */
export function pictureShape(placed: PlacedPhoto): Extract<Shape, { kind: 'picture' }> {
  const { photo, lay } = placed;
  const isWhole = lay.asset.straightening === null;
  return {
    kind: 'picture',
    asset: lay.asset,
    matrix: affineOf(placed),
    width: lay.width,
    height: lay.height,
    opacity: photo.opacity ?? 1,
    name: photo.name === '' ? 'photo' : photo.name,
    ...(isWhole ? {} : { clip: lay.outline.flatMap(({ x, y }) => [x, y]) })
  };
}
