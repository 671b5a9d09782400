// The shortest way from one place to another round the parts between them, as a string pulled tight
// would lie: A* over the corners that it can bend round.
import FlatQueue from 'flatqueue';
import type { Spot } from '../presentation/sides.ts';
import { isTangent, nowhere, type Corner, type Obstacles } from './obstacles.ts';
import { distance, minus } from './vectors.ts';

/** What a bend costs, mm: a straighter way is worth a small detour. */
const bendMm = 3;
const farthestMm = 1e7;

interface Step {
  readonly to: Corner;
  readonly mm: number;
}

export interface TautPath {
  readonly corners: readonly Corner[];
  /** Bends counted in. */
  readonly costMm: number;
}

export class TautPaths {
  private readonly obstacles: Obstacles;
  private readonly steps = new Map<number, readonly Step[]>();
  /** What wires that were led round a corner before add to its cost, mm. */
  private readonly crowd: Float64Array;

  constructor(obstacles: Obstacles) {
    this.obstacles = obstacles;
    this.crowd = new Float64Array(obstacles.corners.length);
  }

  /** The corners in order that a way bends round; none for a straight way. Where no way is free the
   *  straight one is returned: the obstacles around an end do not count. */
  find(from: Spot, to: Spot): TautPath {
    const { obstacles } = this;
    const straight = { corners: [], costMm: distance(from, to) };
    const fromIn = obstacles.around(from);
    const toIn = obstacles.around(to);
    if (!obstacles.blocks(from, to, fromIn, toIn)) return straight;
    const reach = 50 + distance(from, to) * 0.35;
    const near = obstacles.cornersWithin(
      Math.min(from.x, to.x) - reach,
      Math.min(from.y, to.y) - reach,
      Math.max(from.x, to.x) + reach,
      Math.max(from.y, to.y) + reach
    );
    const allowed = new Set(near.map(({ number }) => number));
    const lastSteps = new Map<number, number>();
    for (const corner of near) {
      if (!toIn.has(corner.obstacle) && !isTangent(corner, minus(to, corner.at))) continue;
      if (!obstacles.blocks(corner.at, to, nowhere, toIn))
        lastSteps.set(corner.number, distance(corner.at, to));
    }
    const cost = new Map<number, number>();
    const cameBy = new Map<number, Corner | null>();
    const queue = new FlatQueue<number>();
    const offer = (corner: Corner, mm: number, by: Corner | null): void => {
      const total = mm + bendMm + (this.crowd[corner.number] ?? 0);
      if (total >= (cost.get(corner.number) ?? farthestMm)) return;
      cost.set(corner.number, total);
      cameBy.set(corner.number, by);
      queue.push(corner.number, total + distance(corner.at, to));
    };
    for (const corner of near) {
      if (!fromIn.has(corner.obstacle) && !isTangent(corner, minus(corner.at, from))) continue;
      if (!obstacles.blocks(from, corner.at, fromIn))
        offer(corner, distance(from, corner.at), null);
    }
    let best: Corner | null = null;
    let bestMm = farthestMm;
    const done = new Set<number>();
    while (queue.length > 0) {
      const guess = queue.peekValue() ?? farthestMm;
      const number = queue.pop();
      if (number === undefined || guess >= bestMm) break;
      if (done.has(number)) continue;
      done.add(number);
      const corner = obstacles.corners[number];
      if (!corner) continue;
      const here = cost.get(number) ?? farthestMm;
      const last = lastSteps.get(number);
      if (last !== undefined && here + last < bestMm) [best, bestMm] = [corner, here + last];
      for (const { to: next, mm } of this.stepsFrom(corner)) {
        if (allowed.has(next.number) && !done.has(next.number)) offer(next, here + mm, corner);
      }
    }
    if (!best) return straight;
    const corners: Corner[] = [];
    for (let corner: Corner | null = best; corner; corner = cameBy.get(corner.number) ?? null) {
      corners.unshift(corner);
    }
    return { corners, costMm: bestMm };
  }

  /** True where a place lies clear of all parts. */
  isClear(at: Spot): boolean {
    return this.obstacles.around(at).size === 0;
  }

  /** Makes corners dearer by `mm` for the ways found from now on. */
  use(corners: readonly Corner[], mm: number): void {
    for (const { number } of corners) this.crowd[number] = (this.crowd[number] ?? 0) + mm;
  }

  private stepsFrom(corner: Corner): readonly Step[] {
    const known = this.steps.get(corner.number);
    if (known) return known;
    const far = 160;
    const { x, y } = corner.at;
    const steps = this.obstacles
      .cornersWithin(x - far, y - far, x + far, y + far)
      .filter((next) => {
        if (next.number === corner.number) return false;
        const way = minus(next.at, corner.at);
        return (
          isTangent(corner, way) &&
          isTangent(next, way) &&
          !this.obstacles.blocks(corner.at, next.at)
        );
      })
      .map((to) => ({ to, mm: distance(corner.at, to.at) }));
    this.steps.set(corner.number, steps);
    return steps;
  }
}
