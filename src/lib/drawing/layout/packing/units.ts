// The boxes round the units: closed up in their columns once their parts have places, as wide as each
// other, with the parts that no line runs to (ground lugs, spare sockets) in rows along the bottom.
import type { Id } from '#document/index.ts';
import type { Box, Figure } from '../../figures/figure.ts';
import type { Spot } from '../../presentation/sides.ts';
import type { DiagramFrame, DiagramPart, Geometry } from '../geometry.ts';
import { boundsOf } from '../run-lines.ts';
import { fromLanes, toLanes, type UnitOnFloor } from './on-floor.ts';
import { gutter } from './regions.ts';

/** Lanes inside a unit's border; its name stands along the top. */
const inside = { top: 5, side: 3, bottom: 3 } as const;
/** Lanes between loose parts. */
const looseGap = 2;

/** Places with the units of each column moved apart, or together, to the gap they should have.
 *  @param regions where each unit was to stand: those that begin at one x share a column */
export const stackUnits = (
  units: readonly UnitOnFloor[],
  regions: readonly Box[],
  boxes: readonly Box[],
  places: readonly Spot[]
): Spot[] => {
  const out = [...places];
  const first: number[] = [];
  units.reduce((sum, { parts }, unit) => ((first[unit] = sum), sum + parts.length), 0);
  const columns = new Map<number, number[]>();
  regions.forEach(({ x }, unit) => columns.set(x, [...(columns.get(x) ?? []), unit]));
  for (const column of columns.values()) {
    column.sort((a, b) => (regions[a]?.y ?? 0) - (regions[b]?.y ?? 0));
    let least = -Infinity;
    for (const unit of column) {
      const start = first[unit] ?? 0;
      const count = units[unit]?.parts.length ?? 0;
      if (count === 0) continue;
      const { y, height } = boundsOf(boxes.slice(start, start + count));
      const by = Math.max(0, least - y);
      for (let index = start; index < start + count; index++) {
        const place = out[index] as Spot;
        out[index] = { x: place.x, y: place.y + by };
      }
      least = y + by + height + gutter.units + looseRows(units[unit] as UnitOnFloor);
    }
  }
  return out;
};

/** Lanes to keep free below a unit for what no line runs to: one row of small parts. */
const looseRows = ({ block }: UnitOnFloor): number => (block.loose.length > 0 ? 10 : 0);

interface Boxed {
  readonly parts: readonly DiagramPart[];
  readonly frames: readonly DiagramFrame[];
}

/** Rows of loose parts below everything else of their unit. */
const layLoose = (
  ids: readonly Id[],
  figures: ReadonlyMap<Id, Figure>,
  under: Box | null,
  at: Spot
): DiagramPart[] => {
  const [left, widest] = under ? [toLanes(under.x), toLanes(under.width)] : [at.x, 60];
  let x = left;
  let y = under ? toLanes(under.y + under.height) + looseGap : at.y;
  let deep = 0;
  return ids.flatMap((id): DiagramPart[] => {
    const figure = figures.get(id);
    if (!figure) return [];
    const { width, height } = figure;
    if (x > left && x + toLanes(width) > left + widest) [x, y, deep] = [left, y + deep, 0];
    const box = { x: fromLanes(x), y: fromLanes(y), width, height };
    x += toLanes(width) + looseGap;
    deep = Math.max(deep, toLanes(height) + looseGap);
    return [{ id, figure, box }];
  });
};

const around = (box: Box): Box => ({
  x: box.x - fromLanes(inside.side),
  y: box.y - fromLanes(inside.top),
  width: box.width + fromLanes(2 * inside.side),
  height: box.height + fromLanes(inside.top + inside.bottom)
});

/** All parts of all units with the boxes round them.
 *  @param before boxes that are there already keep their corner, and only grow */
export const boxUnits = (
  units: readonly UnitOnFloor[],
  wired: readonly DiagramPart[],
  figures: ReadonlyMap<Id, Figure>,
  before: Geometry | null
): Boxed => {
  const known = new Map(before?.frames.map((frame) => [frame.block.id, frame]));
  const standing = new Map(before?.parts.map((part) => [part.id, part.box]));
  const parts: DiagramPart[] = [];
  const frames: DiagramFrame[] = [];
  let below = 0;
  let start = 0;
  for (const { block, parts: ids } of units) {
    const own = wired.slice(start, start + ids.length);
    start += ids.length;
    const stays = block.loose.flatMap((id): DiagramPart[] => {
      const [box, figure] = [standing.get(id), figures.get(id)];
      return box && figure ? [{ id, figure, box }] : [];
    });
    const open = block.loose.filter((id) => !stays.some((part) => part.id === id));
    const boxes = [...own, ...stays].map(({ box }) => box);
    const under = boxes.length > 0 ? boundsOf(boxes) : null;
    // A unit without a wire stands below the others.
    const lowest = Math.max(below, ...wired.map(({ box }) => toLanes(box.y + box.height)));
    const at = { x: 0, y: lowest + gutter.units + 4 };
    const loose = layLoose(open, figures, under, at);
    const all = [...own, ...stays, ...loose];
    if (all.length === 0) continue;
    if (under === null) below = Math.max(...all.map(({ box }) => toLanes(box.y + box.height)));
    const old = known.get(block.id);
    const box = around(boundsOf(all.map((part) => part.box)));
    parts.push(...all);
    frames.push({
      block,
      corner: old?.corner ?? { x: box.x, y: box.y },
      box: old ? boundsOf([old.box, box]) : box
    });
  }
  return { parts, frames: before ? frames : alignColumns(frames) };
};

/** Frames that stand above each other get one left and one right edge. */
const alignColumns = (frames: readonly DiagramFrame[]): DiagramFrame[] =>
  frames.map((frame) => {
    const column = frames.filter(
      ({ box }) =>
        box.x < frame.box.x + frame.box.width &&
        frame.box.x < box.x + box.width &&
        Math.max(box.width, frame.box.width) < 1.7 * Math.min(box.width, frame.box.width)
    );
    const { x, width } = boundsOf(column.map(({ box }) => box));
    const clear = frames.every(
      ({ box }) =>
        column.some((one) => one.box === box) || box.x >= x + width || box.x + box.width <= x
    );
    if (!clear) return frame;
    return {
      ...frame,
      corner: { x, y: frame.corner.y },
      box: { ...frame.box, x, width }
    };
  });
