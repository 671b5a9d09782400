// The floor on which parts are shifted about until they lie well: boxes in lanes, each kept within its
// region, and the lines between them. It says what a place costs; it does not say where to go.
import type { Box } from '../../figures/figure.ts';
import type { Heading } from '../../router/find-way.ts';

/** Lanes to keep clear beside a part: north, east, south, west. */
export type Room = readonly [number, number, number, number];

/** A part on the floor, in lanes. */
export interface FloorPart {
  readonly width: number;
  readonly height: number;
  /** For its own wires. */
  readonly room: Room;
  /** The index of the region that it stays in. */
  readonly region: number;
}

/** Where a line leaves a part: lanes from the part's corner, and which way. */
export interface FloorEnd {
  readonly part: number;
  readonly x: number;
  readonly y: number;
  /** Null where the side is not settled yet: then bends are not counted. */
  readonly heading: Heading | null;
}

export interface FloorLine {
  readonly from: FloorEnd;
  readonly to: FloorEnd;
  readonly weight: number;
  /** It should run rightwards. */
  readonly isDirected: boolean;
}

/** In lanes: what counts beside a line's length. */
export const floorPrice = { bend: 5, crossing: 15, backwards: 0.1, overlap: 3 } as const;

/** Of more lines than this, crossings with some only are counted at a time, and stand for all. */
const countsAtATime = 150;

/** Turns that a run needs from one heading to the other at least, with nothing in its way. */
const bendsOf = (dx: number, dy: number, out: number, into: number): number => {
  const ahead = out === 0 ? dx : out === 1 ? dy : out === 2 ? -dx : -dy;
  const aside = out === 0 || out === 2 ? dy : dx;
  const along = into === 0 ? dx : into === 1 ? dy : into === 2 ? -dx : -dy;
  const turn = (out - into) & 3;
  if (turn === 0) return aside === 0 && ahead >= 0 ? 0 : ahead > 0 ? 2 : 4;
  if (turn === 2) return aside === 0 ? 4 : 2;
  return ahead >= 0 && along >= 0 ? 1 : 3;
};

/** Boxes with their room, by part: how far they reach from the part's corner. */
interface Reach {
  readonly west: Float64Array;
  readonly east: Float64Array;
  readonly north: Float64Array;
  readonly south: Float64Array;
}

/** The lines, column by column: this is read many million times. */
interface Columns {
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Lanes from the corner of either part: x and y of the first end, then of the second. */
  readonly at: Float64Array;
  readonly weight: Float64Array;
  readonly isDirected: Uint8Array;
  /** Out of the first part, into the second; -1 where they are not settled. */
  readonly out: Int8Array;
  readonly into: Int8Array;
}

const toColumns = (lines: readonly FloorLine[]): Columns => ({
  from: Int32Array.from(lines, ({ from }) => from.part),
  to: Int32Array.from(lines, ({ to }) => to.part),
  at: Float64Array.from(lines.flatMap(({ from, to }) => [from.x, from.y, to.x, to.y])),
  weight: Float64Array.from(lines, ({ weight }) => weight),
  isDirected: Uint8Array.from(lines, ({ isDirected }) => (isDirected ? 1 : 0)),
  out: Int8Array.from(lines, ({ from }) => from.heading ?? -1),
  into: Int8Array.from(lines, ({ to }) => (to.heading === null ? -1 : (to.heading + 2) & 3))
});

export class Floor {
  readonly parts: readonly FloorPart[];
  readonly regions: readonly Box[];
  /** Corners, lanes. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** How hard an overlap weighs; it rises while the floor cools. */
  overlapWeight = 1;
  private readonly lines: Columns;
  private readonly count: number;
  private readonly linesOf: readonly Int32Array[];
  private readonly reach: Reach;
  /** Straight from end to end, for crossings: x1, y1, x2, y2 of each line. */
  private readonly spans: Float64Array;
  /** Crossings are counted with every so manieth line, from the first on. */
  private readonly stride: number;
  private first = 0;

  constructor(
    parts: readonly FloorPart[],
    regions: readonly Box[],
    lines: readonly FloorLine[],
    places: readonly { readonly x: number; readonly y: number }[]
  ) {
    this.parts = parts;
    this.regions = regions;
    this.x = Float64Array.from(places, ({ x }) => x);
    this.y = Float64Array.from(places, ({ y }) => y);
    this.lines = toColumns(lines);
    this.count = lines.length;
    this.reach = {
      west: Float64Array.from(parts, ({ room }) => -room[3]),
      east: Float64Array.from(parts, ({ width, room }) => width + room[1]),
      north: Float64Array.from(parts, ({ room }) => -room[0]),
      south: Float64Array.from(parts, ({ height, room }) => height + room[2])
    };
    const own: number[][] = parts.map(() => []);
    lines.forEach(({ from, to }, index) => {
      if (to.part === from.part) return;
      own[from.part]?.push(index);
      own[to.part]?.push(index);
    });
    this.linesOf = own.map((list) => Int32Array.from(list));
    this.spans = new Float64Array(lines.length * 4);
    this.stride = Math.max(1, Math.round(lines.length / countsAtATime));
    lines.forEach((_, index) => this.span(index));
    parts.forEach((_, part) => this.put(part, this.x[part] ?? 0, this.y[part] ?? 0));
  }

