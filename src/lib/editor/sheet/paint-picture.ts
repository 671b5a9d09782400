// Puts a picture on a canvas: moved, turned, cut to what the photo shows, as clear as it is to be. Knows
// only the canvas's calls, so a test can record them.
import type { Shape } from '#drawing/display-list.ts';

type PictureContext = Pick<
  CanvasRenderingContext2D,
  | 'save'
  | 'restore'
  | 'transform'
  | 'beginPath'
  | 'moveTo'
  | 'lineTo'
  | 'closePath'
  | 'clip'
  | 'drawImage'
  | 'globalAlpha'
>;

/** Paints a picture in the millimetres of the sheet. */
export const paintPicture = (
  context: PictureContext,
  { matrix, width, height, opacity, clip }: Extract<Shape, { kind: 'picture' }>,
  source: CanvasImageSource
): void => {
  context.save();
  context.transform(...matrix);
  if (clip !== undefined) {
    context.beginPath();
    context.moveTo(clip[0] ?? 0, clip[1] ?? 0);
    for (let index = 2; index + 1 < clip.length; index += 2) {
      context.lineTo(clip[index] ?? 0, clip[index + 1] ?? 0);
    }
    context.closePath();
    context.clip();
  }
  context.globalAlpha *= opacity;
  context.drawImage(source, 0, 0, width, height);
  context.restore();
};
