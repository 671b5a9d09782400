// A block as a graph for elk. How parts are presented decides the picture: every end has a port of
// its own at a fixed place, lines run from lower to higher rank, and what leaves the block ends at a
// port on its border.
import type { Id } from '#document/index.ts';
import type { Figure } from '../figures/figure.ts';
import type { Block } from '../presentation/blocks.ts';
import type { Passage } from '../presentation/exits.ts';
import type { Link } from '../presentation/links.ts';
import { endId } from '../presentation/part-ends.ts';
import type { Plan } from '../presentation/plan.ts';
import type { Side } from '../presentation/sides.ts';
import type { ElkEdge, ElkGraph, ElkPort } from './engine.ts';

/** Room between things, mm. Lanes are as wide as a number's box, so that it fits between them. */
const spacing: Readonly<Record<string, number>> = {
  'elk.spacing.nodeNode': 7.2,
  'elk.spacing.edgeNode': 2.4,
  'elk.spacing.edgeEdge': 2.4,
  'elk.layered.spacing.nodeNodeBetweenLayers': 8,
  'elk.layered.spacing.edgeNodeBetweenLayers': 2.4,
  'elk.layered.spacing.edgeEdgeBetweenLayers': 2.4
};

/** Room inside a block's border; a unit has its name along the top. */
export const padding: Readonly<
  Record<Block['kind'], { top: number; side: number; bottom: number }>
> = {
  unit: { top: 10, side: 6, bottom: 6 },
  section: { top: 3, side: 3, bottom: 3 },
  sheet: { top: 0, side: 0, bottom: 0 }
};

const sideName: Readonly<Record<Side, string>> = {
  north: 'NORTH',
  east: 'EAST',
  south: 'SOUTH',
  west: 'WEST'
};

/** What a block's layout is asked to do; different answers are tried and measured. */
export interface Tuning {
  readonly seed: number;
  /** Whether parts of one layer keep the order of their ranks. */
  readonly keepsOrder: boolean;
}

const options = (block: Block, tuning: Tuning): Record<string, string> => {
  const { top, side, bottom } = padding[block.kind];
  return {
    'elk.algorithm': 'layered',
    'elk.direction': block.flow === 'down' ? 'DOWN' : 'RIGHT',
    'elk.edgeRouting': 'ORTHOGONAL',
    'elk.layered.nodePlacement.strategy': 'BRANDES_KOEPF',
    'elk.layered.considerModelOrder.strategy': tuning.keepsOrder ? 'PREFER_NODES' : 'NONE',
    'elk.padding': `[top=${top},left=${side},bottom=${bottom},right=${side}]`,
    'elk.randomSeed': String(tuning.seed),
    'elk.portConstraints': 'FIXED_SIDE',
    ...Object.fromEntries(Object.entries(spacing).map(([key, mm]) => [key, String(mm)]))
  };
};

const port = (id: string, side: Side, at?: { x: number; y: number }): ElkPort => ({
  id,
  width: 0,
  height: 0,
  ...(at ? { x: at.x, y: at.y } : {}),
  layoutOptions: { 'elk.port.side': sideName[side] }
});

/** A part, or a block that is already laid out: a box with its ports where they are. */
export interface Node {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly ports: readonly {
    readonly id: string;
    readonly x: number;
    readonly y: number;
    readonly side: Side;
  }[];
  readonly layer?: 'FIRST' | 'LAST';
}

const toElkNode = (node: Node): ElkGraph => ({
  id: node.id,
  width: node.width,
  height: node.height,
  ports: node.ports.map(({ id, x, y, side }) => port(id, side, { x, y })),
  layoutOptions: {
    'elk.portConstraints': 'FIXED_POS',
    ...(node.layer ? { 'elk.layered.layering.layerConstraint': node.layer } : {})
  }
});

/** A line within the block, or from a node to its border. Ends are port ids. */
export interface GraphLine {
  readonly link: Link;
  readonly source: string;
  readonly target: string;
  /** The line's own `from` is the target. */
  readonly isReversed: boolean;
}

export interface BlockGraph {
  readonly graph: ElkGraph;
  readonly lines: readonly GraphLine[];
}

export const exitPort = (link: Link): string => `exit ${link.id}`;

/** The mate of a plug in another unit lies beyond the border: the plug stands at that border. */
const layerOf = (figure: Figure, leaving: ReadonlyMap<string, Side>): Node['layer'] => {
  for (const { end, side } of figure.ports) {
    if (!/^(mates|trunk)-/.test(end)) continue;
    const exit = leaving.get(end.split('#')[0] ?? '');
    if (exit === 'west' && side === 'west') return 'FIRST';
    if (exit === 'east' && side === 'east') return 'LAST';
  }
  return undefined;
};

