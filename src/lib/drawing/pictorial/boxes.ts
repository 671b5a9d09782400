// Upright boxes around things on the sheet.
import type { Shape } from '../display-list.ts';
import { pictureCorners } from '../picture-corners.ts';
import type { Box } from '../figures/figure.ts';
import type { Spot } from '../presentation/sides.ts';
import { textWidthMm } from '../text-width.ts';

/** The smallest box that holds all of some places; there must be at least one. */
export function boxAround(spots: readonly Spot[]): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of spots) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** The box, wider by `more` all round. */
export const widened = ({ x, y, width, height }: Box, more: number): Box => ({
  x: x - more,
  y: y - more,
  width: width + 2 * more,
  height: height + 2 * more
});

export const cornersOf = ({ x, y, width, height }: Box): Spot[] => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height }
];

export const middleOfBox = ({ x, y, width, height }: Box): Spot => ({
  x: x + width / 2,
  y: y + height / 2
});

/** Places that span a shape. A text is taken as if it were not turned. */
export function spotsOf(shape: Shape): Spot[] {
  switch (shape.kind) {
    case 'line':
      return shape.points.flatMap((x, index) =>
        index % 2 === 0 ? [{ x, y: shape.points[index + 1] ?? 0 }] : []
      );
    case 'circle':
      return [
        { x: shape.x - shape.r, y: shape.y - shape.r },
        { x: shape.x + shape.r, y: shape.y + shape.r }
      ];
    case 'box':
      return [
        { x: shape.x, y: shape.y },
        { x: shape.x + shape.width, y: shape.y + shape.height }
      ];
    case 'text': {
      const width = textWidthMm(shape.text, shape);
      const left = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? -width / 2 : -width;
      return [
        { x: shape.x + left, y: shape.y - shape.size },
        { x: shape.x + left + width, y: shape.y + shape.size * 0.3 }
      ];
    }
    case 'picture':
      return pictureCorners(shape);
  }
}
