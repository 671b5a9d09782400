// Lanes: wires that share a piece of their way run beside each other there, in the order that crosses
// least, and each keeps a slot of its own where many pass one place. Returns each wire's own line.
import type { Spot } from '../presentation/sides.ts';
import { directionAt, findCommonRuns } from './path-order.ts';
import { distance, dot, meetingOf, minus, plus, rightOf, times, unitOf } from './vectors.ts';
import type { Way, WayNode } from './way.ts';

export interface LaneOptions {
  /** Room between one wire's line and the next, mm. */
  readonly roomMm: number;
  /** A bundle of many wires draws together towards this width, mm, down to half the room. */
  readonly widestMm: number;
  /** Left out: by the sides that the ways turn off to. `rank`: by rank alone, to compare with. */
  readonly order?: 'rank';
}

/** A place where wires pass through slots along an axis. */
interface Gate {
  readonly node: WayNode;
  /** Right of the general direction, or outward from a corner. */
  readonly axis: Spot;
  /** Ways through it and how far to the right each wants to be. */
  readonly wishes: Map<number, number>;
  readonly slots: Map<number, number>;
}

/** A piece between two gates, seen from the smaller key to the greater. */
interface Link {
  readonly from: Gate;
  readonly to: Gate;
  readonly wishes: Map<number, number>;
}

/** Where one wire runs along a link. */
interface Lane {
  readonly at: Spot;
  readonly along: Spot;
}

const linkKey = (a: WayNode, b: WayNode): string =>
  a.key < b.key ? `${a.key} ${b.key}` : `${b.key} ${a.key}`;

class Lanes {
  private readonly gates = new Map<string, Gate>();
  private readonly links = new Map<string, Link>();
  private readonly lanes = new Map<string, ReadonlyMap<number, Lane>>();
  private readonly ways: readonly Way[];
  private readonly options: LaneOptions;

  constructor(ways: readonly Way[], options: LaneOptions) {
    this.ways = ways;
    this.options = options;
    this.listGates();
    this.listLinks();
    if (options.order === 'rank') this.wishByRank();
    else this.wishBySides();
    for (const gate of this.gates.values()) this.fillSlots(gate);
    for (const [key, link] of this.links) this.lanes.set(key, this.layLanes(link));
  }

  /** The corners of one wire's line: for each place of its way one, or two where it changes lanes. */
  cornersOf(index: number): Spot[][] {
    const nodes = this.ways[index]?.nodes ?? [];
    return nodes.map((node, place) => {
      if (node.kind === 'terminal') return [node.at];
      const before = nodes[place - 1];
      const after = nodes[place + 1];
      const came = before && this.lanes.get(linkKey(before, node))?.get(index);
      const goes = after && this.lanes.get(linkKey(node, after))?.get(index);
      const slot = this.slotOf(index, node);
      const footOf = (lane: Lane): Spot =>
        plus(lane.at, times(lane.along, dot(minus(slot, lane.at), lane.along)));
      if (!came || !goes) {
        const only = came ?? goes;
        return [only ? footOf(only) : slot];
      }
      const [a, b] = [footOf(came), footOf(goes)];
      const meeting = meetingOf(came.at, came.along, goes.at, goes.along);
      const most = 4 + 2 * Math.max(distance(a, node.at), distance(b, node.at));
      if (meeting && distance(meeting, node.at) < most) return [meeting];
      // Nearly straight on, but in another lane: it moves over just here, not all along the bundle.
      return [
        plus(a, times(unitOf(minus(before.at, node.at)), changeOver(before, node))),
        plus(b, times(unitOf(minus(after.at, node.at)), changeOver(node, after)))
      ];
    });
  }

  private listGates(): void {
    const directions = new Map<string, { node: WayNode; sum: Spot }>();
    for (const way of this.ways) {
      way.nodes.forEach((node, place) => {
        // Twice the angle, so that coming and going count as one direction.
        const { x, y } = directionAt(way, place);
        const doubled = { x: x * x - y * y, y: 2 * x * y };
        const known = directions.get(node.key);
        directions.set(node.key, { node, sum: known ? plus(known.sum, doubled) : doubled });
      });
    }
    for (const [key, { node, sum }] of directions) {
      const half = Math.atan2(sum.y, sum.x) / 2;
      const axis = node.outward ?? rightOf({ x: Math.cos(half), y: Math.sin(half) });
      this.gates.set(key, { node, axis, wishes: new Map(), slots: new Map() });
    }
    this.ways.forEach((way, index) => {
      for (const { key } of way.nodes) this.gates.get(key)?.wishes.set(index, 0);
    });
  }

