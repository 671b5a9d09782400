// What wires are led round: convex polygons, and which straight pieces are free of them. Each has a
// narrower core: a wire that ends at the part comes nearer than those that only pass.
import RBush from 'rbush';
import type { Spot } from '../presentation/sides.ts';
import { cross, minus, plus, unitOf } from './vectors.ts';

export interface Obstacle {
  readonly outer: readonly Spot[];
  readonly core: readonly Spot[];
}

/** A corner that a wire can be led round. */
export interface Corner {
  /** Its place in `Obstacles.corners`. */
  readonly number: number;
  /** Whose corner it is. */
  readonly obstacle: number;
  readonly at: Spot;
  readonly before: Spot;
  readonly after: Spot;
  /** A step of 1 away from the obstacle. */
  readonly outward: Spot;
}

/** The obstacles that a place lies in: in the core, or only in what is kept clear around it. */
export type Surroundings = ReadonlyMap<number, 'core' | 'outer'>;

interface Entry {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly number: number;
}

/** A side of a polygon: where it starts, and a step of 1 along it. Inside is to its right. */
interface Side extends Spot {
  readonly wayX: number;
  readonly wayY: number;
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

const sidesOf = (polygon: readonly Spot[]): Side[] =>
  polygon.map((spot, index) => {
    const way = unitOf(minus(polygon[(index + 1) % polygon.length] ?? spot, spot));
    return { ...spot, wayX: way.x, wayY: way.y };
  });

const isInside = (sides: readonly Side[], { x, y }: Spot): boolean =>
  sides.every((side) => side.wayX * (y - side.y) - side.wayY * (x - side.x) > touch);

function runsThrough(sides: readonly Side[], from: Spot, to: Spot): boolean {
  let [enters, leaves] = [0, 1];
  for (const { x, y, wayX, wayY } of sides) {
    // Distance inside this side at both ends of the piece.
    const a = wayX * (from.y - y) - wayY * (from.x - x) - touch;
    const b = wayX * (to.y - y) - wayY * (to.x - x) - touch;
    if (a <= 0 && b <= 0) return false;
    if (a < 0) enters = Math.max(enters, a / (a - b));
    else if (b < 0) leaves = Math.min(leaves, a / (a - b));
    if (enters >= leaves) return false;
  }
  return leaves - enters > 1e-6;
}

export const nowhere: Surroundings = new Map();

export class Obstacles {
  /** Corners that no other obstacle covers. */
  readonly corners: readonly Corner[];
  private readonly outer: readonly (readonly Side[])[];
  private readonly core: readonly (readonly Side[])[];
  private readonly tree = new RBush<Entry>();
  private readonly cornerTree = new RBush<Entry>();

  constructor(obstacles: readonly Obstacle[]) {
    const polygons = obstacles.map(({ outer }) => clockwise(outer));
    this.outer = polygons.map(sidesOf);
    this.core = obstacles.map(({ core }) => sidesOf(clockwise(core)));
    this.tree.load(polygons.map(entryOf));
    const corners: Corner[] = [];
    polygons.forEach((polygon, obstacle) => {
      polygon.forEach((at, index) => {
        const before = polygon.at(index - 1) ?? at;
        const after = polygon[(index + 1) % polygon.length] ?? at;
        if ([...this.around(at).keys()].some((other) => other !== obstacle)) return;
        const outward = unitOf(plus(unitOf(minus(at, before)), unitOf(minus(at, after))));
        corners.push({ number: corners.length, obstacle, at, before, after, outward });
      });
    });
    this.corners = corners;
    this.cornerTree.load(corners.map(({ at, number }) => entryOf([at], number)));
  }

  /** The obstacles that a place lies in. */
  around(at: Spot): Surroundings {
    const { x, y } = at;
    const found = new Map<number, 'core' | 'outer'>();
    for (const { number } of this.tree.search({ minX: x, minY: y, maxX: x, maxY: y })) {
      if (!isInside(this.outer[number] ?? [], at)) continue;
      found.set(number, isInside(this.core[number] ?? [], at) ? 'core' : 'outer');
    }
    return found;
  }

  /** Corners in a box. */
  cornersWithin(minX: number, minY: number, maxX: number, maxY: number): Corner[] {
    return this.cornerTree
      .search({ minX, minY, maxX, maxY })
      .flatMap(({ number }) => this.corners[number] ?? []);
  }

  /** True where the straight piece runs through an obstacle. Of those around an end it is only the
   *  core that counts, and nothing of those in whose core an end lies. */
  blocks(from: Spot, to: Spot, aroundFrom = nowhere, aroundTo = nowhere): boolean {
    const near = this.tree.search({
      minX: Math.min(from.x, to.x),
      minY: Math.min(from.y, to.y),
      maxX: Math.max(from.x, to.x),
      maxY: Math.max(from.y, to.y)
    });
    return near.some(({ number }) => {
      const [a, b] = [aroundFrom.get(number), aroundTo.get(number)];
      if (a === 'core' || b === 'core') return false;
      const sides = a || b ? this.core[number] : this.outer[number];
      return sides !== undefined && runsThrough(sides, from, to);
    });
  }
}

/** True where a straight piece with this direction only touches the corner: it bends round it. */
export const isTangent = (corner: Corner, way: Spot): boolean => {
  const before = cross(way, minus(corner.before, corner.at));
  const after = cross(way, minus(corner.after, corner.at));
  return before * after >= -1e-9;
};
