// A drawing with the edges of the sheets of paper that it will lie on, to be seen before it is printed.
import type { DisplayItem, DisplayList, PaperPlan } from '#drawing/index.ts';

/** The drawing on all its sheets. */
export const sheetOutlines = (list: DisplayList, plan: PaperPlan): DisplayList => {
  const boxes = plan.windows.map(({ box }) => box);
  const left = Math.min(list.bounds.x, ...boxes.map(({ x }) => x));
  const top = Math.min(list.bounds.y, ...boxes.map(({ y }) => y));
  const right = Math.max(...boxes.map(({ x, width }) => x + width));
  const bottom = Math.max(...boxes.map(({ y, height }) => y + height));
  const outlines = boxes.map((box, index): DisplayItem => ({
    id: `sheet-${index}`,
    layer: 'frame',
    order: 1_000_000 + index,
    style: 'hand.box',
    shape: { kind: 'box', x: box.x, y: box.y, width: box.width, height: box.height }
  }));
  return {
    items: [...list.items, ...outlines],
    bounds: { x: left, y: top, width: right - left, height: bottom - top }
  };
};
