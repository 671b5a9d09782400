// Wires of which neither end has been found: they have no place on the drawing, so their numbers
// stand in a row below it.
import type { Id } from '#document/index.ts';
import { Sketch } from './figures/figure.ts';
import { drawTag, tagWidth } from './figures/number-tag.ts';
import { numberBox, type } from './figures/sizes.ts';
import type { Plan } from './presentation/plan.ts';
import { textWidthMm } from './text-width.ts';

const look = { size: type.kind, face: 'sans' } as const;
const gap = 1.2;
const words = 'Neither end found:';

export interface LooseRow {
  readonly sketch: Sketch;
  readonly height: number;
}

/** The row from (0, 0), broken at `widthMm`; null where there is no such wire. */
export const buildLooseRow = (plan: Plan, widthMm: number): LooseRow | null => {
  const { loose } = plan.links;
  if (loose.length === 0) return null;
  const sketch = new Sketch();
  const lineHeight = numberBox.height + gap;
  const start = textWidthMm(words, look) + 2;
  sketch.text('note', words, 0, lineHeight / 2, { ...look, anchor: 'start', layer: 'grounds' });
  let x = start;
  let y = lineHeight / 2;
  loose.forEach((wire: Id) => {
    const tag = plan.tagOf(wire);
    const width = tagWidth(tag);
    if (x > start && x + width > widthMm) {
      x = start;
      y += lineHeight;
    }
    drawTag(sketch, tag, x + width / 2, y);
    x += width + gap;
  });
  return { sketch, height: y + lineHeight / 2 };
};
