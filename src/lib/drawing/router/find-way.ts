// The cheapest way of one wire over the raster: A* over nodes and headings. Length, bends, crossings
// and closeness to parts have their prices; walls cannot be passed, and other wires only where that
// is allowed at a price, to learn which of them should give way.
import type { Raster } from './raster.ts';

/** 0 east, 1 south, 2 west, 3 north. */
export type Heading = 0 | 1 | 2 | 3;

export const back = (heading: Heading): Heading => ((heading + 2) & 3) as Heading;

/** In lanes: what a bend, a crossing and a node of another wire cost beside a step's 1. */
export const price = { bend: 5, crossing: 12, conflict: 40 } as const;

export interface WayEnd {
  readonly node: number;
  /** Out of the part. */
  readonly heading: Heading;
}

export interface WayOptions {
  /** The number of the wire whose way it is; what is its own is not in its way. */
  readonly wire: number;
  /** Whether other wires may be run over, each node at the price of a conflict. */
  readonly overOthers?: boolean;
}

const bendsLeft = (ahead: number, aside: number, along: number, turn: number): number => {
  // `turn` quarter turns lie between this heading and the last; `along` is how far the goal lies
  // ahead in the last heading.
  if (turn === 0) return aside === 0 && ahead >= 0 ? 0 : ahead > 0 ? 2 : 4;
  if (turn === 2) return aside === 0 ? 4 : 2;
  return ahead >= 0 && along >= 0 ? 1 : 3;
};

export class WayFinder {
  private readonly raster: Raster;
  private readonly cost: Int32Array;
  private readonly stamp: Uint16Array;
  private readonly cameBy: Uint8Array;
  private readonly isDone: Uint8Array;
  private generation = 0;
  private readonly buckets: number[][] = [];

  constructor(raster: Raster) {
    this.raster = raster;
    const states = raster.columns * raster.rows * 4;
    this.cost = new Int32Array(states);
    this.stamp = new Uint16Array(states);
    this.cameBy = new Uint8Array(states);
    this.isDone = new Uint8Array(states);
  }

  /** Corners of the way as nodes, ends included; null where there is none. */
  find(from: WayEnd, to: WayEnd, { wire, overOthers = false }: WayOptions): number[] | null {
    const { cost, stamp, cameBy, isDone, buckets } = this;
    const { columns, levelWalls, uprightWalls, levelWire, uprightWire, toll } = this.raster;
    if (++this.generation > 65_000) {
      stamp.fill(0);
      this.generation = 1;
    }
    const { generation } = this;
    const steps = [1, columns, -1, -columns];
    const goalRow = Math.floor(to.node / columns);
    const goalColumn = to.node - goalRow * columns;
    const lastHeading = back(to.heading);
    const guess = (node: number, heading: number): number => {
      const row = Math.floor(node / columns);
      const dx = goalColumn - (node - row * columns);
      const dy = goalRow - row;
      const ahead = heading === 0 ? dx : heading === 1 ? dy : heading === 2 ? -dx : -dy;
      const aside = heading === 0 || heading === 2 ? dy : dx;
      const along = lastHeading === 0 ? dx : lastHeading === 1 ? dy : lastHeading === 2 ? -dx : -dy;
      const bends = bendsLeft(ahead, aside, along, (heading - lastHeading) & 3);
      return Math.abs(dx) + Math.abs(dy) + bends * price.bend;
    };
    let least = guess(from.node, from.heading);
    let highest = least;
    const first = from.node * 4 + from.heading;
    cost[first] = 0;
    stamp[first] = generation;
    isDone[first] = 0;
    (buckets[least] ??= []).push(first);
    let found = -1;
    search: while (least <= highest) {
      const bucket = buckets[least];
      const state = bucket?.pop();
      if (state === undefined) {
        least++;
        continue;
      }
      if (isDone[state] === 1) continue;
      isDone[state] = 1;
      const node = state >> 2;
      const heading = state & 3;
      const own = cost[state] ?? 0;
      for (let turn = -1; turn <= 1; turn++) {
        const next = (heading + turn) & 3;
        const isLevel = (next & 1) === 0;
        let spent = own + 1;
        const walls = isLevel ? levelWalls : uprightWalls;
        const wires = isLevel ? levelWire : uprightWire;
        if (turn !== 0) {
          // Both the run that ends here and the one that begins need the node for themselves.
          if (node === from.node || walls[node] !== 0) continue;
          const other = wires[node] ?? 0;
          if (other !== 0 && other !== wire && other !== -wire) {
            if (!overOthers || other < 0) continue;
            spent += price.conflict;
          }
          spent += price.bend;
        }
        const target = node + (steps[next] ?? 0);
        const isGoal = target === to.node;
        if (isGoal ? next !== lastHeading : walls[target] !== 0) continue;
        const other = wires[target] ?? 0;
        if (other !== 0 && other !== wire && other !== -wire) {
          if (!overOthers || other < 0) continue;
          spent += price.conflict;
        }
        const across = (isLevel ? uprightWire : levelWire)[target] ?? 0;
        if (across !== 0 && across !== wire && across !== -wire) spent += price.crossing;
        spent += toll[target] ?? 0;
        const reached = target * 4 + next;
        if (stamp[reached] === generation && (cost[reached] ?? 0) <= spent) continue;
        stamp[reached] = generation;
        cost[reached] = spent;
        cameBy[reached] = heading;
        isDone[reached] = 0;
        if (isGoal) {
          // The price of what lies between is paid: nothing cheaper can come, but for equal guesses.
          const total = spent;
          if (total <= least) {
            found = reached;
            break search;
          }
        }
        const wish = spent + (isGoal ? 0 : guess(target, next));
        if (wish > highest) highest = wish;
        (buckets[wish] ??= []).push(reached);
        if (isGoal) found = reached;
      }
      if (found >= 0 && (cost[found] ?? 0) <= least) break;
    }
    for (let index = 0; index <= highest; index++) {
      const bucket = buckets[index];
      if (bucket !== undefined && bucket.length > 0) bucket.length = 0;
    }
    return found < 0 ? null : this.trace(found, from.node, cameBy, steps);
  }

  private trace(
    last: number,
    start: number,
    cameBy: Uint8Array,
    steps: readonly number[]
  ): number[] {
    const corners = [last >> 2];
    let state = last;
    while (state >> 2 !== start) {
      const heading = state & 3;
      const before = cameBy[state] ?? 0;
      const node = (state >> 2) - (steps[heading] ?? 0);
      if (before !== heading && node !== start) corners.push(node);
      state = node * 4 + before;
    }
    corners.push(start);
    return corners.reverse();
  }
}
