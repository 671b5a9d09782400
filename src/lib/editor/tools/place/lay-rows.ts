// Several parts that are placed at one press stand in rows, evenly, far enough apart to read.
import type { Part } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { boxAround } from '#drawing/pictorial/boxes.ts';
import { outlineCorners, placePart } from '#drawing/pictorial/placed-part.ts';
import type { Spot } from '../tool.ts';

/** Between the outlines of neighbours, mm. */
const apartMm = 14;
const mostInRow = 8;

const sizeOf = (part: Part): { readonly width: number; readonly height: number } => {
  const pose = { at: { x: 0, y: 0 }, rotation: 0, mirrored: false };
  const placed = placePart(part, sortByOrder(part.terminals), pose, false);
  return boxAround([...outlineCorners(placed), ...placed.spots.values()]);
};

/** Where each part's middle stands, from the first one's, mm. */
export const layRows = (parts: readonly Part[]): readonly Spot[] => {
  if (parts.length < 2) return parts.map(() => ({ x: 0, y: 0 }));
  const sizes = parts.map(sizeOf);
  const inRow = Math.min(mostInRow, Math.ceil(Math.sqrt(parts.length * 2)));
  const pitch = Math.max(...sizes.map(({ width }) => width)) + apartMm;
  const down = Math.max(...sizes.map(({ height }) => height)) + apartMm;
  return parts.map((_, index) => ({
    x: (index % inRow) * pitch,
    y: Math.floor(index / inRow) * down
  }));
};

/** A place beside what stands there, for whoever places by keys: right of the last part in its row, or
 *  below all of them where the row is full. */
export const freeSpot = (
  taken: readonly { readonly at: Spot; readonly width: number; readonly height: number }[],
  part: Part
): Spot => {
  const last = taken.at(-1);
  if (!last) return { x: 40, y: 40 };
  const { width, height } = sizeOf(part);
  const row = taken.filter(({ at }) => Math.abs(at.y - last.at.y) < last.height / 2 + 1);
  const right = Math.max(...row.map(({ at, width: wide }) => at.x + wide / 2));
  const left = Math.min(...taken.map(({ at, width: wide }) => at.x - wide / 2));
  const isFull = right - left > 320;
  if (!isFull) return { x: right + apartMm + width / 2, y: last.at.y };
  const bottom = Math.max(...taken.map(({ at, height: high }) => at.y + high / 2));
  return { x: left + width / 2, y: bottom + apartMm + height / 2 };
};
