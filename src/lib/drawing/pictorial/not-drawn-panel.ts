// The wires that a pictorial cannot show from end to end, by name: nothing is silently missing.
import type { Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import {
  boldLook,
  drawHeading,
  drawLines,
  headingHeight,
  linesHeight,
  sizes,
  textLook,
  toLines,
  type Panel
} from '../sheet/panel.ts';

const width = 96;

/** "12 V3-5 to TS1-2". */
const wireWords = ({ index }: Study, wire: Wire): string =>
  `${wire.number === '' ? 'no number:' : wire.number} ${index.labelOf(wire.from)} to ${index.labelOf(wire.to)}`;

/** A panel that lists wires with an end that has no place, or none where there is no such wire. */
export function buildNotDrawn(study: Study, wires: readonly Wire[]): Panel[] {
  if (wires.length === 0) return [];
  const count = `${wires.length} ${wires.length === 1 ? 'wire' : 'wires'}`;
  const lines = [
    ...toLines(
      `${count} not drawn from end to end: an end has no place yet, or neither end was found.`,
      width,
      boldLook
    ),
    ...toLines(wires.map((wire) => wireWords(study, wire)).join('; '), width, textLook, {
      above: sizes.small * 0.3
    })
  ];
  return [
    {
      id: 'not-drawn',
      width,
      height: headingHeight + linesHeight(lines),
      draw: (sketch, x, y) => {
        drawHeading(sketch, 'Not drawn', x, y, width);
        drawLines(sketch, lines, x, y + headingHeight);
      }
    }
  ];
}
