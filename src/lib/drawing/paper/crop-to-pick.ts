// A piece of a drawing: what was picked with what stands round it, and a foot of its own with the classes, the
// cautions and the title block.
import type { ChassisDocument } from '#document/index.ts';
import { classBands } from '#study/index.ts';
import type { DisplayItem, DisplayList, Subject } from '../display-list.ts';
import type { Box } from '../figures/figure.ts';
import { boxOfShape } from '../item-boxes.ts';
import { buildCautions } from '../sheet/cautions-panel.ts';
import { composeSheet } from '../sheet/compose-sheet.ts';
import { buildLegend } from '../sheet/legend.ts';
import { buildTitleBlock } from '../sheet/title-block.ts';
import { clipLine } from './clip-line.ts';

/** Seen around what was picked, mm. */
const roundMm = 14;

const union = (boxes: readonly Box[]): Box => {
  const left = Math.min(...boxes.map(({ x }) => x));
  const top = Math.min(...boxes.map(({ y }) => y));
  return {
    x: left,
    y: top,
    width: Math.max(...boxes.map(({ x, width }) => x + width)) - left,
    height: Math.max(...boxes.map(({ y, height }) => y + height)) - top
  };
};
const grown = ({ x, y, width, height }: Box, by: number): Box => ({
  x: x - by,
  y: y - by,
  width: width + 2 * by,
  height: height + 2 * by
});
const holds = (outer: Box, inner: Box): boolean =>
  inner.x >= outer.x &&
  inner.y >= outer.y &&
  inner.x + inner.width <= outer.x + outer.width &&
  inner.y + inner.height <= outer.y + outer.height;
const meets = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
const common = (a: Box, b: Box): Box => {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)];
  return {
    x,
    y,
    width: Math.min(a.x + a.width, b.x + b.width) - x,
    height: Math.min(a.y + a.height, b.y + b.height) - y
  };
};

/** So many times the piece grows by what reaches into it: a socket is made of many shapes. */
const growths = 4;

/** The box grown so that what it cuts of parts is seen whole. */
const wholeParts = (items: readonly DisplayItem[], first: Box): Box => {
  const shapes = items
    .filter(({ subject, layer }) => subject?.kind === 'part' && layer !== 'numbers')
    .map(({ shape }) => boxOfShape(shape));
  let box = first;
  for (let turn = 0; turn < growths; turn++)
    box = union([box, ...shapes.filter((shape) => meets(box, shape))]);
  return grown(box, 3);
};

const keyOf = ({ kind, id }: Subject): string => `${kind} ${id}`;

/** The item as far as it lies in the box; what cannot be cut stays away where it is not wholly inside. */
const cut = (item: DisplayItem, box: Box): DisplayItem[] => {
  const { shape } = item;
  const own = boxOfShape(shape);
  if (holds(box, own)) return [item];
  if (!meets(box, own)) return [];
  if (shape.kind === 'box') return [{ ...item, shape: { ...shape, ...common(box, own) } }];
  if (shape.kind === 'line' && shape.closed !== true)
    return clipLine(shape.points, box).map((points, index) => ({
      ...item,
      id: index === 0 ? item.id : `${item.id}-${index}`,
      shape: { ...shape, points }
    }));
  // A photo is too large to lie inside; the frame of the piece covers what hangs over.
  return [];
};

export interface PieceWishes {
  /** What the piece shows, in words: "wire 12". */
  readonly name: string;
  readonly date?: string;
}

/** What was picked, cut out of a drawing without a foot. Null where none of it is on the drawing. */
export function cropToPick(
  list: DisplayList,
  picked: readonly Subject[],
  document: ChassisDocument,
  { name, date }: PieceWishes
): DisplayList | null {
  const keys = new Set(picked.map(keyOf));
  const mine = list.items.filter(({ subject }) => subject && keys.has(keyOf(subject)));
  if (mine.length === 0) return null;
  const first = grown(union(mine.map(({ shape }) => boxOfShape(shape))), roundMm);
  const box = wholeParts(list.items, first);
  const items = list.items
    .filter(({ layer }) => layer !== 'paper' && layer !== 'photos')
    .flatMap((item) => cut(item, box));
  const styles = new Set(items.map(({ style }) => style));
  const legend = buildLegend({
    bands: new Set(classBands.filter((band) => styles.has(`wire.${band}`))),
    marks: new Set(),
    atLeast: items.some(({ shape }) => shape.kind === 'text' && shape.text.startsWith('≥')),
    cables: styles.has('cable.casing'),
    mates: styles.has('mates'),
    leads: styles.has('lead')
  });
  const { identity, wires } = document;
  return composeSheet(items, box, [
    ...legend,
    buildCautions(document),
    buildTitleBlock(identity, Object.keys(wires).length, date, `A piece of the drawing: ${name}`)
  ]);
}
