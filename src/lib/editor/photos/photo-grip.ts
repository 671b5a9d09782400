// A photo in the hand: one that is not locked is dragged where nothing of the drawing lies under the pointer.
import { changeElement } from '#document/index.ts';
import { isOnPhoto, photoPlace, pictureShape, type PlacedPhoto } from '#drawing/index.ts';
import type { Grip, Held } from '../tools/grip.ts';
import { subjectKey, type Spot, type ToolWorld } from '../tools/tool.ts';

const roundMm = (value: number): number => Math.round(value * 100) / 100;

/** The topmost photo at a place of the sheet, or null. */
export const photoAt = ({ scene }: ToolWorld, at: Spot): PlacedPhoto | null =>
  scene.geometry.places.photos.findLast((placed) => isOnPhoto(placed, at)) ?? null;

const hold = (placed: PlacedPhoto, from: Spot, to: Spot): Held => {
  const shift = { x: to.x - from.x, y: to.y - from.y };
  const { photo, lay } = placed;
  return {
    drag: (event) => hold(placed, from, event.at),
    show: () => ({
      shapes: [
        {
          style: 'photo.frame',
          shape: pictureShape({
            ...placed,
            at: { x: placed.at.x + shift.x, y: placed.at.y + shift.y }
          })
        }
      ],
      hidden: new Set([subjectKey({ kind: 'photo', id: photo.id })]),
      cursor: 'grabbing'
    }),
    drop: ({ study }) => {
      if (shift.x === 0 && shift.y === 0) return [];
      const unit = study.document.units[photo.unit] ?? null;
      const { x, y } = photoPlace(photo, lay, unit);
      // From above, right and left trade places.
      const across = photo.face === 'above' ? -shift.x : shift.x;
      const place = { x: roundMm(x + across), y: roundMm(y + shift.y) };
      const edit = changeElement('photo', photo.id, { place });
      return [{ kind: 'edit', edit, words: `photo ${photo.name} moved` }];
    }
  };
};

export const photoGrip: Grip = {
  take: ({ subject, at, shift }, world) => {
    if (subject !== null || shift) return null;
    const placed = photoAt(world, at);
    return placed === null || placed.photo.locked === true ? null : hold(placed, at, at);
  }
};
