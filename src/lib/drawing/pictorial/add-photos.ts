// Photos under the drawing. One that is not true to scale says so on the sheet itself.
import { affineOf, pictureShape } from '../photos/place-photos.ts';
import { textWidthMm } from '../text-width.ts';
import type { PictorialGeometry } from './pictorial-geometry.ts';
import type { SheetItems } from './sheet-items.ts';

const noteLook = { size: 3.4, face: 'sans' } as const;
const insetMm = 2.5;

/** Adds the photos of the units, lowest first. */
export function addPhotos(sheet: SheetItems, { places }: PictorialGeometry): void {
  for (const placed of places.photos) {
    const { photo, lay, rotation } = placed;
    const id = `photo-${photo.id}`;
    const shape = pictureShape(placed);
    const note = lay.isScaled ? '' : ': no scale, nothing can be measured on it';
    const told = {
      subject: { kind: 'photo', id: photo.id } as const,
      title: `photo ${shape.name}${note}`
    };
    sheet.add(id, 'photos', 'photo.frame', shape, told);
    if (lay.isScaled) continue;
    const text = `${shape.name}: no scale`;
    const [a, b, c, d, e, f] = affineOf(placed);
    const at = (x: number, y: number): [number, number] => [a * x + c * y + e, b * x + d * y + f];
    const width = textWidthMm(text, noteLook) + 3;
    const [left, right] = [insetMm, insetMm + width];
    const [top, bottom] = [lay.height - insetMm - 5, lay.height - insetMm];
    const plate = [at(left, top), at(right, top), at(right, bottom), at(left, bottom)];
    sheet.add(
      `${id}-plate`,
      'photos',
      'photo.plate',
      { kind: 'line', points: plate.flat(), closed: true },
      told
    );
    const [x, y] = at(left + 1.5, bottom - 1.5);
    sheet.add(
      `${id}-note`,
      'photos',
      'photo.note',
      {
        kind: 'text',
        x,
        y,
        text,
        anchor: 'start',
        ...noteLook,
        ...(rotation === 0 ? {} : { turn: rotation })
      },
      told
    );
  }
}
