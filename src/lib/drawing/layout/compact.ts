// elk aligns parts along straight lines and leaves much paper empty. This pulls a laid-out block
// together, upwards and downwards: nothing that lies above another comes to lie below it, so every
// line keeps its neighbours and its crossings; only the room between them shrinks.
import type { Spot } from '../presentation/sides.ts';
import type { PlacedBlock } from './placed.ts';
import { cleanRoute } from './read-graph.ts';
import { findAbove, type Band } from './skyline.ts';
import { Settling, type Pull, type Rule, type System } from './settling.ts';
import { transposeBlock } from './transpose.ts';

/** Least room between two things, mm: as much as elk was asked for. */
export const room = { nodes: 7.2, nodeToLine: 2.4, lines: 2.4 } as const;

/** Things closer than this sideways must not slide past each other. */
const reach = 1.5;
/** Parts keep more room beside them: lines run there. */
const nodeReach = 2.8;

export interface CompactOptions {
  /** Room kept free inside the upper and lower border, mm. */
  readonly top: number;
  readonly bottom: number;
}

/** A node, or a level piece of a line: what moves up and down. */
interface Item extends Band {
  readonly isNode: boolean;
  group: number;
}

/** An upright piece between two things: what is to become short. The border has no item. */
interface Tie {
  readonly a: number | null;
  readonly aOffset: number;
  readonly b: number | null;
  readonly bOffset: number;
  readonly border?: 'top' | 'bottom';
}

const near = 1e-3;
const isLevel = (a: Spot, b: Spot): boolean =>
  Math.abs(a.y - b.y) < near && Math.abs(a.x - b.x) > near;

class Model {
  readonly items: Item[] = [];
  readonly ties: Tie[] = [];
  /** By line: for each of its pieces the item, or null for an upright one. */
  readonly pieces = new Map<string, (number | null)[]>();
  private readonly block: PlacedBlock;

  constructor(block: PlacedBlock) {
    this.block = block;
    for (const { x, y, width, height } of block.nodes) {
      this.add({
        x1: x - nodeReach,
        x2: x + width + nodeReach,
        y1: y,
        y2: y + height,
        isNode: true
      });
    }
    for (const [id, route] of block.routes) this.addRoute(id, route);
  }

  private add(item: Omit<Item, 'group'>): number {
    this.items.push({ ...item, group: this.items.length });
    return this.items.length - 1;
  }

  private join(a: number, b: number): void {
    const [to, from] = [this.items[a]?.group, this.items[b]?.group];
    if (to === undefined || from === undefined || to === from) return;
    for (const item of this.items) if (item.group === from) item.group = to;
  }

  private nodeAt({ x, y }: Spot): number | null {
    const found = this.block.nodes.findIndex(
      (node) =>
        x > node.x - near &&
        x < node.x + node.width + near &&
        y > node.y - near &&
        y < node.y + node.height + near
    );
    return found < 0 ? null : found;
  }

  private addRoute(id: string, route: readonly Spot[]): void {
    const pieces = route.slice(1).map((point, index): number | null => {
      const before = route[index] as Spot;
      if (!isLevel(before, point)) return null;
      const [x1, x2] = [Math.min(before.x, point.x), Math.max(before.x, point.x)];
      return this.add({ x1, x2, y1: point.y, y2: point.y, isNode: false });
    });
    this.pieces.set(id, pieces);
    const [first, last] = [route[0] as Spot, route.at(-1) as Spot];
    const start = this.nodeAt(first);
    const end = this.nodeAt(last);
    const [firstPiece, lastPiece] = [pieces[0], pieces.at(-1)];
    if (start !== null && firstPiece != null) this.join(start, firstPiece);
    if (end !== null && lastPiece != null) this.join(end, lastPiece);
    pieces.forEach((piece, index) => {
      if (piece !== null) return;
      const [a, b] = [route[index] as Spot, route[index + 1] as Spot];
      const upper = index === 0 ? start : (pieces[index - 1] ?? null);
      const lower = index === pieces.length - 1 ? end : (pieces[index + 1] ?? null);
      this.ties.push({
        a: upper,
        aOffset: a.y,
        b: lower,
        bOffset: b.y,
        ...(upper === null || lower === null
          ? { border: (upper === null ? a : b).y < near ? ('top' as const) : ('bottom' as const) }
          : {})
      });
    });
  }

  /** What must stay below what, between neighbours only: the rest follows from them. */
  rules(): Rule[] {
    const rules: Rule[] = [];
    const groups = new Map<number, Item[]>();
    for (const item of this.items) {
      const known = groups.get(item.group);
      if (known) known.push(item);
      else groups.set(item.group, [item]);
    }
    for (const { upper, lower } of findAbove(this.items, reach)) {
      const [a, b] = [this.items[upper] as Item, this.items[lower] as Item];
      if (a.group === b.group) continue;
      // A stub at the side of a node hides the node's own edge: what moves with it counts too.
      for (const one of groups.get(a.group) ?? []) {
        for (const two of groups.get(b.group) ?? []) {
          if ((one === a && two === b) || isAbove(one, two)) rules.push(ruleBetween(one, two));
        }
      }
    }
    return rules;
  }
}

