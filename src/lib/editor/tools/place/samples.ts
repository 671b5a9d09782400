// Each sort of part as a small picture for the palette: drawn by the same hand as on the sheet.
import { sortByOrder } from '#document/order.ts';
import { drawPart } from '#drawing/pictorial/draw-part.ts';
import { placePart } from '#drawing/pictorial/placed-part.ts';
import type { PreviewShape } from '../tool.ts';
import { buildOrdered } from './build-parts.ts';
import { partSorts } from './part-sorts.ts';
import { readOrders } from './read-order.ts';

const pose = { at: { x: 0, y: 0 }, rotation: 0, mirrored: false } as const;

const draw = (example: string): readonly PreviewShape[] => {
  const reading = readOrders(example);
  let count = 0;
  const [part] = buildOrdered(
    reading.ok ? reading.orders.slice(0, 1) : [],
    { parts: {} },
    {
      unit: '',
      makeId: (kind) => `${kind.charAt(0)}${(count += 1)}`
    }
  );
  if (!part) return [];
  const placed = placePart(part, sortByOrder(part.terminals), pose, false);
  const shapes = drawPart(placed, { used: new Set(placed.spots.keys()) });
  return shapes.flatMap(({ shape, style }) => (shape.kind === 'text' ? [] : [{ shape, style }]));
};

const drawn = new Map<string, readonly PreviewShape[]>();

export const sampleShapes = (sortId: string): readonly PreviewShape[] => {
  const known = drawn.get(sortId);
  if (known) return known;
  const example = partSorts.find(({ id }) => id === sortId)?.example;
  const shapes = example === undefined ? [] : draw(example);
  drawn.set(sortId, shapes);
  return shapes;
};
