// The smallest round hole for a bundle of wires of any sizes: many starts, each pressed together
// in a slowly shrinking hole, the best one kept. The same wires always give the same answer.
import { roundSignificant } from '#quantity/index.ts';
import { checkedNumber } from '../guard.ts';
import { SumError } from '../sum-error.ts';
import { minimise } from './minimise.ts';
import { overlapEnergy, spreadApart, type Centres, type Placement } from './overlap.ts';
import { repeatableChance, seedPlacements } from './seeds.ts';

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
  const { radius, centres } = sorted.length <= 2 ? inLine(radii) : pressed(radii);
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

function pressed(radii: Float64Array): Placement {
  const extraStarts = radii.length <= 60 ? 8 : radii.length <= 120 ? 2 : 0;
  const started = seedPlacements(radii, extraStarts)
    .map((seed) => press(radii, spreadApart(radii, settle(radii, seed)), 0.03, 0.004))
    .sort((a, b) => a.radius - b.radius);
  const [best, ...others] = started
    .slice(0, 3)
    .map((placement, rank) => (rank === 0 ? exchange(radii, placement) : placement))
    .map((placement) => press(radii, placement, 0.004, 0.0003));
  return others.reduce(
    (least, next) => (next.radius < least.radius ? next : least),
    best ?? inLine(radii)
  );
}

/** Tries circles of different sizes in each other's places and keeps what made the hole smaller. */
function exchange(radii: Float64Array, start: Placement): Placement {
  const [largest = 0] = radii;
  const smallest = radii.at(-1) ?? 0;
  if (largest - smallest < 1e-6 * largest || radii.length > 60) return start;
  const chance = repeatableChance(radii.length + 1);
  const pick = (): number => Math.floor(chance() * radii.length);
  let best = start;
  for (let turn = 0; turn < exchanges; turn += 1) {
    const [i, j] = [pick(), pick()];
    if (Math.abs((radii[i] ?? 0) - (radii[j] ?? 0)) < 1e-6 * largest) continue;
    const swapped = swapCentres(best.centres, i, j);
    const next = press(radii, spreadApart(radii, settle(radii, swapped)), 0.02, 0.004);
    if (next.radius < best.radius) best = next;
  }
  return best;
}

const exchanges = 40;

function swapCentres(centres: Centres, i: number, j: number): Centres {
  const swapped = Float64Array.from(centres);
  swapped.set(centres.subarray(2 * j, 2 * j + 2), 2 * i);
  swapped.set(centres.subarray(2 * i, 2 * i + 2), 2 * j);
  return swapped;
}

/** A seed with its worst overlaps relaxed, in a hole that 80 % of its area would fill. */
function settle(radii: Float64Array, seed: Centres): Centres {
  const area = radii.reduce((sum, radius) => sum + radius * radius, 0);
  const energy = overlapEnergy(radii, Math.sqrt(area / 0.8));
  return minimise(energy, seed, { maxSteps: 60, enough: 1e-6 });
}

/** Shrinks the hole by a step, lets the circles settle, and takes smaller steps where that fails. */
function press(
  radii: Float64Array,
  start: Placement,
  firstStep: number,
  lastStep: number
): Placement {
  let best = start;
  let step = firstStep;
  while (step > lastStep) {
    const energy = overlapEnergy(radii, best.radius * (1 - step));
    const settled = minimise(energy, best.centres, { maxSteps: 60, enough: 1e-10 });
    const next = spreadApart(radii, settled);
    const gain = 1 - next.radius / best.radius;
    if (gain > 0) best = next;
    if (gain < step * 0.3) step *= 0.4;
  }
  return best;
}
