// How a photo lies in its unit: which picture is shown, how large it is in millimetres, and where.
import type { Photo, Unit } from '#document/index.ts';
import { SumError, twoPointsToMm, type Homography } from '#physics/index.ts';
import type { PictureAsset } from '../display-list.ts';
import type { Spot } from '../presentation/sides.ts';
import { straightenRectangle } from './straighten.ts';

export interface PhotoLay {
  readonly asset: PictureAsset;
  /** mm; taken for granted where the photo has no scale. */
  readonly width: number;
  readonly height: number;
  /** The edge of what is shown, mm from the picture's upper left corner. */
  readonly outline: readonly Spot[];
  /** From a place in the photo, pixels, to mm from the picture's upper left corner. */
  readonly toMm: Homography;
  /** Of the rectangle that gave the scale, mm from the picture's upper left corner. */
  readonly rectangle: Spot | null;
  readonly isScaled: boolean;
}

/** As wide as this a photo is shown that has no scale, in a unit that has not been measured, mm. */
const guessedSideMm = 300;

/** The picture of a photo as it is shown, and its size. */
export function layPhoto(photo: Photo, unit: Unit | null): PhotoLay {
  const { scale, picture } = photo;
  if (scale?.by === 'rectangle') {
    try {
      const straight = straightenRectangle(scale, picture);
      const { corners, widthMm, heightMm } = scale;
      const numbers = [...corners.flatMap(({ x, y }) => [x, y]), widthMm, heightMm];
      return {
        asset: {
          key: `${picture.hash} ${numbers.join(' ')}`,
          hash: picture.hash,
          straightening: straight.straightening
        },
        width: straight.width,
        height: straight.height,
        outline: straight.outline,
        toMm: straight.toMm,
        rectangle: { x: -straight.corner.x, y: -straight.corner.y },
        isScaled: true
      };
    } catch (error) {
      // Corners that are no rectangle give no scale; a document may hold them all the same.
      if (!(error instanceof SumError)) throw error;
    }
  }
  const toMm = squareOn(photo);
  const mmPerPx = toMm?.[0] ?? guessedMmPerPx(picture, unit);
  const [width, height] = [picture.width * mmPerPx, picture.height * mmPerPx];
  return {
    asset: { key: picture.hash, hash: picture.hash, straightening: null },
    width,
    height,
    outline: [
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width, y: height },
      { x: 0, y: height }
    ],
    toMm: [mmPerPx, 0, 0, 0, mmPerPx, 0, 0, 0, 1],
    rectangle: null,
    isScaled: toMm !== null
  };
}

function squareOn({ scale }: Photo): Homography | null {
  if (scale?.by !== 'two points') return null;
  try {
    return twoPointsToMm(scale.a, scale.b, scale.mm);
  } catch (error) {
    if (error instanceof SumError) return null;
    throw error;
  }
}

const guessedMmPerPx = ({ width, height }: Photo['picture'], unit: Unit | null): number =>
  unit?.size
    ? Math.min(unit.size.width / width, unit.size.height / height)
    : guessedSideMm / Math.max(width, height);

/** Where the picture's upper left corner lies in its unit: as placed, else at the unit's own corner as
 *  it is seen from the photo's side. */
export function photoPlace(photo: Photo, lay: PhotoLay, unit: Unit | null): Spot {
  const { place, face } = photo;
  if (place) return { x: place.x, y: place.y };
  return { x: face === 'above' ? (unit?.size?.width ?? lay.width) : 0, y: 0 };
}

/** Turns a place of the picture, mm from its upper left corner, about that corner. */
export const turned = ({ x, y }: Spot, degrees: number): Spot => {
  const turn = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return { x: x * cos - y * sin, y: x * sin + y * cos };
};

/** The edge of a photo in its unit, which counts as seen from below: from above, right and left trade
 *  places. */
export function photoOutlineInUnit(photo: Photo, unit: Unit | null): readonly Spot[] {
  const lay = layPhoto(photo, unit);
  const at = photoPlace(photo, lay, unit);
  const mirror = photo.face === 'above' ? -1 : 1;
  return lay.outline.map((spot) => {
    const { x, y } = turned(spot, photo.place?.rotation ?? 0);
    return { x: at.x + x * mirror, y: at.y + y };
  });
}
