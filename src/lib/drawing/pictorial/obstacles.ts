// What wires are led round: convex polygons, and which straight pieces are free of them.
import RBush from 'rbush';
import type { Spot } from '../presentation/sides.ts';
import { cross, minus, plus, unitOf } from './vectors.ts';

/** A corner that a wire can be led round. */
export interface Corner {
  /** Its place in `Obstacles.corners`. */
  readonly number: number;
  readonly obstacle: number;
  readonly at: Spot;
  readonly before: Spot;
  readonly after: Spot;
  /** A step of 1 away from the obstacle. */
  readonly outward: Spot;
}

interface Entry {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly number: number;
}

/** A touch is no hit, mm. */
const touch = 0.05;

const entryOf = (spots: readonly Spot[], number: number): Entry => ({
  minX: Math.min(...spots.map(({ x }) => x)),
  minY: Math.min(...spots.map(({ y }) => y)),
  maxX: Math.max(...spots.map(({ x }) => x)),
  maxY: Math.max(...spots.map(({ y }) => y)),
  number
});

/** Clockwise on the page, whichever way it came. */
const clockwise = (polygon: readonly Spot[]): readonly Spot[] => {
  let area = 0;
  polygon.forEach((spot, index) => {
    area += cross(spot, polygon[(index + 1) % polygon.length] ?? spot);
  });
  return area >= 0 ? polygon : polygon.toReversed();
};

/** A side of a polygon: where it starts, and a step of 1 along it. Inside is to its right. */
interface Edge extends Spot {
  readonly wayX: number;
  readonly wayY: number;
}

const edgesOf = (polygon: readonly Spot[]): Edge[] =>
  polygon.map((spot, index) => {
    const way = unitOf(minus(polygon[(index + 1) % polygon.length] ?? spot, spot));
    return { ...spot, wayX: way.x, wayY: way.y };
  });

export class Obstacles {
  readonly polygons: readonly (readonly Spot[])[];
  /** Corners that no other obstacle covers. */
  readonly corners: readonly Corner[];
  private readonly edges: readonly (readonly Edge[])[];
  private readonly tree = new RBush<Entry>();
  private readonly cornerTree = new RBush<Entry>();

  constructor(polygons: readonly (readonly Spot[])[]) {
    this.polygons = polygons.map(clockwise);
    this.edges = this.polygons.map(edgesOf);
    this.tree.load(this.polygons.map(entryOf));
    const corners: Corner[] = [];
    this.polygons.forEach((polygon, obstacle) => {
      polygon.forEach((at, index) => {
        const before = polygon.at(index - 1) ?? at;
        const after = polygon[(index + 1) % polygon.length] ?? at;
        if (this.covering(at).some((other) => other !== obstacle)) return;
        const outward = unitOf(plus(unitOf(minus(at, before)), unitOf(minus(at, after))));
        corners.push({ number: corners.length, obstacle, at, before, after, outward });
      });
    });
    this.corners = corners;
    this.cornerTree.load(corners.map(({ at, number }) => entryOf([at], number)));
  }

  /** The obstacles that a place lies in. */
  covering({ x, y }: Spot): number[] {
    return this.tree
      .search({ minX: x, minY: y, maxX: x, maxY: y })
      .map(({ number }) => number)
      .filter((number) => {
        const edges = this.edges[number] ?? [];
        return edges.every((edge) => edge.wayX * (y - edge.y) - edge.wayY * (x - edge.x) > touch);
      });
  }

  /** Corners in a box. */
  cornersWithin(minX: number, minY: number, maxX: number, maxY: number): Corner[] {
    return this.cornerTree
      .search({ minX, minY, maxX, maxY })
      .flatMap(({ number }) => this.corners[number] ?? []);
  }

  /** True where the straight piece runs through an obstacle, those in `except` not counted. */
  blocks(from: Spot, to: Spot, except: readonly number[] = []): boolean {
    const near = this.tree.search({
      minX: Math.min(from.x, to.x),
      minY: Math.min(from.y, to.y),
      maxX: Math.max(from.x, to.x),
      maxY: Math.max(from.y, to.y)
    });
    return near.some(
      ({ number }) => !except.includes(number) && this.runsThrough(number, from, to)
    );
  }

  private runsThrough(number: number, from: Spot, to: Spot): boolean {
    const edges = this.edges[number] ?? [];
    let [enters, leaves] = [0, 1];
    for (const { x, y, wayX, wayY } of edges) {
      // Distance inside this edge at both ends of the piece.
      const a = wayX * (from.y - y) - wayY * (from.x - x) - touch;
      const b = wayX * (to.y - y) - wayY * (to.x - x) - touch;
      if (a <= 0 && b <= 0) return false;
      if (a < 0) enters = Math.max(enters, a / (a - b));
      else if (b < 0) leaves = Math.min(leaves, a / (a - b));
      if (enters >= leaves) return false;
    }
    return leaves - enters > 1e-6;
  }
}

/** True where a straight piece with this direction only touches the corner: it bends round it. */
export const isTangent = (corner: Corner, way: Spot): boolean => {
  const before = cross(way, minus(corner.before, corner.at));
  const after = cross(way, minus(corner.after, corner.at));
  return before * after >= -1e-9;
};
