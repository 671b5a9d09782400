// Runs wires between fixed places: none through a part, none on another, few bends and crossings.
// Shortest first; where one finds no way, those in its way give way and look again. What a move does
// not touch stays as it is.
import type { Box } from '../figures/figure.ts';
import type { Side, Spot } from '../presentation/sides.ts';
import { WayFinder, type Heading, type WayEnd } from './find-way.ts';
import { Raster } from './raster.ts';

/** Where a wire leaves a part: on the part's border, on a lane. */
export interface RouteEnd extends Spot {
  readonly side: Side;
}

export interface RouteWish {
  readonly id: string;
  readonly from: RouteEnd;
  readonly to: RouteEnd;
}

export interface RouteProblem {
  /** Everything that wires run round, by id. */
  readonly boxes: ReadonlyMap<string, Box>;
  /** Edges that wires cross straight and never run along. */
  readonly frames: readonly Box[];
  /** Wires are kept within this, mm. */
  readonly area: Box;
  readonly wishes: readonly RouteWish[];
  /** Ways that are there already: kept where nothing is in the way. */
  readonly laid?: ReadonlyMap<string, readonly Spot[]>;
}

const headings: Readonly<Record<Side, Heading>> = { east: 0, south: 1, west: 2, north: 3 };

/** The way out of a part through a side. */
export const headingOf = (side: Side): Heading => headings[side];

/** Corners as nodes of the raster, ends included. */
type Way = readonly number[];

interface Wire {
  readonly id: string;
  /** From 1. */
  readonly number: number;
  wish: RouteWish;
  from: WayEnd;
  to: WayEnd;
  /** Null while only the nodes before its ports are kept for it. */
  way: Way | null;
  /** How often it made others give way. */
  forced: number;
}

const mostForced = 5;
/** Where wires got into each other's way it costs more from then on. */
const contested = 3;

export class Router {
  private readonly raster: Raster;
  private readonly finder: WayFinder;
  private readonly wires = new Map<string, Wire>();
  private readonly byNumber: Wire[] = [];

  constructor(problem: RouteProblem) {
    this.raster = new Raster(problem.area);
    this.finder = new WayFinder(this.raster);
    for (const box of problem.boxes.values()) this.raster.part(box);
    for (const frame of problem.frames) this.raster.frame(frame);
    for (const wish of problem.wishes) {
      const wire: Wire = {
        id: wish.id,
        number: this.byNumber.length + 1,
        wish,
        from: this.endOf(wish.from),
        to: this.endOf(wish.to),
        way: null,
        forced: 0
      };
      this.wires.set(wish.id, wire);
      this.byNumber.push(wire);
      this.keep(wire, -wire.number);
    }
    for (const [id, route] of problem.laid ?? []) {
      const wire = this.wires.get(id);
      if (!wire) continue;
      const way = route.map((spot) => this.raster.nodeAt(spot));
      if (this.isClear(wire, way)) this.lay(wire, way);
    }
  }

  private endOf(end: RouteEnd): WayEnd {
    return { node: this.raster.nodeAt(end), heading: headings[end.side] };
  }

  private stepFrom({ node, heading }: WayEnd): number {
    const { columns } = this.raster;
    return node + ([1, columns, -1, -columns][heading] ?? 0);
  }

  /** Keeps the first step out of both ports for the wire; 0 lets go of it. */
  private keep({ from, to }: Wire, number: number): void {
    for (const end of [from, to]) this.raster.write([end.node, this.stepFrom(end)], number);
  }

  private lay(wire: Wire, way: Way): void {
    wire.way = way;
    this.raster.write(way, wire.number);
    this.keep(wire, -wire.number);
  }

  private lift(wire: Wire): void {
    if (wire.way === null) return;
    this.raster.write(wire.way, 0);
    wire.way = null;
    this.keep(wire, -wire.number);
  }

  /** Whether a way goes from port to port, straight out of both, and nothing is in it. */
  private isClear(wire: Wire, way: Way): boolean {
    const { from, to, number } = wire;
    if (way[0] !== from.node || way.at(-1) !== to.node || way.length < 2) return false;
    const { levelWalls, uprightWalls, levelWire, uprightWire } = this.raster;
    const [stepFrom, stepTo] = [this.stepFrom(from), this.stepFrom(to)];
    let clear = true;
    const seen = new Set<number>();
    const isUsed = this.walk(way, (node, isLevel) => {
      seen.add(node);
      const other = (isLevel ? levelWire : uprightWire)[node] ?? 0;
      if (other !== 0 && Math.abs(other) !== number) clear = false;
      if (node === from.node || node === to.node) return;
      if ((isLevel ? levelWalls : uprightWalls)[node] !== 0) clear = false;
    });
    return isUsed && clear && seen.has(stepFrom) && seen.has(stepTo);
  }

