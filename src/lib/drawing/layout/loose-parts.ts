// Parts that no line runs to (ground lugs, spare sockets) stand in rows below the rest of their unit.
import type { Id } from '#document/index.ts';
import type { Figure } from '../figures/figure.ts';
import type { Block } from '../presentation/blocks.ts';
import type { PlacedBlock, PlacedNode } from './placed.ts';

const gap = 5;
const margin = 6;
const nameRoom = 10;

/** The block with its loose parts below, as wide as it was or as wide as they need. */
export const addLooseParts = (
  placed: PlacedBlock,
  block: Block,
  figures: ReadonlyMap<Id, Figure>
): PlacedBlock => {
  if (block.loose.length === 0) return placed;
  const isBare = placed.nodes.length === 0;
  const total = block.loose.reduce((sum, id) => sum + (figures.get(id)?.width ?? 0) + gap, 0);
  const width = Math.max(placed.width, isBare ? Math.min(140, total + 2 * margin) : 0);
  const nodes: PlacedNode[] = [];
  let x = margin;
  let y = isBare ? nameRoom : placed.height;
  let deep = 0;
  let wide = 0;
  for (const id of block.loose) {
    const figure = figures.get(id);
    if (!figure) continue;
    if (x > margin && x + figure.width > width - margin) {
      x = margin;
      y += deep + gap;
      deep = 0;
    }
    nodes.push({ id, x, y, width: figure.width, height: figure.height });
    x += figure.width + gap;
    wide = Math.max(wide, x - gap);
    deep = Math.max(deep, figure.height);
  }
  return {
    ...placed,
    width: Math.max(width, wide + margin),
    height: y + deep + margin,
    nodes: [...placed.nodes, ...nodes]
  };
};
