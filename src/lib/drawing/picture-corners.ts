// The edge of a picture on the sheet.
import type { Affine, Shape } from './display-list.ts';
import type { Spot } from './presentation/sides.ts';

const mapSpot = ([a, b, c, d, e, f]: Affine, x: number, y: number): Spot => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f
});

/** The corners of what a picture shows, in turn, mm of the sheet. */
export function pictureCorners({
  matrix,
  width,
  height,
  clip = [0, 0, width, 0, width, height, 0, height]
}: Extract<Shape, { kind: 'picture' }>): Spot[] {
  return clip.flatMap((x, index) =>
    index % 2 === 0 ? [mapSpot(matrix, x, clip[index + 1] ?? 0)] : []
  );
}

const nameSizeMm = 5;

/** What stands for a picture that a writer does not have: its edge, and its name in the middle. */
export function pictureFrame(shape: Extract<Shape, { kind: 'picture' }>): readonly {
  readonly style: string;
  readonly shape: Shape;
}[] {
  const corners = pictureCorners(shape);
  const { matrix, width, height, name } = shape;
  const { x, y } = mapSpot(matrix, width / 2, height / 2);
  return [
    {
      style: 'photo.frame',
      shape: { kind: 'line', points: corners.flatMap((spot) => [spot.x, spot.y]), closed: true }
    },
    {
      style: 'photo.name',
      shape: {
        kind: 'text',
        x,
        y,
        text: name,
        size: nameSizeMm,
        anchor: 'middle',
        face: 'sans'
      }
    }
  ];
}
