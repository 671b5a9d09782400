// Shapes of figures and panels, moved and scaled to their place and given their ids.
import type { DisplayItem, Layer, Shape, Subject } from './display-list.ts';
import { roundMm, type Spot } from './presentation/sides.ts';

/** Shifts by `at` after scaling by `scale`. */
export interface Placement extends Spot {
  readonly scale?: number;
}

/** The shape at its place; millimetres are rounded so that files stay short and equal. */
export const placeShape = (shape: Shape, { x, y, scale = 1 }: Placement): Shape => {
  const px = (value: number) => roundMm(value * scale + x);
  const py = (value: number) => roundMm(value * scale + y);
  const size = (value: number) => roundMm(value * scale);
  switch (shape.kind) {
    case 'line':
      return {
        ...shape,
        points: shape.points.map((value, index) => (index % 2 === 0 ? px(value) : py(value))),
        ...(shape.round === undefined ? {} : { round: size(shape.round) })
      };
    case 'circle':
      return { ...shape, x: px(shape.x), y: py(shape.y), r: size(shape.r) };
    case 'box':
      return {
        ...shape,
        x: px(shape.x),
        y: py(shape.y),
        width: size(shape.width),
        height: size(shape.height),
        ...(shape.round === undefined ? {} : { round: size(shape.round) })
      };
    case 'text':
      return { ...shape, x: px(shape.x), y: py(shape.y), size: size(shape.size) };
    case 'picture': {
      const [a, b, c, d, e, f] = shape.matrix;
      return {
        ...shape,
        matrix: [a * scale, b * scale, c * scale, d * scale, px(e), py(f)]
      };
    }
  }
};

/** Collects the items of a display list, in the order in which they are painted within a layer. */
export class ItemList {
  readonly items: DisplayItem[] = [];

  add(
    id: string,
    layer: Layer,
    style: string,
    shape: Shape,
    more: { readonly subject?: Subject; readonly title?: string; readonly order?: number } = {}
  ): void {
    const { order = this.items.length, ...rest } = more;
    this.items.push({ id, layer, order, shape, style, ...rest });
  }
}
