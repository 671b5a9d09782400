// The small box that carries a wire's number and the class step it needs: on the wire itself, and
// beside the marks of grounded and unknown ends.
import type { Id } from '#document/index.ts';
import type { ClassBand } from '#study/index.ts';
import { textWidthMm } from '../text-width.ts';
import type { Sketch } from './figure.ts';
import { numberBox, type } from './sizes.ts';

export interface NumberTag {
  readonly wire: Id;
  readonly number: string;
  /** "600", "25k", "≥1k", "?"; empty where the number stands alone. */
  readonly step: string;
  readonly band: ClassBand;
}

/** A class step as it stands on a wire: "600", "5k", "25k". */
export const formatStep = (volts: number): string =>
  volts < 1000 ? String(volts) : `${Number((volts / 1000).toPrecision(3))}k`;

const numberLook = { size: type.number, face: 'mono', bold: true } as const;
const stepLook = { size: type.step, face: 'mono' } as const;

/** Width of the box, mm. */
export const tagWidth = ({ number, step }: Pick<NumberTag, 'number' | 'step'>): number =>
  2 * numberBox.pad +
  textWidthMm(number, numberLook) +
  (step === '' ? 0 : numberBox.gap + textWidthMm(step, stepLook));

/** Draws the box with its middle at (x, y); upright it reads from below. */
export const drawTag = (
  sketch: Sketch,
  tag: NumberTag,
  x: number,
  y: number,
  upright = false
): void => {
  const width = tagWidth(tag);
  const { height, pad, gap, round } = numberBox;
  const marks = { layer: 'numbers', wire: tag.wire } as const;
  const [wide, high] = upright ? [height, width] : [width, height];
  const box = { x: x - wide / 2, y: y - high / 2, width: wide, height: high };
  sketch.box(`number.${tag.band}.box`, box, round, marks);
  const put = (
    style: string,
    text: string,
    along: number,
    look: typeof numberLook | typeof stepLook
  ) => {
    const spot = upright ? { x, y: y + width / 2 - along } : { x: x - width / 2 + along, y };
    const turn = upright ? { turn: -90 } : {};
    sketch.text(style, text, spot.x, spot.y, { ...look, anchor: 'start', ...marks, ...turn });
  };
  put(`number.${tag.band}.text`, tag.number, pad, numberLook);
  if (tag.step === '') return;
  put(
    `number.${tag.band}.step`,
    tag.step,
    pad + textWidthMm(tag.number, numberLook) + gap,
    stepLook
  );
};