export interface Leaving {
  readonly link: Link;
  readonly side: Side;
  /** The end that lies inside the block. */
  readonly end: 'from' | 'to';
}

/** The lines that stay in a block and those that leave it. */
export const linesOfBlock = (
  block: Block,
  passages: ReadonlyMap<string, Passage>,
  links: readonly Link[]
): { inside: readonly Link[]; leaving: readonly Leaving[] } => {
  const inside: Link[] = [];
  const leaving: Leaving[] = [];
  for (const link of links) {
    const passage = passages.get(link.id);
    if (!passage) continue;
    if (passage.holder.id === block.id) inside.push(link);
    for (const end of ['from', 'to'] as const) {
      const exit = passage[end].find((one) => one.block.id === block.id);
      if (exit) leaving.push({ link, side: exit.side, end });
    }
  }
  return { inside, leaving };
};

interface GraphParts {
  readonly block: Block;
  readonly nodes: readonly Node[];
  readonly inside: readonly Link[];
  readonly leaving: readonly Leaving[];
  /** The port at which a line meets one of the nodes. */
  readonly portOf: (link: Link, end: 'from' | 'to') => string;
  /** Lines run from lower to higher. */
  readonly rankOf: (link: Link, end: 'from' | 'to') => number;
  /** The order of the ports along a side of the border, where the neighbour has fixed it already. */
  readonly borderOrder?: ReadonlyMap<string, number>;
}

/** The graph of one block: a root that holds the block with its border ports, nodes and edges. */
export const buildBlockGraph = (parts: GraphParts, tuning: Tuning): BlockGraph => {
  const { block, nodes, inside, leaving, portOf, rankOf, borderOrder } = parts;
  const lines: GraphLine[] = [];
  for (const link of inside) {
    const [a, b] = [rankOf(link, 'from'), rankOf(link, 'to')];
    const isReversed = a > b;
    const [source, target] = isReversed
      ? [portOf(link, 'to'), portOf(link, 'from')]
      : [portOf(link, 'from'), portOf(link, 'to')];
    lines.push({ link, source, target, isReversed });
  }
  for (const { link, side, end } of leaving) {
    const isIn = side === 'west' || side === 'north';
    const [inner, border] = [portOf(link, end), exitPort(link)];
    const [source, target] = isIn ? [border, inner] : [inner, border];
    // Reversed where the source of the edge lies nearer to the line's second end.
    lines.push({ link, source, target, isReversed: isIn === (end === 'from') });
  }
  const edges = lines.map(({ link, source, target }): ElkEdge => ({
    id: link.id,
    sources: [source],
    targets: [target]
  }));
  const isOrdered = borderOrder !== undefined && leaving.length > 0;
  const ports = leaving.map(({ link, side }) => {
    const own = port(exitPort(link), side);
    const index = borderOrder?.get(link.id);
    if (own.layoutOptions && index !== undefined)
      own.layoutOptions['elk.port.index'] = String(index);
    return own;
  });
  const layoutOptions = options(block, tuning);
  if (isOrdered) layoutOptions['elk.portConstraints'] = 'FIXED_ORDER';
  const inner: ElkGraph = {
    id: block.id,
    layoutOptions,
    ports,
    children: nodes.map(toElkNode),
    edges
  };
  const graph: ElkGraph = {
    id: 'root',
    layoutOptions: {
      'elk.algorithm': 'layered',
      'elk.json.shapeCoords': 'ROOT',
      'elk.json.edgeCoords': 'ROOT',
      'elk.padding': '[top=0,left=0,bottom=0,right=0]'
    },
    children: [inner]
  };
  return { graph, lines };
};

/** A part's figure as a node of its block. */
export const figureNode = (id: Id, figure: Figure, leaving: ReadonlyMap<string, Side>): Node => {
  const layer = layerOf(figure, leaving);
  return {
    id,
    width: figure.width,
    height: figure.height,
    ports: figure.ports.map(({ end, x, y, side }) => ({ id: end, x, y, side })),
    ...(layer ? { layer } : {})
  };
};

/** Parts of a block in the order of their ranks. */
export const partsInOrder = (plan: Plan, block: Block): Id[] =>
  [...block.parts].sort((a, b) => plan.rankOf(a) - plan.rankOf(b));

/** The port of a line's end at a part. */
export const partPort = (link: Link, end: 'from' | 'to'): string => endId(link, end);
