// The smallest round hole for a bundle of wires of any sizes: many starts, each pressed together
// in a slowly shrinking hole, the best one kept. The same wires always give the same answer.
import { roundSignificant } from '#quantity/index.ts';
import { checkedNumber } from '../guard.ts';
import { SumError } from '../sum-error.ts';
import type { Placement } from './overlap.ts';
import { pressTogether } from './press.ts';

export interface PackedCircle {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

export interface Packing {
  /** Diameter of the hole, round the origin, in the unit of the circles. */
  readonly diameter: number;
  /** In the order in which they were given. */
  readonly circles: readonly PackedCircle[];
}

export const mostCircles = 400;

/** The hole grows by this so that rounding in the last digits never makes it too small. */
const safety = 1 + 1e-12;

const cache = new Map<string, Packing>();
const cacheLimit = 2000;

/** Packs circles of these diameters into a round hole as small as can be found: for 1 to 37 equal
 *  circles at most 2 % over the best published, never under it.
 *  Source:   method: minimal overlap energy over many starts; held against published best packings
 *  Valid:    1 to 400 circles, each above 0 up to 1000, none under 1/100 of the largest; otherwise SumError
 *  Example:  packCircles([1, 1, 1, 1, 1, 1, 1]).diameter // 3
 */
export function packCircles(diameters: readonly number[]): Packing {
  const order = checkedOrder(diameters);
  const sorted = order.map((index) => roundSignificant(diameters[index] ?? 0));
  const key = sorted.join(' ');
  let packing = cache.get(key);
  if (!packing) {
    packing = packSorted(sorted);
    const oldest = cache.keys().next().value;
    if (cache.size >= cacheLimit && oldest !== undefined) cache.delete(oldest);
    cache.set(key, packing);
  }
  return inOrder(packing, order);
}

/** The circles' indices, largest circle first. */
function checkedOrder(diameters: readonly number[]): number[] {
  if (diameters.length < 1 || diameters.length > mostCircles) {
    throw new SumError({
      problem: 'out of range',
      input: 'diameters',
      value: `${diameters.length} of them`,
      limit: `1 to ${mostCircles} diameters`,
      wayOut: 'Give one diameter for each wire of the bundle.'
    });
  }
  const largest = Math.max(...diameters);
  const limits = { min: 0, max: 1000, above: true, unit: 'mm' };
  for (const diameter of diameters) checkedNumber('diameters', diameter, limits);
  const least = { min: largest / 100, max: 1000, unit: 'mm' };
  for (const diameter of diameters) checkedNumber('diameters', diameter, least);
  return diameters
    .map((_, index) => index)
    .sort((a, b) => (diameters[b] ?? 0) - (diameters[a] ?? 0));
}

function inOrder(packing: Packing, order: readonly number[]): Packing {
  const circles = new Array<PackedCircle>(order.length);
  packing.circles.forEach((circle, rank) => {
    circles[order[rank] ?? rank] = circle;
  });
  return { diameter: packing.diameter, circles };
}

/** Packs diameters that come largest first. Works on radii with a mean of 1. */
function packSorted(sorted: readonly number[]): Packing {
  const mean = sorted.reduce((sum, diameter) => sum + diameter, 0) / sorted.length / 2;
  const radii = Float64Array.from(sorted, (diameter) => diameter / 2 / mean);
  const { radius, centres } = sorted.length <= 2 ? inLine(radii) : pressTogether(radii);
  const circles = sorted.map((diameter, i) => ({
    x: (centres[2 * i] ?? 0) * mean,
    y: (centres[2 * i + 1] ?? 0) * mean,
    diameter
  }));
  return { diameter: 2 * radius * mean * safety, circles };
}

/** One circle, or two side by side: exact. */
function inLine(radii: Float64Array): Placement {
  const [first = 0, second = 0] = radii;
  const centres = radii.length === 1 ? [0, 0] : [-second, 0, first, 0];
  return { radius: first + second, centres: Float64Array.from(centres) };
}