  private search({ from, to, number }: Wire, overOthers = false): Way | null {
    return this.finder.find(from, to, { wire: number, overOthers });
  }

  private span({ wish: { from, to } }: Wire): number {
    return Math.abs(from.x - to.x) + Math.abs(from.y - to.y);
  }

  /** Lays every wire that lies nowhere yet. */
  routeOpen(): void {
    const queue = [...this.wires.values()]
      .filter(({ way }) => way === null)
      .sort((a, b) => this.span(a) - this.span(b));
    for (let index = 0; index < queue.length; index++) {
      const wire = queue[index] as Wire;
      if (wire.way !== null) continue;
      const way = this.search(wire);
      if (way !== null) this.lay(wire, way);
      else if (wire.forced < mostForced) queue.push(...this.force(wire));
    }
  }

  /** Lays a wire over others, which give way; returns those. */
  private force(wire: Wire): Wire[] {
    const way = this.search(wire, true);
    if (way === null) return [];
    wire.forced++;
    const inTheWay = this.findInTheWay(wire, way);
    for (const other of inTheWay) this.lift(other);
    const clear = this.search(wire);
    if (clear !== null) this.lay(wire, clear);
    return [...inTheWay, ...(clear === null ? [wire] : [])];
  }

  private findInTheWay(wire: Wire, way: Way): Wire[] {
    const { levelWire, uprightWire, toll } = this.raster;
    const found = new Set<Wire>();
    this.walk(way, (node, isLevel) => {
      const number = Math.abs((isLevel ? levelWire : uprightWire)[node] ?? 0);
      const other = this.byNumber[number - 1];
      if (!other || other === wire) return;
      found.add(other);
      toll[node] = Math.min(200, (toll[node] ?? 0) + contested);
    });
    return [...found];
  }

  /** Every node of a way, corners twice: once for each of the runs that meet there. False where it is
   *  not made of level and upright runs. */
  private walk(way: Way, visit: (node: number, isLevel: boolean) => void): boolean {
    const { columns } = this.raster;
    for (let index = 1; index < way.length; index++) {
      const [a, b] = [way[index - 1] ?? 0, way[index] ?? 0];
      const isLevel = Math.floor(a / columns) === Math.floor(b / columns);
      if (!isLevel && (a - b) % columns !== 0) return false;
      const step = isLevel ? 1 : columns;
      for (let node = Math.min(a, b); node <= Math.max(a, b); node += step) visit(node, isLevel);
    }
    return true;
  }

  private crossingsOf({ way, number }: Wire): number {
    if (way === null) return 0;
    const { levelWire, uprightWire } = this.raster;
    let count = 0;
    this.walk(way, (node, isLevel) => {
      const other = Math.abs((isLevel ? uprightWire : levelWire)[node] ?? 0);
      if (other !== 0 && other !== number) count++;
    });
    return count;
  }

  /** Takes up the wires that cross and bend most, one by one, and lays each where it is cheapest now.
   *  @param share of the wires, 0 to 1 */
  improve(share: number): void {
    const ranked = [...this.wires.values()]
      .filter(({ way }) => way !== null)
      .map((wire) => ({ wire, trouble: this.crossingsOf(wire) * 3 + (wire.way?.length ?? 0) }))
      .sort((a, b) => b.trouble - a.trouble);
    for (const { wire } of ranked.slice(0, Math.ceil(ranked.length * share))) {
      const before = wire.way;
      if (before === null) continue;
      this.lift(wire);
      this.lay(wire, this.search(wire) ?? before);
    }
  }

  /** Wires that found no way. */
  get unrouted(): string[] {
    return [...this.wires.values()].filter(({ way }) => way === null).map(({ id }) => id);
  }

  /** Corners by wire, mm. */
  get routes(): Map<string, Spot[]> {
    const routes = new Map<string, Spot[]>();
    for (const { id, way } of this.wires.values()) {
      if (way !== null)
        routes.set(
          id,
          way.map((node) => this.raster.spotOf(node))
        );
    }
    return routes;
  }
}
