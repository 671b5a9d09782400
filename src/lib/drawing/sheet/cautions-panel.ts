// The cautions that apply, in words, on every sheet.
import { cautionsFor } from '#checks/index.ts';
import type { ChassisDocument } from '#document/index.ts';
import {
  boldLook,
  drawLines,
  linesHeight,
  sizes,
  textLook,
  toLines,
  type Line,
  type Panel
} from './panel.ts';

const width = 96;
const pad = 3;

/** The panel of cautions for a document. */
export const buildCautions = (document: ChassisDocument): Panel => {
  const inner = width - 2 * pad;
  const lines: Line[] = cautionsFor(document).flatMap(({ short }, index) =>
    toLines(short, inner, index === 0 ? boldLook : textLook, {
      style: 'caution.text',
      above: index === 0 ? 0 : sizes.small * 0.45
    })
  );
  const height = linesHeight(lines) + 2 * pad;
  return {
    id: 'cautions',
    width,
    height,
    draw: (sketch, x, y) => {
      sketch.box('caution.box', { x, y, width, height }, 1, { layer: 'frame' });
      drawLines(sketch, lines, x + pad, y + pad);
    }
  };
};
