// How full the sheet is, in small squares: where a body, a name or a number still has room. Coarse,
// so that hundreds of places can be tried for each.
import type { Spot } from '../presentation/sides.ts';
import { boxAround } from './boxes.ts';
import { distance } from './vectors.ts';

const cellMm = 1.2;
/** More squares than this and they grow, so that a sheet of any size takes the same room in memory. */
const mostCells = 1_200_000;

export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export class Clutter {
  private readonly origin: Spot;
  private readonly cell: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly cells: Float32Array;

  constructor({ x, y, width, height }: Area) {
    this.origin = { x, y };
    this.cell = Math.max(cellMm, Math.sqrt((width * height) / mostCells));
    this.columns = Math.ceil(width / this.cell) + 1;
    this.rows = Math.ceil(height / this.cell) + 1;
    this.cells = new Float32Array(this.columns * this.rows);
  }

  /** Marks a convex polygon. */
  addPolygon(polygon: readonly Spot[], weight: number): void {
    const { x: minX, y: minY, width, height } = boxAround(polygon);
    const sides = polygon.map((from, index) => {
      const to = polygon[(index + 1) % polygon.length] ?? from;
      return { x: from.x, y: from.y, wayX: to.x - from.x, wayY: to.y - from.y };
    });
    this.eachCell(minX, minY, minX + width, minY + height, (x, y) => {
      let [left, right] = [false, false];
      for (const side of sides) {
        const across = side.wayX * (y - side.y) - side.wayY * (x - side.x);
        if (across > 0) right = true;
        if (across < 0) left = true;
      }
      return left && right ? 0 : weight;
    });
  }

  addDisc({ x, y }: Spot, r: number, weight: number): void {
    this.eachCell(x - r, y - r, x + r, y + r, (cellX, cellY) =>
      Math.hypot(cellX - x, cellY - y) <= r ? weight : 0
    );
  }

  /** Marks what lies within half a square of a line. */
  addLine(line: readonly Spot[], weight: number): void {
    let last = -1;
    this.alongCells(line, (index) => {
      if (index !== last) this.cells[index] = (this.cells[index] ?? 0) + weight;
      last = index;
    });
  }

  /** What is under a box of this size with this middle, turned clockwise: mean weight x area, mm2. */
  costOfBox(middle: Spot, width: number, height: number, degrees = 0): number {
    const across = Math.max(2, Math.ceil(width / this.cell));
    const down = Math.max(2, Math.ceil(height / this.cell));
    const angle = (degrees * Math.PI) / 180;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    let sum = 0;
    for (let i = 0; i <= across; i++) {
      const x = (i / across - 0.5) * width;
      for (let j = 0; j <= down; j++) {
        const y = (j / down - 0.5) * height;
        sum += this.at(middle.x + x * cos - y * sin, middle.y + x * sin + y * cos);
      }
    }
    return (sum / ((across + 1) * (down + 1))) * width * height;
  }

  /** What a straight piece runs over: weight x length, mm. */
  costOfPiece(from: Spot, to: Spot): number {
    const [x, y] = [to.x - from.x, to.y - from.y];
    const length = Math.hypot(x, y);
    const steps = Math.max(1, Math.ceil(length / this.cell));
    let sum = 0;
    for (let step = 0; step < steps; step++) {
      const share = (step + 0.5) / steps;
      sum += this.at(from.x + x * share, from.y + y * share);
    }
    return (sum * length) / steps;
  }

  /** What lies at a place; far outside the sheet nothing does. */
  at(x: number, y: number): number {
    const index = this.indexAt(x, y);
    return index < 0 ? 0 : (this.cells[index] ?? 0);
  }

  private indexAt(x: number, y: number): number {
    const column = Math.floor((x - this.origin.x) / this.cell);
    const row = Math.floor((y - this.origin.y) / this.cell);
    if (column < 0 || row < 0 || column >= this.columns || row >= this.rows) return -1;
    return row * this.columns + column;
  }

  private eachCell(
    minX: number,
    minY: number,
    maxX: number,
    maxY: number,
    weightAt: (x: number, y: number) => number
  ): void {
    const half = this.cell / 2;
    for (let y = minY + half; y < maxY + half; y += this.cell) {
      for (let x = minX + half; x < maxX + half; x += this.cell) {
        const index = this.indexAt(x, y);
        if (index >= 0) this.cells[index] = (this.cells[index] ?? 0) + weightAt(x, y);
      }
    }
  }

  private alongCells(line: readonly Spot[], visit: (index: number) => void): void {
    line.slice(1).forEach((to, place) => {
      const from = line[place] ?? to;
      const steps = Math.max(1, Math.ceil((2 * distance(from, to)) / this.cell));
      for (let step = 0; step < steps; step++) {
        const share = (step + 0.5) / steps;
        const index = this.indexAt(
          from.x + (to.x - from.x) * share,
          from.y + (to.y - from.y) * share
        );
        if (index >= 0) visit(index);
      }
    });
  }
}
