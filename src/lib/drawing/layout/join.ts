// The laid-out blocks put together: every box at its place on the sheet, every line in one piece.
import type { Id } from '#document/index.ts';
import type { Box, Figure, Port } from '../figures/figure.ts';
import type { Block } from '../presentation/blocks.ts';
import type { Link } from '../presentation/links.ts';
import { endId } from '../presentation/part-ends.ts';
import type { Spot } from '../presentation/sides.ts';
import type { Arrangement } from './arrange.ts';
import { cleanRoute } from './read-graph.ts';

export interface DiagramPart {
  readonly id: Id;
  readonly box: Box;
  readonly figure: Figure;
}

export interface DiagramLine {
  readonly link: Link;
  /** From border to border of the parts at its ends, upright and level pieces only. */
  readonly route: readonly Spot[];
  /** Inside the part at either end, from the terminal to the border, the border's spot last. */
  readonly fromPath: readonly Spot[];
  readonly toPath: readonly Spot[];
}

export interface DiagramFrame {
  readonly block: Block;
  readonly box: Box;
  /** The upper left corner as it was laid out: places by hand count from there. */
  readonly corner: Spot;
}

/** The laid-out diagram in millimetres, and the box that holds all of it. */
export interface Geometry extends Box {
  readonly frames: readonly DiagramFrame[];
  readonly parts: readonly DiagramPart[];
  readonly lines: readonly DiagramLine[];
}

const shift = (spots: readonly Spot[], corner: Spot): Spot[] =>
  spots.map(({ x, y }) => ({ x: x + corner.x, y: y + corner.y }));

/** Where every block's corner lies on the sheet. */
const findCorners = (sheet: Block, { placed }: Arrangement): ReadonlyMap<string, Spot> => {
  const corners = new Map<string, Spot>([[sheet.id, { x: 0, y: 0 }]]);
  const walk = (block: Block): void => {
    const corner = corners.get(block.id) ?? { x: 0, y: 0 };
    const nodes = new Map((placed.get(block.id)?.nodes ?? []).map((node) => [node.id, node]));
    for (const child of block.blocks) {
      const node = nodes.get(child.id);
      corners.set(child.id, { x: corner.x + (node?.x ?? 0), y: corner.y + (node?.y ?? 0) });
      walk(child);
    }
  };
  walk(sheet);
  return corners;
};

/** All geometry of an arrangement in the sheet's millimetres. */
export const joinBlocks = (arrangement: Arrangement): Geometry => {
  const { plan, figures, passages, placed } = arrangement;
  const corners = findCorners(plan.sheet, arrangement);
  const frames: DiagramFrame[] = [];
  const parts: DiagramPart[] = [];
  const portsByEnd = new Map<string, { port: Port; corner: Spot }>();
  const walk = (block: Block): void => {
    const own = placed.get(block.id);
    const corner = corners.get(block.id);
    if (!own || !corner) return;
    if (block.kind === 'unit') {
      frames.push({ block, corner, box: { ...corner, width: own.width, height: own.height } });
    }
    for (const node of own.nodes) {
      const figure = figures.get(node.id);
      if (!figure) continue;
      const at = { x: corner.x + node.x, y: corner.y + node.y };
      parts.push({ id: node.id, figure, box: { ...at, width: node.width, height: node.height } });
      for (const port of figure.ports) portsByEnd.set(port.end, { port, corner: at });
    }
    block.blocks.forEach(walk);
  };
  walk(plan.sheet);
  const pathOf = (end: string): Spot[] => {
    const found = portsByEnd.get(end);
    return found ? shift(found.port.path, found.corner) : [];
  };
  const lines = plan.links.lines.flatMap((link): DiagramLine[] => {
    const passage = passages.get(link.id);
    if (!passage) return [];
    const piece = (block: Block): Spot[] =>
      shift(
        placed.get(block.id)?.routes.get(link.id) ?? [],
        corners.get(block.id) ?? { x: 0, y: 0 }
      );
    const route = [
      ...passage.from.flatMap(({ block }) => piece(block)),
      ...piece(passage.holder),
      ...[...passage.to].reverse().flatMap(({ block }) => piece(block))
    ];
    if (route.length < 2) return [];
    return [
      {
        link,
        route: cleanRoute(route),
        fromPath: pathOf(endId(link, 'from')),
        toPath: pathOf(endId(link, 'to'))
      }
    ];
  });
  const sheet = placed.get(plan.sheet.id);
  const [width, height] = [sheet?.width ?? 0, sheet?.height ?? 0];
  return { x: 0, y: 0, width, height, frames, parts, lines };
};
