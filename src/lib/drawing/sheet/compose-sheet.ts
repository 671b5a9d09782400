// Puts a sheet together: the drawing, below it the foot with its panels, paper under all and a border
// around; everything in the order in which it is painted.
import { layers, type DisplayItem, type DisplayList } from '../display-list.ts';
import { Sketch, type Box } from '../figures/figure.ts';
import { placeShape } from '../items.ts';
import type { Panel } from './panel.ts';
import { layoutFoot } from './sheet-layout.ts';

const leastWidth = 210;
const marginMm = 9;
const footGapMm = 8;

/** The foot is drawn bigger on a bigger sheet, so that it can be read when the whole is seen. */
const footScale = (width: number): number => Math.min(2, Math.max(1, width / 460));

interface Foot {
  readonly items: readonly DisplayItem[];
  readonly box: Box;
}

function layFoot(panels: readonly Panel[], drawing: Box, scale: number): Foot {
  const foot = layoutFoot(panels, Math.max(drawing.width, leastWidth) / scale);
  const width = foot.width * scale;
  const left = drawing.x + Math.min(0, (drawing.width - width) / 2);
  const top = drawing.y + drawing.height + footGapMm * scale;
  const items: DisplayItem[] = [];
  for (const { panel, x, y } of foot.places) {
    const sketch = new Sketch();
    panel.draw(sketch, 0, 0);
    for (const { key, style, shape } of sketch.items) {
      const place = { x: left + x * scale, y: top + y * scale, scale };
      items.push({
        id: `${panel.id}-${key}`,
        layer: 'frame',
        order: items.length + 1,
        style,
        shape: placeShape(shape, place)
      });
    }
  }
  return { items, box: { x: left, y: top, width, height: foot.height * scale } };
}

const union = (a: Box, b: Box): Box => {
  const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)];
  return {
    x,
    y,
    width: Math.max(a.x + a.width, b.x + b.width) - x,
    height: Math.max(a.y + a.height, b.y + b.height) - y
  };
};

const widened = ({ x, y, width, height }: Box, more: number): Box => ({
  x: x - more,
  y: y - more,
  width: width + 2 * more,
  height: height + 2 * more
});

const layerRank: ReadonlyMap<string, number> = new Map(layers.map((layer, rank) => [layer, rank]));

/** Items in the order in which they are painted. */
const sortItems = (items: readonly DisplayItem[]): DisplayItem[] =>
  items.toSorted(
    (a, b) => (layerRank.get(a.layer) ?? 0) - (layerRank.get(b.layer) ?? 0) || a.order - b.order
  );

/** The whole sheet. `drawing` is the box that holds the items; `panels` is null for a drawing without
 *  a foot and a border, as the editor shows it. */
export function composeSheet(
  items: readonly DisplayItem[],
  drawing: Box,
  panels: readonly Panel[] | null
): DisplayList {
  const scale = footScale(drawing.width);
  const margin = marginMm * scale;
  const foot = panels ? layFoot(panels, drawing, scale) : null;
  const bounds = widened(foot ? union(drawing, foot.box) : drawing, margin);
  const paper: DisplayItem = {
    id: 'paper',
    layer: 'paper',
    order: 0,
    style: 'paper',
    shape: { kind: 'box', ...bounds }
  };
  const border: DisplayItem = {
    id: 'border',
    layer: 'frame',
    order: 0,
    style: 'frame.line',
    shape: { kind: 'box', ...widened(bounds, -margin * 0.45) }
  };
  const all = [paper, ...(foot ? [border, ...foot.items] : []), ...items];
  return { items: sortItems(all), bounds };
}
