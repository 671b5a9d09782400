// The sheet as a raster of lanes. Every node knows what bars level and upright runs: parts, the edges
// of frames, and the one wire that may run there each way. Wires may cross, never share.
import type { Box } from '../figures/figure.ts';
import { roundMm, type Spot } from '../presentation/sides.ts';
import { laneMm } from './lanes.ts';

/** Close to a part it costs more to run, so many lanes around it. */
const nearLanes = 2;

/** A rectangle of nodes, both ends within. */
interface Span {
  readonly i1: number;
  readonly j1: number;
  readonly i2: number;
  readonly j2: number;
}

export class Raster {
  readonly columns: number;
  readonly rows: number;
  /** What bars level and upright runs for all: how many things do. */
  readonly levelWalls: Uint8Array;
  readonly uprightWalls: Uint8Array;
  /** The wire that runs here, by its number from 1; negative where the node is kept for its port. */
  readonly levelWire: Int32Array;
  readonly uprightWire: Int32Array;
  /** What it costs to run here beside the length. */
  readonly toll: Uint8Array;
  private readonly left: number;
  private readonly top: number;

  /** Lanes over `area`, mm. */
  constructor(area: Box) {
    this.left = Math.floor(area.x / laneMm);
    this.top = Math.floor(area.y / laneMm);
    this.columns = Math.ceil((area.x + area.width) / laneMm) - this.left + 1;
    this.rows = Math.ceil((area.y + area.height) / laneMm) - this.top + 1;
    const count = this.columns * this.rows;
    this.levelWalls = new Uint8Array(count);
    this.uprightWalls = new Uint8Array(count);
    this.levelWire = new Int32Array(count);
    this.uprightWire = new Int32Array(count);
    this.toll = new Uint8Array(count);
    // Nothing runs along the edge of the raster: so no step ever leaves it.
    const [i2, j2] = [this.columns - 1, this.rows - 1];
    for (const walls of [this.levelWalls, this.uprightWalls]) {
      this.add(walls, { i1: 0, j1: 0, i2, j2: 0 }, 1);
      this.add(walls, { i1: 0, j1: j2, i2, j2 }, 1);
      this.add(walls, { i1: 0, j1: 0, i2: 0, j2 }, 1);
      this.add(walls, { i1: i2, j1: 0, i2, j2 }, 1);
    }
  }

  columnOf(x: number): number {
    return Math.round(x / laneMm) - this.left;
  }

  rowOf(y: number): number {
    return Math.round(y / laneMm) - this.top;
  }

  nodeAt({ x, y }: Spot): number {
    return this.rowOf(y) * this.columns + this.columnOf(x);
  }

  spotOf(node: number): Spot {
    const row = Math.floor(node / this.columns);
    const column = node - row * this.columns;
    return { x: roundMm((column + this.left) * laneMm), y: roundMm((row + this.top) * laneMm) };
  }

  private spanOf({ x, y, width, height }: Box): Span {
    return {
      i1: this.columnOf(x),
      j1: this.rowOf(y),
      i2: this.columnOf(x + width),
      j2: this.rowOf(y + height)
    };
  }

  private add(grid: Uint8Array, span: Span, by: number): void {
    const i1 = Math.max(0, span.i1);
    const i2 = Math.min(this.columns - 1, span.i2);
    const j2 = Math.min(this.rows - 1, span.j2);
    for (let row = Math.max(0, span.j1); row <= j2; row++) {
      const start = row * this.columns;
      for (let node = start + i1; node <= start + i2; node++) grid[node] = (grid[node] ?? 0) + by;
    }
  }

  /** A part: nothing runs through it or on its border. */
  part(box: Box): void {
    const span = this.spanOf(box);
    this.add(this.levelWalls, span, 1);
    this.add(this.uprightWalls, span, 1);
    for (let lanes = 1; lanes <= nearLanes; lanes++) {
      const { i1, j1, i2, j2 } = span;
      this.add(this.toll, { i1: i1 - lanes, j1: j1 - lanes, i2: i2 + lanes, j2: j2 + lanes }, 1);
    }
  }

  /** The edge of a frame: wires pass it straight, and never run along it. */
  frame(box: Box): void {
    const { i1, j1, i2, j2 } = this.spanOf(box);
    for (const j of [j1, j2]) this.add(this.levelWalls, { i1, i2, j1: j, j2: j }, 1);
    for (const i of [i1, i2]) this.add(this.uprightWalls, { j1, j2, i1: i, i2: i }, 1);
  }

  /** Writes a wire's number along its corners, given as nodes; 0 takes it away. */
  write(corners: readonly number[], wire: number): void {
    const { columns } = this;
    for (let index = 1; index < corners.length; index++) {
      const [a, b] = [corners[index - 1] ?? 0, corners[index] ?? 0];
      const isLevel = Math.floor(a / columns) === Math.floor(b / columns);
      const grid = isLevel ? this.levelWire : this.uprightWire;
      const step = isLevel ? 1 : columns;
      for (let node = Math.min(a, b); node <= Math.max(a, b); node += step) grid[node] = wire;
    }
  }
}
