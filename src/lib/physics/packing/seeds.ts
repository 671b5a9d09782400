// Placements to start from. No one of them is good for every count: lattices suit 7, 19 and their
// like, rings suit 9 and 11, chance finds what nobody thought of.
import { packSiblings } from 'd3-hierarchy';
import type { Centres } from './overlap.ts';

/** Numbers from 0 up to 1, the same ones every time (a linear congruential generator, the
 *  constants of "Numerical Recipes"). */
export function repeatableChance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Starting placements for circles given largest first, `extra` of them by chance. */
export function seedPlacements(radii: Float64Array, extra: number): Centres[] {
  const chance = repeatableChance(radii.length);
  const seeds = [
    siblings(radii),
    hexagonal(radii, 0, 0),
    hexagonal(radii, 0.5, 0.288675),
    rings(radii)
  ];
  for (let i = 0; i < extra; i += 1) seeds.push(scattered(radii, chance));
  return seeds;
}

/** One after the other round a growing heap, largest first. */
function siblings(radii: Float64Array): Centres {
  const circles = packSiblings(Array.from(radii, (r) => ({ r, x: 0, y: 0 })));
  return Float64Array.from(circles.flatMap(({ x, y }) => [x, y]));
}

/** On the points of a hexagonal lattice nearest to its origin, which lies (shiftX, shiftY) off a point. */
function hexagonal(radii: Float64Array, shiftX: number, shiftY: number): Centres {
  const pitch = 2 * meanRadius(radii);
  const reach = Math.ceil(Math.sqrt(radii.length)) + 2;
  const points: { x: number; y: number }[] = [];
  for (let row = -reach; row <= reach; row += 1) {
    for (let column = -reach; column <= reach; column += 1) {
      const x = (column + (row % 2 === 0 ? 0 : 0.5) - shiftX) * pitch;
      points.push({ x, y: (row * Math.sqrt(0.75) - shiftY) * pitch });
    }
  }
  points.sort((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y));
  return Float64Array.from(points.slice(0, radii.length).flatMap(({ x, y }) => [x, y]));
}

/** In rings, filled from the outside in. */
function rings(radii: Float64Array): Centres {
  const radius = meanRadius(radii);
  let left = radii.length;
  let ring = outerRing(left, radius);
  const centres: number[] = [];
  while (left > 0) {
    const fits =
      ring < radius ? 1 : Math.max(1, Math.floor(Math.PI / Math.asin(radius / ring) + 1e-9));
    const count = Math.min(left, fits);
    for (let i = 0; i < count; i += 1) {
      const angle = (2 * Math.PI * i) / count;
      centres.push(ring * Math.cos(angle), ring * Math.sin(angle));
    }
    left -= count;
    ring = Math.max(0, ring - 2 * radius);
  }
  return Float64Array.from(centres);
}

/** The smallest outer ring whose inner rings hold all the rest. */
function outerRing(count: number, radius: number): number {
  const capacityOf = (outer: number): number => {
    let total = 0;
    for (let ring = outer; ring >= 0; ring -= 2 * radius) {
      total += ring < radius ? 1 : Math.floor(Math.PI / Math.asin(radius / ring) + 1e-9);
    }
    return total;
  };
  let outer = 0;
  while (capacityOf(outer) < count) outer += radius / 50;
  return outer;
}

/** By chance over a disc of about the right size. */
function scattered(radii: Float64Array, chance: () => number): Centres {
  const area = radii.reduce((sum, radius) => sum + radius * radius, 0);
  const reach = Math.sqrt(area / 0.8);
  return Float64Array.from(
    Array.from(radii).flatMap((radius) => {
      const angle = 2 * Math.PI * chance();
      const distance = Math.sqrt(chance()) * Math.max(0, reach - 0.7 * radius);
      return [distance * Math.cos(angle), distance * Math.sin(angle)];
    })
  );
}

const meanRadius = (radii: Float64Array): number =>
  radii.reduce((sum, radius) => sum + radius, 0) / radii.length;
