// From a plan to places: each unit by itself, the biggest first, so that its neighbours can take up
// the order in which its lines leave; then the units among themselves; then all joined at the borders.
import type { Id } from '#document/index.ts';
import { buildFigure } from '../figures/build-figure.ts';
import { fitToLanes } from '../figures/fit-to-lanes.ts';
import type { Figure } from '../figures/figure.ts';
import type { Block } from '../presentation/blocks.ts';
import { passageOf, type Passage } from '../presentation/exits.ts';
import type { Link } from '../presentation/links.ts';
import { buildPartEnds, type Courses } from '../presentation/part-ends.ts';
import type { Plan } from '../presentation/plan.ts';
import type { Side } from '../presentation/sides.ts';
import {
  buildBlockGraph,
  figureNode,
  linesOfBlock,
  padding,
  partPort,
  partsInOrder,
  type BlockGraph,
  type Leaving,
  type Node,
  type Tuning
} from './block-graph.ts';
import { compactBlock } from './compact.ts';
import type { ElkGraph } from './engine.ts';
import { addLooseParts } from './loose-parts.ts';
import type { PlacedBlock } from './placed.ts';
import { readBlock } from './read-graph.ts';

/** Laid-out blocks by the text of their graph. */
export type BlockCache = Map<string, PlacedBlock>;

export interface ArrangeOptions {
  /** Lays one graph out; the caller sees to time and stop. */
  readonly lay: (graph: ElkGraph, name: string) => Promise<ElkGraph>;
  readonly cache?: BlockCache;
  readonly tuning: Tuning;
  /** Called when a block is laid out. */
  readonly onBlock?: (name: string) => void;
}

export interface Arrangement {
  readonly plan: Plan;
  readonly figures: ReadonlyMap<Id, Figure>;
  readonly passages: ReadonlyMap<string, Passage>;
  readonly placed: ReadonlyMap<string, PlacedBlock>;
}

/** The figure of every part that is drawn, its ports on lanes. */
export const buildFigures = (plan: Plan, courses: Courses): Map<Id, Figure> => {
  const ends = buildPartEnds(plan, courses);
  const figures = new Map<Id, Figure>();
  for (const id of plan.homes.keys()) {
    const request = {
      part: plan.partOf(id),
      terminals: plan.terminalsOf(id),
      ends: ends.get(id) ?? []
    };
    figures.set(id, fitToLanes(buildFigure(request)));
  }
  return figures;
};

const size = (block: Block): number =>
  block.parts.length + block.blocks.reduce((sum, child) => sum + size(child), 0);

/** Positions clockwise along the border, as elk counts them, from the exits of a laid-out neighbour. */
const orderFrom = (
  neighbours: readonly PlacedBlock[],
  leaving: readonly Leaving[]
): Map<string, number> | undefined => {
  const known = new Map<string, number>();
  neighbours.forEach((neighbour, turn) => {
    for (const [id, { x, y, side }] of neighbour.exits) {
      known.set(id, turn * 1e5 + (side === 'east' || side === 'west' ? y : x));
    }
  });
  if (!leaving.every(({ link }) => known.has(link.id))) return undefined;
  const bySide = new Map<Side, { id: string; at: number }[]>();
  for (const { link, side } of leaving) {
    const own = bySide.get(side) ?? [];
    own.push({ id: link.id, at: known.get(link.id) ?? 0 });
    bySide.set(side, own);
  }
  const order = new Map<string, number>();
  for (const side of ['north', 'east', 'south', 'west'] as const) {
    const own = bySide.get(side) ?? [];
    const clockwise = side === 'north' || side === 'east' ? 1 : -1;
    own.sort((a, b) => (a.at - b.at) * clockwise);
    for (const { id } of own) order.set(id, order.size);
  }
  return order;
};

const emptyBlock = ({ id }: Block): PlacedBlock => ({
  id,
  width: 0,
  height: 0,
  nodes: [],
  routes: new Map(),
  exits: new Map()
});

class Layer {
  readonly placed = new Map<string, PlacedBlock>();
  private readonly plan: Plan;
  private readonly figures: ReadonlyMap<Id, Figure>;
  private readonly passages: ReadonlyMap<string, Passage>;
  private readonly options: ArrangeOptions;

