// The search for a small hole: many starts, each pressed together in a slowly shrinking hole; the
// best few improved by exchanging circles of different sizes, the best of all kept.
import { minimise } from './minimise.ts';
import { overlapEnergy, spreadApart, type Centres, type Placement } from './overlap.ts';
import { repeatableChance, seedPlacements } from './seeds.ts';

const effort = { maxSteps: 60, leastGain: 1e-4 };

/** The best placement found for three circles or more, given by their radii, largest first, with a
 *  mean of about 1. */
export function pressTogether(radii: Float64Array): Placement {
  const extraStarts = radii.length <= 60 ? 6 : radii.length <= 120 ? 2 : 0;
  const started = seedPlacements(radii, extraStarts)
    .map((seed) => press(radii, spreadApart(radii, settle(radii, seed)), 0.03, 0.004))
    .sort((a, b) => a.radius - b.radius);
  return started
    .slice(0, 3)
    .map((placement, rank) => exchange(radii, placement, rank + 1))
    .map((placement) => press(radii, placement, 0.004, 0.0003))
    .reduce((least, next) => (next.radius < least.radius ? next : least));
}

/** Tries circles of different sizes in each other's places and keeps what made the hole smaller:
 *  mostly neighbours in size, for those upset the least. */
function exchange(radii: Float64Array, start: Placement, seed: number): Placement {
  if (!isDifferent(radii[0], radii.at(-1)) || radii.length > 60) return start;
  const chance = repeatableChance(radii.length + seed);
  const pick = (): number => Math.floor(chance() * radii.length);
  const turns = Math.min(40, Math.round(600 / radii.length));
  let best = start;
  for (let turn = 0; turn < turns; turn += 1) {
    const i = pick();
    const next = chance() < 0.6 ? nextSmaller(radii, i) : pick();
    if (!isDifferent(radii[i], radii[next])) continue;
    const swapped = swapCentres(best.centres, i, next);
    const settled = spreadApart(radii, settle(radii, swapped, best.radius * 0.995));
    if (settled.radius > best.radius * 1.02) continue;
    const placement = press(radii, settled, 0.006, 0.003);
    if (placement.radius < best.radius) best = placement;
  }
  return best;
}

/** Index of the first circle that is smaller; its own where there is none. Radii come largest first. */
function nextSmaller(radii: Float64Array, index: number): number {
  const found = radii.findIndex(
    (radius, other) => other > index && isDifferent(radius, radii[index])
  );
  return found === -1 ? index : found;
}

const isDifferent = (a = 0, b = 0): boolean => Math.abs(a - b) > 1e-6;

function swapCentres(centres: Centres, i: number, j: number): Centres {
  const swapped = centres.slice();
  swapped.set(centres.subarray(2 * j, 2 * j + 2), 2 * i);
  swapped.set(centres.subarray(2 * i, 2 * i + 2), 2 * j);
  return swapped;
}

/** Centres with their worst overlaps relaxed in a hole of that radius; not given, one that the
 *  circles would fill by 80 %. */
function settle(radii: Float64Array, centres: Centres, holeRadius?: number): Centres {
  const area = radii.reduce((sum, radius) => sum + radius * radius, 0);
  const energy = overlapEnergy(radii, holeRadius ?? Math.sqrt(area / 0.8));
  return minimise(energy, centres, { ...effort, enough: 1e-6 });
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
    const settled = minimise(energy, best.centres, { ...effort, enough: 1e-10 });
    const next = spreadApart(radii, settled);
    const gain = 1 - next.radius / best.radius;
    if (gain > 0) best = next;
    if (gain < step * 0.3) step *= 0.4;
  }
  return best;
}
