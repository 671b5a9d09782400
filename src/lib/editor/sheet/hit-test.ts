// Which thing of the drawing lies under a pointer. Boxes in an rbush find the few candidates,
// then the exact distance decides; what is small and on top wins over what is large and below.
import RBush from 'rbush';
import type { DisplayItem, Layer, Shape, Subject } from '#drawing/display-list.ts';
import { pictureCorners } from '#drawing/picture-corners.ts';
import { boxAround } from '#drawing/pictorial/boxes.ts';
import type { Box, Place } from './viewport.ts';

interface Target {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly item: DisplayItem;
  /** One piece of a line: x1, y1, x2, y2. */
  readonly piece: readonly [number, number, number, number] | null;
}

/** Which layer's things a pointer prefers, best first. Layers not named here are never picked here. */
const preference: readonly Layer[] = [
  'terminals',
  'numbers',
  'wires',
  'supports',
  'grounds',
  'parts',
  'bodies'
];

export interface HitIndex {
  /** The item under `at` (mm) within `reachMm` of it, or null. */
  readonly find: (at: Place, reachMm: number) => DisplayItem | null;
  /** Items whose box touches `box` (mm). */
  readonly within: (box: Box) => ReadonlySet<DisplayItem>;
  /** The box around every item of a subject, or null where nothing is drawn of it. */
  readonly boxOf: (subject: Subject) => Box | null;
}

/** Distance from a point to a straight piece. */
export const distanceToPiece = (
  at: Place,
  [x1, y1, x2, y2]: readonly [number, number, number, number]
): number => {
  const dx = x2 - x1;
  const dy = y2 - y1;
  const squared = dx * dx + dy * dy;
  const along =
    squared === 0 ? 0 : Math.min(1, Math.max(0, ((at.x - x1) * dx + (at.y - y1) * dy) / squared));
  return Math.hypot(at.x - x1 - along * dx, at.y - y1 - along * dy);
};

/** The box around a shape; a text is taken at its widest guess, 0.62 of its height a letter. */
export const boxOfShape = (shape: Shape): Box => {
  switch (shape.kind) {
    case 'circle':
      return {
        x: shape.x - shape.r,
        y: shape.y - shape.r,
        width: 2 * shape.r,
        height: 2 * shape.r
      };
    case 'box':
      return { x: shape.x, y: shape.y, width: shape.width, height: shape.height };
    case 'text':
      return boxOfText(shape);
    case 'picture':
      return boxAround(pictureCorners(shape));
    case 'line': {
      const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
      for (let index = 0; index + 1 < shape.points.length; index += 2) {
        const x = shape.points[index] ?? 0;
        const y = shape.points[index + 1] ?? 0;
        box.minX = Math.min(box.minX, x);
        box.maxX = Math.max(box.maxX, x);
        box.minY = Math.min(box.minY, y);
        box.maxY = Math.max(box.maxY, y);
      }
      return { x: box.minX, y: box.minY, width: box.maxX - box.minX, height: box.maxY - box.minY };
    }
  }
};

const boxOfText = (shape: Extract<Shape, { kind: 'text' }>): Box => {
  const width = shape.text.length * shape.size * 0.62;
  const start = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? -width / 2 : -width;
  // A turned text is rare: a square about its foot holds it at every angle.
  if (shape.turn !== undefined && shape.turn % 180 !== 0) {
    return { x: shape.x - width, y: shape.y - width, width: 2 * width, height: 2 * width };
  }
  return {
    x: shape.x + start,
    y: shape.y - shape.size,
    width,
    height: shape.size * 1.3
  };
};

const targetsOf = (item: DisplayItem): readonly Target[] => {
  const { shape } = item;
  if (shape.kind !== 'line' || shape.closed === true) {
    const box = boxOfShape(shape);
    return [
      {
        minX: box.x,
        minY: box.y,
        maxX: box.x + box.width,
        maxY: box.y + box.height,
        item,
        piece: null
      }
    ];
  }
  const targets: Target[] = [];
  for (let index = 0; index + 3 < shape.points.length; index += 2) {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = shape.points.slice(index, index + 4);
    targets.push({
      minX: Math.min(x1, x2),
      minY: Math.min(y1, y2),
      maxX: Math.max(x1, x2),
      maxY: Math.max(y1, y2),
      item,
      piece: [x1, y1, x2, y2]
    });
  }
  return targets;
};

const distanceTo = (at: Place, target: Target): number => {
  if (target.piece !== null) return distanceToPiece(at, target.piece);
  if (target.item.shape.kind === 'circle') {
    const { x, y, r } = target.item.shape;
    return Math.max(0, Math.hypot(at.x - x, at.y - y) - r);
  }
  const outX = Math.max(target.minX - at.x, 0, at.x - target.maxX);
  const outY = Math.max(target.minY - at.y, 0, at.y - target.maxY);
  return Math.hypot(outX, outY);
};

const subjectKey = (subject: Subject): string => `${subject.kind} ${subject.id}`;

/** Indexes the items of a drawing for pointers, culling and bringing things into view. */
export const buildHitIndex = (items: readonly DisplayItem[]): HitIndex => {
  const tree = new RBush<Target>();
  const bySubject = new Map<string, Target[]>();
  const all: Target[] = [];
  for (const item of items) {
    const targets = targetsOf(item);
    all.push(...targets);
    if (item.subject === undefined) continue;
    const key = subjectKey(item.subject);
    const known = bySubject.get(key);
    if (known === undefined) bySubject.set(key, [...targets]);
    else known.push(...targets);
  }
  tree.load(all);
  return {
    find: (at, reachMm) => {
      let best: { item: DisplayItem; rank: number; distance: number } | null = null;
      const near = tree.search({
        minX: at.x - reachMm,
        minY: at.y - reachMm,
        maxX: at.x + reachMm,
        maxY: at.y + reachMm
      });
      for (const target of near) {
        const rank = preference.indexOf(target.item.layer);
        if (rank < 0 || target.item.subject === undefined) continue;
        const distance = distanceTo(at, target);
        if (distance > reachMm) continue;
        const better =
          best === null || rank < best.rank || (rank === best.rank && distance < best.distance);
        if (better) best = { item: target.item, rank, distance };
      }
      return best?.item ?? null;
    },
    within: (box) =>
      new Set(
        tree
          .search({
            minX: box.x,
            minY: box.y,
            maxX: box.x + box.width,
            maxY: box.y + box.height
          })
          .map((target) => target.item)
      ),
    boxOf: (subject) => {
      const targets = bySubject.get(subjectKey(subject));
      if (targets === undefined) return null;
      const minX = Math.min(...targets.map((target) => target.minX));
      const minY = Math.min(...targets.map((target) => target.minY));
      const maxX = Math.max(...targets.map((target) => target.maxX));
      const maxY = Math.max(...targets.map((target) => target.maxY));
      return { x: minX, y: minY, width: maxX - minX, height: maxY - minY };
    }
  };
};