  private listLinks(): void {
    this.ways.forEach(({ nodes }, index) => {
      nodes.slice(1).forEach((node, place) => {
        const before = nodes[place];
        if (!before || before.key === node.key) return;
        const key = linkKey(before, node);
        const [a, b] = before.key < node.key ? [before, node] : [node, before];
        const [from, to] = [this.gates.get(a.key), this.gates.get(b.key)];
        if (!from || !to) return;
        const link = this.links.get(key) ?? { from, to, wishes: new Map<number, number>() };
        link.wishes.set(index, 0);
        this.links.set(key, link);
      });
    });
    for (const [key, { wishes }] of this.links) if (wishes.size < 2) this.links.delete(key);
  }

  private wishByRank(): void {
    for (const { wishes } of [...this.gates.values(), ...this.links.values()]) {
      for (const index of wishes.keys()) wishes.set(index, this.ways[index]?.rank ?? 0);
    }
  }

  /** Every two wires that meet say on which side of the other each wants to be; the sums decide. */
  private wishBySides(): void {
    const seen = new Set<number>();
    for (const { wishes } of this.gates.values()) {
      const present = [...wishes.keys()];
      present.forEach((a, place) => {
        for (const b of present.slice(place + 1)) {
          const pair = a * this.ways.length + b;
          if (seen.has(pair)) continue;
          seen.add(pair);
          this.comparePair(a, b);
        }
      });
    }
  }

  private comparePair(a: number, b: number): void {
    const [first, second] = [this.ways[a], this.ways[b]];
    if (!first || !second) return;
    const add = (wishes: Map<number, number> | undefined, side: number): void => {
      if (!wishes?.has(a) || !wishes.has(b)) return;
      wishes.set(a, (wishes.get(a) ?? 0) + side);
      wishes.set(b, (wishes.get(b) ?? 0) - side);
    };
    for (const { from, to, side } of findCommonRuns(first, second)) {
      for (let place = from; place <= to; place++) {
        const node = first.nodes[place];
        const gate = node && this.gates.get(node.key);
        if (!node || !gate) continue;
        const isRight = dot(rightOf(directionAt(first, place)), gate.axis) >= 0;
        add(gate.wishes, isRight ? side : -side);
        const next = first.nodes[place + 1];
        if (place === to || !next) continue;
        add(this.links.get(linkKey(node, next))?.wishes, node.key < next.key ? side : -side);
      }
    }
  }

  private inOrder(wishes: ReadonlyMap<number, number>): number[] {
    const rankOf = (index: number): number => this.ways[index]?.rank ?? 0;
    return [...wishes].sort((a, b) => a[1] - b[1] || rankOf(a[0]) - rankOf(b[0])).map(([i]) => i);
  }

  /** Where each of some ways lies across, mm from the middle of the first, in their order. */
  private spread(order: readonly number[]): number[] {
    const { roomMm, widestMm } = this.options;
    const widths = order.map((index) => this.ways[index]?.widthMm ?? 0);
    const solid = widths.reduce((sum, width) => sum + width, 0);
    const gaps = Math.max(1, order.length - 1);
    const room = Math.max(roomMm / 2, Math.min(roomMm, (widestMm - solid) / gaps));
    let at = 0;
    return widths.map((width, place) => {
      if (place > 0) at += ((widths[place - 1] ?? 0) + width) / 2 + room;
      return at;
    });
  }

  private fillSlots({ node, wishes, slots }: Gate): void {
    const order = this.inOrder(wishes);
    const across = this.spread(order);
    const start = node.kind === 'corner' ? 0 : (across.at(-1) ?? 0) / 2;
    order.forEach((index, place) => {
      slots.set(index, node.kind === 'terminal' ? 0 : (across[place] ?? 0) - start);
    });
  }

  private slotOf(index: number, node: WayNode): Spot {
    const gate = this.gates.get(node.key);
    return gate ? plus(node.at, times(gate.axis, gate.slots.get(index) ?? 0)) : node.at;
  }

  private layLanes({ from, to, wishes }: Link): Map<number, Lane> {
    const order = this.inOrder(wishes);
    const across = this.spread(order);
    const width = across.at(-1) ?? 0;
    const anchorOf = ({ node, axis, slots }: Gate): Spot => {
      const own = order.map((index) => slots.get(index) ?? 0);
      return plus(node.at, times(axis, (Math.min(...own) + Math.max(...own)) / 2));
    };
    const [a, b] = [anchorOf(from), anchorOf(to)];
    const along = unitOf(minus(b, a));
    const right = rightOf(along);
    return new Map(
      order.map((index, place) => {
        const at = plus(a, times(right, (across[place] ?? 0) - width / 2));
        return [index, { at, along }];
      })
    );
  }
}

/** How far from a place a wire begins to change lanes, mm. */
const changeOver = (a: WayNode, b: WayNode): number => Math.min(4, distance(a.at, b.at) / 4);

/** The corners of each way's line, in the order of the ways: for each place of the way one or two.
 *  Terminals and loose ends are kept. */
export function layLines(ways: readonly Way[], options: LaneOptions): Spot[][][] {
  const lanes = new Lanes(ways, options);
  return ways.map((_, index) => lanes.cornersOf(index));
}
