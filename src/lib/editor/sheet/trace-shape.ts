// Puts one shape of a display list on a canvas: the path of a line, circle or box, or a text at
// its baseline. Knows only CanvasRenderingContext2D's calls, so a test can record them.
import type { Shape } from '#drawing/display-list.ts';
import { pictureCorners } from '#drawing/picture-corners.ts';

export type PathContext = Pick<
  CanvasRenderingContext2D,
  | 'beginPath'
  | 'moveTo'
  | 'lineTo'
  | 'quadraticCurveTo'
  | 'arc'
  | 'rect'
  | 'roundRect'
  | 'closePath'
>;

/** Corners smaller than this, mm, are drawn as points. */
const leastRadius = 0.02;

type LineShape = Extract<Shape, { kind: 'line' }>;

/** Begins a path and traces the outline of a shape; a text has none and leaves the path empty. */
export const traceShape = (context: PathContext, shape: Shape): void => {
  context.beginPath();
  switch (shape.kind) {
    case 'line':
      traceLine(context, shape);
      break;
    case 'circle':
      context.arc(shape.x, shape.y, shape.r, 0, 2 * Math.PI);
      break;
    case 'box':
      if (shape.round === undefined || shape.round === 0) {
        context.rect(shape.x, shape.y, shape.width, shape.height);
      } else {
        context.roundRect(shape.x, shape.y, shape.width, shape.height, shape.round);
      }
      break;
    case 'picture':
      traceLine(context, {
        kind: 'line',
        points: pictureCorners(shape).flatMap(({ x, y }) => [x, y]),
        closed: true
      });
      break;
    case 'text':
      break;
  }
};

const traceLine = (context: PathContext, { points, round = 0, closed }: LineShape): void => {
  context.moveTo(points[0] ?? 0, points[1] ?? 0);
  for (let index = 2; index + 1 < points.length; index += 2) {
    const at = { x: points[index] ?? 0, y: points[index + 1] ?? 0 };
    const before = { x: points[index - 2] ?? at.x, y: points[index - 1] ?? at.y };
    const [nextX, nextY] = [points[index + 2], points[index + 3]];
    if (nextX === undefined || nextY === undefined) context.lineTo(at.x, at.y);
    else traceCorner(context, before, at, { x: nextX, y: nextY }, round);
  }
  if (closed === true) context.closePath();
};

interface Spot {
  readonly x: number;
  readonly y: number;
}

const towards = (from: Spot, to: Spot, mm: number): Spot => {
  const share = mm / Math.max(Math.hypot(to.x - from.x, to.y - from.y), 1e-9);
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
};

// The same corner as in the SVG: it takes at most half of either leg, so that neighbours never overlap.
const traceCorner = (
  context: PathContext,
  before: Spot,
  at: Spot,
  after: Spot,
  round: number
): void => {
  const radius = Math.min(
    round,
    Math.hypot(before.x - at.x, before.y - at.y) / 2,
    Math.hypot(after.x - at.x, after.y - at.y) / 2
  );
  if (radius < leastRadius) {
    context.lineTo(at.x, at.y);
    return;
  }
  const start = towards(at, before, radius);
  const end = towards(at, after, radius);
  context.lineTo(start.x, start.y);
  context.quadraticCurveTo(at.x, at.y, end.x, end.y);
};