  private span(line: number): void {
    const { from, to, at } = this.lines;
    const [a, b, own] = [from[line] ?? 0, to[line] ?? 0, line * 4];
    this.spans[own] = (this.x[a] ?? 0) + (at[own] ?? 0);
    this.spans[own + 1] = (this.y[a] ?? 0) + (at[own + 1] ?? 0);
    this.spans[own + 2] = (this.x[b] ?? 0) + (at[own + 2] ?? 0);
    this.spans[own + 3] = (this.y[b] ?? 0) + (at[own + 3] ?? 0);
  }

  /** Which of the lines stand for all until the next turn. */
  turn(step: number): void {
    this.first = step % this.stride;
  }

  /** Puts a part somewhere, kept within its region. */
  put(part: number, x: number, y: number): void {
    const { width, height, region } = this.parts[part] as FloorPart;
    const box = this.regions[region] as Box;
    this.x[part] = Math.max(box.x, Math.min(box.x + box.width - width, Math.round(x)));
    this.y[part] = Math.max(box.y, Math.min(box.y + box.height - height, Math.round(y)));
    const own = this.linesOf[part] as Int32Array;
    for (let index = 0; index < own.length; index++) this.span(own[index] as number);
  }

  /** The middle of some of what a part is wired to, or null where it is wired to nothing else.
   *  @param lean from 0 to below 1: which of them */
  middleOfOthers(part: number, lean: number): { x: number; y: number } | null {
    const own = this.linesOf[part] as Int32Array;
    const start = Math.floor(lean * own.length);
    let [x, y, weights] = [0, 0, 0];
    for (let turn = 0; turn < Math.min(3, own.length); turn++) {
      const line = own[(start + turn) % own.length] ?? 0;
      const weight = this.lines.weight[line] ?? 0;
      const at = this.lines.from[line] === part ? line * 4 + 2 : line * 4;
      x += (this.spans[at] ?? 0) * weight;
      y += (this.spans[at + 1] ?? 0) * weight;
      weights += weight;
    }
    return weights > 0 ? { x: x / weights, y: y / weights } : null;
  }

  /** What a part costs where it is: its lines, and what it lies on. */
  costOf(part: number): number {
    const own = this.linesOf[part] as Int32Array;
    let cost = this.overlapsOf(part) * floorPrice.overlap * this.overlapWeight;
    for (let index = 0; index < own.length; index++) cost += this.lineCost(own[index] as number);
    return cost;
  }

  private lineCost(line: number): number {
    const { spans } = this;
    const { weight, isDirected, out, into } = this.lines;
    const at = line * 4;
    const x1 = spans[at] as number;
    const y1 = spans[at + 1] as number;
    const x2 = spans[at + 2] as number;
    const y2 = spans[at + 3] as number;
    const dx = x2 - x1;
    const dy = y2 - y1;
    let cost = Math.abs(dx) + Math.abs(dy);
    if (isDirected[line] === 1 && dx < 0) cost -= dx * floorPrice.backwards;
    const [leaves, comes] = [out[line] as number, into[line] as number];
    if (leaves >= 0 && comes >= 0) cost += bendsOf(dx, dy, leaves, comes) * floorPrice.bend;
    cost *= weight[line] as number;
    return cost + this.crossingsOf(line, x1, y1, x2, y2) * floorPrice.crossing * this.stride;
  }

  private crossingsOf(line: number, x1: number, y1: number, x2: number, y2: number): number {
    const { spans, count, stride, first } = this;
    const dx = x2 - x1;
    const dy = y2 - y1;
    let crossings = 0;
    for (let other = first; other < count; other += stride) {
      const at = other * 4;
      const x3 = spans[at] as number;
      const y3 = spans[at + 1] as number;
      const x4 = spans[at + 2] as number;
      const y4 = spans[at + 3] as number;
      const one = dx * (y3 - y1) - dy * (x3 - x1);
      const two = dx * (y4 - y1) - dy * (x4 - x1);
      if (one * two >= 0) continue;
      const ex = x4 - x3;
      const ey = y4 - y3;
      if ((ex * (y1 - y3) - ey * (x1 - x3)) * (ex * (y2 - y3) - ey * (x2 - x3)) >= 0) continue;
      crossings++;
    }
    return crossings;
  }

  /** How much of a part and of its room lies on others: the sum of the depths, in lanes. */
  overlapsOf(part: number): number {
    const { x, y } = this;
    const { west, east, north, south } = this.reach;
    const x1 = (x[part] as number) + (west[part] as number);
    const x2 = (x[part] as number) + (east[part] as number);
    const y1 = (y[part] as number) + (north[part] as number);
    const y2 = (y[part] as number) + (south[part] as number);
    let depth = 0;
    for (let other = 0; other < x.length; other++) {
      const left = x2 - (x[other] as number) - (west[other] as number);
      if (left <= 0) continue;
      const right = (x[other] as number) + (east[other] as number) - x1;
      if (right <= 0) continue;
      const above = y2 - (y[other] as number) - (north[other] as number);
      if (above <= 0) continue;
      const below = (y[other] as number) + (south[other] as number) - y1;
      if (below <= 0 || other === part) continue;
      depth += Math.min(left, right, above, below) + 2;
    }
    return depth;
  }
}
