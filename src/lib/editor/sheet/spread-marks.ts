// The numbered marks of findings stay legible when the paper is far away: they keep their size on
// screen, and those that would lie on each other move aside. The first, which are the worst, stay.
import type { DisplayItem } from '#drawing/display-list.ts';
import type { Place } from './viewport.ts';

/** A mark is never smaller on screen than this radius. */
export const leastMarkPx = 8.5;
/** Between two marks that moved aside. */
const gapPx = 1;

export interface Mark extends Place {
  /** Of the finding: the subject's id. */
  readonly id: string;
  readonly radiusMm: number;
  readonly item: DisplayItem;
}

export interface SpreadMark extends Mark {
  /** How far it moved, mm. */
  readonly shift: Place;
  /** How many times its own size it is painted. */
  readonly grow: number;
}

/** The marks of a drawing, in the order of their numbers. */
export const marksOf = (items: readonly DisplayItem[]): readonly Mark[] =>
  items.flatMap((item) =>
    item.layer === 'findings' && item.shape.kind === 'circle' && item.subject !== undefined
      ? [{ id: item.subject.id, x: item.shape.x, y: item.shape.y, radiusMm: item.shape.r, item }]
      : []
  );

/** Places to try, nearest first: on rings of six, twelve, eighteen about the mark's own place. */
const ringPlaces = (step: number): Place[] => {
  const places: Place[] = [{ x: 0, y: 0 }];
  for (let ring = 1; ring <= 4; ring++) {
    for (let turn = 0; turn < ring * 6; turn++) {
      const angle = (turn / (ring * 6)) * 2 * Math.PI;
      places.push({ x: ring * step * Math.cos(angle), y: ring * step * Math.sin(angle) });
    }
  }
  return places;
};

/** The marks as they are painted at a scale (pixels per mm). Pure; the same input gives the same places. */
export const spreadMarks = (
  marks: readonly Mark[],
  scale: number
): ReadonlyMap<string, SpreadMark> => {
  const spread = new Map<string, SpreadMark>();
  const taken: (Place & { readonly reach: number })[] = [];
  for (const mark of marks) {
    const grow = Math.max(1, leastMarkPx / (mark.radiusMm * scale));
    const reach = mark.radiusMm * grow;
    const isFree = ({ x, y }: Place): boolean =>
      taken.every((other) => {
        const distance = Math.hypot(mark.x + x - other.x, mark.y + y - other.y);
        return distance >= (reach + other.reach) * 0.98;
      });
    const shift = ringPlaces(2 * reach + gapPx / scale).find(isFree) ?? { x: 0, y: 0 };
    taken.push({ x: mark.x + shift.x, y: mark.y + shift.y, reach });
    spread.set(mark.id, { ...mark, shift, grow });
  }
  return spread;
};

/** The mark under a place on the drawing, or null. */
export const findMarkAt = (
  marks: ReadonlyMap<string, SpreadMark>,
  at: Place,
  reachMm: number
): DisplayItem | null => {
  for (const { x, y, shift, radiusMm, grow, item } of marks.values()) {
    const distance = Math.hypot(at.x - x - shift.x, at.y - y - shift.y);
    if (distance <= radiusMm * grow + reachMm) return item;
  }
  return null;
};