  constructor(arrangement: Omit<Arrangement, 'placed'>, options: ArrangeOptions) {
    this.plan = arrangement.plan;
    this.figures = arrangement.figures;
    this.passages = arrangement.passages;
    this.options = options;
  }

  async block(block: Block): Promise<PlacedBlock> {
    for (const child of [...block.blocks].sort((a, b) => size(b) - size(a))) {
      await this.block(child);
    }
    const { inside, leaving } = linesOfBlock(block, this.passages, this.plan.links.lines);
    const placed =
      block.blocks.length > 0
        ? await this.holder(block, inside, leaving)
        : await this.leaf(block, inside, leaving);
    this.placed.set(block.id, placed);
    this.options.onBlock?.(block.name);
    return placed;
  }

  /** One graph laid out and pulled together, or what came of it before. */
  private async run(
    block: Block,
    graph: BlockGraph,
    leaving: readonly Leaving[]
  ): Promise<PlacedBlock> {
    const { lay, cache } = this.options;
    const key = JSON.stringify(graph.graph);
    const known = cache?.get(key);
    if (known) return known;
    const result = await lay(graph.graph, block.name);
    const placed = compactBlock(readBlock(result, graph, leaving), padding[block.kind]);
    cache?.set(key, placed);
    return placed;
  }

  private async leaf(
    block: Block,
    inside: readonly Link[],
    leaving: readonly Leaving[]
  ): Promise<PlacedBlock> {
    if (block.parts.length === 0) return addLooseParts(emptyBlock(block), block, this.figures);
    const sides = new Map(leaving.map(({ link, side }) => [link.id, side]));
    const nodes = partsInOrder(this.plan, block).flatMap((id): Node[] => {
      const figure = this.figures.get(id);
      return figure ? [figureNode(id, figure, sides)] : [];
    });
    const parent = this.plan.parents.get(block.id);
    const neighbours = (parent?.blocks ?? []).flatMap(({ id }) => this.placed.get(id) ?? []);
    const order = neighbours.length > 0 ? orderFrom(neighbours, leaving) : undefined;
    const graph = buildBlockGraph(
      {
        block,
        nodes,
        inside,
        leaving,
        portOf: partPort,
        rankOf: (link, end) => this.plan.rankOf(link[end].part),
        ...(order ? { borderOrder: order } : {})
      },
      this.options.tuning
    );
    return addLooseParts(await this.run(block, graph, leaving), block, this.figures);
  }

  private async holder(
    block: Block,
    inside: readonly Link[],
    leaving: readonly Leaving[]
  ): Promise<PlacedBlock> {
    const childOf = (link: Link, end: 'from' | 'to'): Block | undefined =>
      this.passages.get(link.id)?.[end].find(({ block: own }) => block.blocks.includes(own))?.block;
    const nodes = block.blocks.flatMap((child): Node[] => {
      const placed = this.placed.get(child.id);
      if (!placed) return [];
      const ports = [...placed.exits].map(([id, { x, y, side }]) => ({
        id: `${child.id} ${id}`,
        x,
        y,
        side
      }));
      return [{ id: child.id, width: placed.width, height: placed.height, ports }];
    });
    const graph = buildBlockGraph(
      {
        block,
        nodes,
        inside,
        leaving,
        portOf: (link, end) => `${childOf(link, end)?.id ?? ''} ${link.id}`,
        rankOf: (link, end) => block.blocks.findIndex((child) => child === childOf(link, end))
      },
      this.options.tuning
    );
    return addLooseParts(await this.run(block, graph, leaving), block, this.figures);
  }
}

/** Lays a plan out once; `courses` is what an earlier layout taught about where the lines go. */
export const arrange = async (
  plan: Plan,
  courses: Courses,
  options: ArrangeOptions
): Promise<Arrangement> => {
  const passages = new Map(plan.links.lines.map((link) => [link.id, passageOf(plan, link)]));
  const figures = buildFigures(plan, courses);
  const layer = new Layer({ plan, figures, passages }, options);
  await layer.block(plan.sheet);
  return { plan, figures, passages, placed: layer.placed };
};