const isAbove = (upper: Item, lower: Item): boolean =>
  upper.y2 <= lower.y1 + near && upper.x1 - reach < lower.x2 && upper.x2 + reach > lower.x1;

const ruleBetween = (upper: Item, lower: Item): Rule => {
  const wanted =
    upper.isNode && lower.isNode
      ? room.nodes
      : upper.isNode || lower.isNode
        ? room.nodeToLine
        : room.lines;
  // Where elk left less room, that much is enough.
  const now = lower.y1 - upper.y2;
  return { upper: upper.group, lower: lower.group, apart: Math.min(wanted, now) - now };
};

/** The model as numbers: what may move, what must stay below what, what pulls at what. */
const toSystem = (model: Model): System => {
  const { items, ties } = model;
  const extents = new Map<number, { y1: number; y2: number }>();
  for (const { group, y1, y2 } of items) {
    const known = extents.get(group) ?? { y1: Infinity, y2: -Infinity };
    extents.set(group, { y1: Math.min(known.y1, y1), y2: Math.max(known.y2, y2) });
  }
  const groupOf = (item: number | null): number | null =>
    item === null ? null : (items[item]?.group ?? null);
  const pulls: Pull[] = [];
  for (const { a, aOffset, b, bOffset, border } of ties) {
    const [from, to] = [groupOf(a), groupOf(b)];
    if (from === to) continue;
    // A tie to the border has one group only; the other end stands still at the border.
    if (from !== null) pulls.push({ group: from, other: to, apart: bOffset - aOffset, border });
    if (to !== null) pulls.push({ group: to, other: from, apart: aOffset - bOffset, border });
  }
  return { extents, rules: model.rules(), pulls };
};

/** How far each group moves down (up: negative). */
const solve = (
  model: Model,
  options: CompactOptions,
  height: number
): ReadonlyMap<number, number> => {
  const settling = new Settling(toSystem(model), options, height);
  settling.pushUp();
  settling.shorten();
  return settling.moves;
};

const compactUpright = (block: PlacedBlock, options: CompactOptions): PlacedBlock => {
  if (block.nodes.length === 0) return block;
  const model = new Model(block);
  const move = solve(model, options, block.height);
  const moveOf = (item: number): number => move.get(model.items[item]?.group ?? -1) ?? 0;
  const nodes = block.nodes.map((node, index) => ({ ...node, y: node.y + moveOf(index) }));
  const deepest = Math.max(
    ...model.items.map(({ y2, group }) => y2 + (move.get(group) ?? 0)),
    options.top
  );
  const height = deepest + options.bottom;
  const routes = new Map<string, Spot[]>();
  for (const [id, route] of block.routes) {
    const pieces = model.pieces.get(id) ?? [];
    const ends = endShifts(block, route, moveOf);
    routes.set(
      id,
      route.map(({ x, y }, index) => {
        const level = pieces[index] ?? pieces[index - 1] ?? null;
        if (level !== null) return { x, y: y + moveOf(level) };
        // The end of an upright piece: at a node, or at the border.
        const shift = index === 0 ? ends.first : ends.last;
        return { x, y: shift ?? (y < near ? y : height) };
      })
    );
  }
  const exits = new Map(
    [...block.exits].map(([id, exit]) => {
      if (exit.side === 'north') return [id, exit] as const;
      if (exit.side === 'south') return [id, { ...exit, y: height }] as const;
      const route = routes.get(id) ?? [];
      const end = [route[0], route.at(-1)].find((spot) => spot && Math.abs(spot.x - exit.x) < near);
      return [id, { ...exit, y: end?.y ?? exit.y }] as const;
    })
  );
  const cleaned = new Map([...routes].map(([id, route]) => [id, cleanRoute(route)]));
  return { ...block, height, nodes, routes: cleaned, exits };
};

/** Where the ends of a route come to lie if they are at nodes. */
const endShifts = (
  block: PlacedBlock,
  route: readonly Spot[],
  moveOf: (item: number) => number
): { first: number | null; last: number | null } => {
  const at = (spot: Spot | undefined): number | null => {
    if (!spot) return null;
    const index = block.nodes.findIndex(
      ({ x, y, width, height }) =>
        spot.x > x - near &&
        spot.x < x + width + near &&
        spot.y > y - near &&
        spot.y < y + height + near
    );
    return index < 0 ? null : spot.y + moveOf(index);
  };
  return { first: at(route[0]), last: at(route.at(-1)) };
};

const rounds = 2;

/** The block pulled together, up and down, then left and right, then up and down once more. */
export const compactBlock = (
  block: PlacedBlock,
  padding: { readonly top: number; readonly side: number; readonly bottom: number }
): PlacedBlock => {
  const upright = { top: padding.top, bottom: padding.bottom };
  const level = { top: padding.side, bottom: padding.side };
  let packed = block;
  for (let round = 0; round < rounds; round++) {
    packed = compactUpright(packed, upright);
    packed = transposeBlock(compactUpright(transposeBlock(packed), level));
  }
  return compactUpright(packed, upright);
};
