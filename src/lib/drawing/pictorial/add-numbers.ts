// The numbers of the wires in their boxes, with the class each needs and, when asked for, its length.
import type { Id } from '#document/index.ts';
import { formatMm } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';
import { Sketch, type Box } from '../figures/figure.ts';
import { drawTag, tagWidth, type NumberTag } from '../figures/number-tag.ts';
import { buildTag } from '../presentation/plan.ts';
import { middleOfBox } from './boxes.ts';
import type { PictorialGeometry } from './pictorial-geometry.ts';
import { placeTags } from './place-tags.ts';
import type { SheetItems } from './sheet-items.ts';

function tagOf(study: Study, wire: Id, withLengths: boolean): NumberTag {
  const tag = buildTag(study, wire, false);
  const length = study.wires.get(wire)?.length;
  if (!withLengths || !length) return tag;
  return { ...tag, step: `${tag.step} · ${formatMm(Math.round(length.mm))}` };
}

/** Adds the numbers of all wires that are drawn.
 *  @param blocked boxes that must stay readable
 *  @returns the main box of each wire */
export function addNumbers(
  sheet: SheetItems,
  study: Study,
  { lines, clutter }: PictorialGeometry,
  blocked: readonly Box[],
  withLengths: boolean
): ReadonlyMap<Id, Box> {
  const tags = new Map(lines.map(({ wire }) => [wire, tagOf(study, wire, withLengths)] as const));
  const wishes = lines.map(({ wire, line }) => {
    const tag = tags.get(wire);
    return { id: wire, line, width: tag ? tagWidth(tag) : 0 };
  });
  const boxes = new Map<Id, Box>();
  const turns = new Map<Id, number>();
  for (const { id, box, upright, tie } of placeTags(wishes, blocked, clutter)) {
    const tag = tags.get(id);
    if (!tag) continue;
    const turn = (turns.get(id) ?? 0) + 1;
    turns.set(id, turn);
    if (turn === 1) boxes.set(id, box);
    const { x, y } = middleOfBox(box);
    const sketch = new Sketch();
    if (tie) sketch.line('part.fine', [tie.x, tie.y, x, y], { layer: 'numbers' });
    drawTag(sketch, tag, x, y, upright);
    sheet.addFigure(`number-${id}-${turn}`, sketch.items, () => sheet.ofWire(id));
  }
  return boxes;
}
