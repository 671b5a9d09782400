// How far circles overlap each other and stick out of a round hole, as an energy that can be
// lowered, and the tightest hole that a placement fits in once nothing overlaps.
import { packEnclose } from 'd3-hierarchy';
import type { Energy } from './minimise.ts';

/** Centres of circles as x0, y0, x1, y1, … */
export type Centres = Float64Array;

/** Sum of the squared overlaps between circles, and between each and the outside of the hole. */
export function overlapEnergy(radii: Float64Array, holeRadius: number): Energy {
  const count = radii.length;
  return (at, slope) => {
    slope.fill(0);
    let energy = 0;
    for (let i = 0; i < count; i += 1) {
      const x = at[2 * i] ?? 0;
      const y = at[2 * i + 1] ?? 0;
      const radius = radii[i] ?? 0;
      let slopeX = 0;
      let slopeY = 0;
      for (let j = i + 1; j < count; j += 1) {
        const dx = x - (at[2 * j] ?? 0);
        const reach = radius + (radii[j] ?? 0);
        if (dx >= reach || dx <= -reach) continue;
        const dy = y - (at[2 * j + 1] ?? 0);
        const squared = dx * dx + dy * dy;
        if (squared >= reach * reach) continue;
        const distance = Math.max(Math.sqrt(squared), tiny);
        const overlap = reach - distance;
        energy += overlap * overlap;
        const push = (2 * overlap) / distance;
        slopeX -= push * dx;
        slopeY -= push * dy;
        slope[2 * j] = (slope[2 * j] ?? 0) + push * dx;
        slope[2 * j + 1] = (slope[2 * j + 1] ?? 0) + push * dy;
      }
      const fromMiddle = Math.sqrt(x * x + y * y);
      const outside = fromMiddle + radius - holeRadius;
      if (outside > 0) {
        energy += outside * outside;
        const pull = (2 * outside) / Math.max(fromMiddle, tiny);
        slopeX += pull * x;
        slopeY += pull * y;
      }
      slope[2 * i] = (slope[2 * i] ?? 0) + slopeX;
      slope[2 * i + 1] = (slope[2 * i + 1] ?? 0) + slopeY;
    }
    return energy;
  };
}

const tiny = 1e-9;

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
