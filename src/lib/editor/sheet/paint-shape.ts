// Paints one shape of a display list on a canvas, in millimetres: the sheet on screen and the picture that is
// saved are painted alike.
import type { PictureAsset, Shape } from '#drawing/display-list.ts';
import { pictureFrame } from '#drawing/picture-corners.ts';
import { styleOf, type PaperTheme, type Style } from '#drawing/styles.ts';
import { paintPicture } from './paint-picture.ts';
import { traceShape } from './trace-shape.ts';

/** The pixels of a picture, or null while they are not there. */
export type PictureSource = (asset: PictureAsset) => CanvasImageSource | null;

/** Text smaller than this many pixels is left out: it could not be read and costs the most. */
const leastTextPx = 3;
/** A line is never thinner on screen than this many pixels. */
const leastLinePx = 0.6;
const faces = {
  sans: '"IBM Plex Sans", system-ui, sans-serif',
  mono: '"IBM Plex Mono", ui-monospace, monospace'
} as const;

const colourOf = (colour: string | undefined): string | undefined =>
  colour === 'none' ? undefined : colour;

export interface Palette {
  readonly theme: PaperTheme;
  /** Pixels for a millimetre. */
  readonly scale: number;
  readonly pictures: PictureSource;
}

/** Paints a shape; a picture that is not there as a frame with its name. */
export const paint = (
  raw: CanvasRenderingContext2D,
  shape: Shape,
  style: Style,
  palette: Palette
): void => {
  const { scale } = palette;
  if (shape.kind === 'picture') {
    const source = palette.pictures(shape.asset);
    if (source !== null) return paintPicture(raw, shape, source);
    for (const part of pictureFrame(shape)) {
      paint(raw, part.shape, styleOf(part.style, palette.theme), palette);
    }
    return;
  }
  if (shape.kind === 'text') {
    if (shape.size * scale < leastTextPx) return;
    raw.font = `${shape.bold === true ? 600 : 400} ${shape.size}px ${faces[shape.face]}`;
    raw.textAlign = shape.anchor === 'start' ? 'left' : shape.anchor === 'end' ? 'right' : 'center';
    raw.textBaseline = 'alphabetic';
    raw.fillStyle = colourOf(style.fill) ?? style.stroke ?? '#000';
    if (shape.turn === undefined) {
      raw.fillText(shape.text, shape.x, shape.y);
      return;
    }
    raw.save();
    raw.translate(shape.x, shape.y);
    raw.rotate((shape.turn * Math.PI) / 180);
    raw.fillText(shape.text, 0, 0);
    raw.restore();
    return;
  }
  traceShape(raw, shape);
  const isOpen = shape.kind === 'line' && shape.closed !== true;
  const fill = isOpen ? undefined : colourOf(style.fill);
  if (fill !== undefined) {
    raw.fillStyle = fill;
    raw.fill();
  }
  const stroke = colourOf(style.stroke);
  if (stroke === undefined) return;
  raw.lineJoin = 'round';
  raw.lineCap = style.cap ?? 'butt';
  raw.setLineDash(style.dash === undefined ? [] : [...style.dash]);
  raw.strokeStyle = stroke;
  raw.lineWidth = Math.max(style.width ?? 0.25, leastLinePx / scale);
  raw.stroke();
};
