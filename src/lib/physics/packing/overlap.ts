// How far circles overlap each other and stick out of a round hole, as an energy that can be
// lowered, and the tightest hole that a placement fits in once nothing overlaps.
import { packEnclose } from 'd3-hierarchy';
import type { Energy } from './minimise.ts';

/** Centres of circles as x0, y0, x1, y1, … */
export type Centres = Float64Array;

/** Sum of the squared overlaps between circles, and between each and the outside of the hole. */
export function overlapEnergy(radii: Float64Array, holeRadius: number): Energy {
  const count = radii.length;
  const nearPairs = pairFinder(radii);
  return (at, slope) => {
    slope.fill(0);
    let energy = 0;
    const pairs = nearPairs(at);
    for (let p = 0; p < pairs.length; p += 2) {
      const i = pairs[p] ?? 0;
      const j = pairs[p + 1] ?? 0;
      const dx = (at[2 * i] ?? 0) - (at[2 * j] ?? 0);
      const dy = (at[2 * i + 1] ?? 0) - (at[2 * j + 1] ?? 0);
      const reach = (radii[i] ?? 0) + (radii[j] ?? 0);
      const squared = dx * dx + dy * dy;
      if (squared >= reach * reach) continue;
      const distance = Math.max(Math.sqrt(squared), tiny);
      energy += (reach - distance) ** 2;
      const push = (2 * (reach - distance)) / distance;
      slope[2 * i] = (slope[2 * i] ?? 0) - push * dx;
      slope[2 * i + 1] = (slope[2 * i + 1] ?? 0) - push * dy;
      slope[2 * j] = (slope[2 * j] ?? 0) + push * dx;
      slope[2 * j + 1] = (slope[2 * j + 1] ?? 0) + push * dy;
    }
    for (let i = 0; i < count; i += 1) {
      const x = at[2 * i] ?? 0;
      const y = at[2 * i + 1] ?? 0;
      const fromMiddle = Math.sqrt(x * x + y * y);
      const outside = fromMiddle + (radii[i] ?? 0) - holeRadius;
      if (outside <= 0) continue;
      energy += outside * outside;
      const pull = (2 * outside) / Math.max(fromMiddle, tiny);
      slope[2 * i] = (slope[2 * i] ?? 0) + pull * x;
      slope[2 * i + 1] = (slope[2 * i + 1] ?? 0) + pull * y;
    }
    return energy;
  };
}

const tiny = 1e-9;
/** Circles nearer than this are kept on the list of pairs, in mean radii. */
const margin = 0.6;

/** Finds the pairs that may touch, as i0, j0, i1, j1, …; the list is made anew only when some
 *  circle has moved so far that it could be wrong. */
function pairFinder(radii: Float64Array): (at: Centres) => readonly number[] {
  let listed: Centres | undefined;
  let pairs: number[] = [];
  return (at) => {
    if (listed && !hasMoved(at, listed)) return pairs;
    listed = at.slice();
    pairs = [];
    for (let i = 0; i < radii.length; i += 1) {
      for (let j = i + 1; j < radii.length; j += 1) {
        const dx = (at[2 * i] ?? 0) - (at[2 * j] ?? 0);
        const dy = (at[2 * i + 1] ?? 0) - (at[2 * j + 1] ?? 0);
        const near = (radii[i] ?? 0) + (radii[j] ?? 0) + margin;
        if (dx * dx + dy * dy < near * near) pairs.push(i, j);
      }
    }
    return pairs;
  };
}

/** True where a coordinate went further than two circles may, towards each other, unseen. */
function hasMoved(at: Centres, from: Centres): boolean {
  const most = margin / 2 / Math.SQRT2;
  for (let i = 0; i < at.length; i += 1) {
    if (Math.abs((at[i] ?? 0) - (from[i] ?? 0)) > most) return true;
  }
  return false;
}

export interface Placement {
  /** Radius of the hole round the origin that holds all circles. */
  readonly radius: number;
  readonly centres: Centres;
}

/** The placement spread out until no two circles overlap, in the smallest hole round it. */
export function spreadApart(radii: Float64Array, centres: Centres): Placement {
  const spread = neededSpread(radii, centres);
  const circles = Array.from(radii, (r, i) => ({
    x: (centres[2 * i] ?? 0) * spread,
    y: (centres[2 * i + 1] ?? 0) * spread,
    r
  }));
  const hole = packEnclose(circles);
  const moved = circles.flatMap(({ x, y }) => [x - hole.x, y - hole.y]);
  return { radius: hole.r, centres: Float64Array.from(moved) };
}

/** How many times the centres must stand further apart for the worst pair to touch. */
function neededSpread(radii: Float64Array, centres: Centres): number {
  let spread = 0;
  for (let i = 0; i < radii.length; i += 1) {
    for (let j = i + 1; j < radii.length; j += 1) {
      const dx = (centres[2 * i] ?? 0) - (centres[2 * j] ?? 0);
      const dy = (centres[2 * i + 1] ?? 0) - (centres[2 * j + 1] ?? 0);
      const distance = Math.max(Math.hypot(dx, dy), tiny);
      spread = Math.max(spread, ((radii[i] ?? 0) + (radii[j] ?? 0)) / distance);
    }
  }
  return spread;
}
