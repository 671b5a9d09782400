// The box around a drawn shape: for what must not be covered, and for the bounds of a list.
import type { Shape } from './display-list.ts';
import type { Box } from './figures/figure.ts';
import { boxAround } from './pictorial/boxes.ts';
import { pictureCorners } from './picture-corners.ts';
import { textWidthMm } from './text-width.ts';

const around = (xs: readonly number[], ys: readonly number[]): Box => {
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
};

/** The upright box around a shape, mm, without the width of its line. */
export const boxOfShape = (shape: Shape): Box => {
  switch (shape.kind) {
    case 'box':
      return { x: shape.x, y: shape.y, width: shape.width, height: shape.height };
    case 'circle':
      return {
        x: shape.x - shape.r,
        y: shape.y - shape.r,
        width: 2 * shape.r,
        height: 2 * shape.r
      };
    case 'line': {
      const xs = shape.points.filter((_, index) => index % 2 === 0);
      const ys = shape.points.filter((_, index) => index % 2 === 1);
      return around(xs, ys);
    }
    case 'picture':
      return boxAround(pictureCorners(shape));
    case 'text': {
      const width = textWidthMm(shape.text, shape);
      const left = shape.anchor === 'start' ? 0 : shape.anchor === 'end' ? -width : -width / 2;
      const corners = [
        [left, -shape.size * 0.78],
        [left + width, -shape.size * 0.78],
        [left, shape.size * 0.22],
        [left + width, shape.size * 0.22]
      ] as const;
      const turn = ((shape.turn ?? 0) * Math.PI) / 180;
      const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
      return around(
        corners.map(([x, y]) => shape.x + x * cos - y * sin),
        corners.map(([x, y]) => shape.y + x * sin + y * cos)
      );
    }
  }
};
