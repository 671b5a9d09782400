// Trays: parts that nobody placed yet stand in rows beside their unit, to be put where they belong.
import type { Box } from '../figures/figure.ts';
import type { Spot } from '../presentation/sides.ts';

/** Room between things on the sheet, mm. */
export const gapMm = 22;
const pad = 6;
/** Room for the tray's title. */
const headMm = 9;

export interface TraySize {
  readonly width: number;
  readonly height: number;
}

export interface Tray {
  readonly width: number;
  readonly height: number;
  /** The middle of each cell, from the tray's corner. */
  readonly middles: readonly Spot[];
}

/** Cells of these sizes in rows no wider than `wishWidth` where that can be. */
export function fillTray(sizes: readonly TraySize[], wishWidth: number): Tray {
  const middles: Spot[] = [];
  let [x, y, rowHeight, width] = [pad, headMm, 0, 0];
  for (const size of sizes) {
    if (x > pad && x + size.width + pad > wishWidth) {
      x = pad;
      y += rowHeight + pad / 2;
      rowHeight = 0;
    }
    middles.push({ x: x + size.width / 2, y: y + size.height / 2 });
    x += size.width + pad / 2;
    rowHeight = Math.max(rowHeight, size.height);
    width = Math.max(width, x + pad / 2);
  }
  return { width: Math.max(width, 60), height: y + rowHeight + pad, middles };
}

const overlaps = (a: Box, b: Box, apart: number): boolean =>
  a.x < b.x + b.width + apart &&
  b.x < a.x + a.width + apart &&
  a.y < b.y + b.height + apart &&
  b.y < a.y + a.height + apart;

/** A free place for a box beside another: to the right, below, to the left, above; else below all. */
export function findFreeBox(size: TraySize, beside: Box | null, taken: readonly Box[]): Box {
  const { width, height } = size;
  const near = gapMm / 2;
  const tries: Box[] = beside
    ? [
        { x: beside.x + beside.width + near, y: beside.y, width, height },
        { x: beside.x, y: beside.y + beside.height + near, width, height },
        { x: beside.x - width - near, y: beside.y, width, height },
        { x: beside.x, y: beside.y - height - near, width, height }
      ]
    : [];
  const free = tries.find((box) => taken.every((other) => !overlaps(box, other, near - 1)));
  if (free) return free;
  const left = taken.length > 0 ? Math.min(...taken.map(({ x }) => x)) : 0;
  const bottom =
    taken.length > 0 ? Math.max(...taken.map(({ y, height: high }) => y + high)) + gapMm : 0;
  return { x: left, y: bottom, width, height };
}
