// Finds a place of low energy near a start: the limited-memory BFGS method (Nocedal and Wright,
// "Numerical Optimization", algorithm 7.4) with a line search that halves its step.

/** Writes the slope at `at` into `slope` and returns the energy there. */
export type Energy = (at: Float64Array, slope: Float64Array) => number;

export interface MinimiseLimits {
  readonly maxSteps: number;
  /** Energies at or below this are low enough. */
  readonly enough: number;
  /** After 20 steps, steps that lower the energy by less than this share of it are no longer worth it. */
  readonly leastGain: number;
}

interface Memory {
  readonly step: Float64Array;
  readonly bend: Float64Array;
  readonly scale: number;
}

const memoryLength = 8;

/** The place reached, a new array. Ends when the energy is low enough, or no longer falls. */
export function minimise(
  energy: Energy,
  start: Float64Array,
  limits: MinimiseLimits
): Float64Array {
  let place = start.slice();
  let slope = new Float64Array(start.length);
  let level = energy(place, slope);
  const memory: Memory[] = [];
  for (let step = 0; step < limits.maxSteps && level > limits.enough; step += 1) {
    const next = search(energy, place, level, slope, downhill(slope, memory));
    if (!next) break;
    remember(memory, difference(next.place, place), difference(next.slope, slope));
    const fall = level - next.level;
    ({ place, slope, level } = next);
    if (step > 20 && fall < level * limits.leastGain) break;
  }
  return place;
}

/** The direction to go: the slope turned and stretched by what the last steps taught. */
function downhill(slope: Float64Array, memory: readonly Memory[]): Float64Array {
  const direction = new Float64Array(slope.length);
  addTo(direction, slope, -1);
  const shares: number[] = [];
  for (const { step, bend, scale } of memory.toReversed()) {
    const share = scale * dot(step, direction);
    shares.push(share);
    addTo(direction, bend, -share);
  }
  const last = memory.at(-1);
  const stretch = last ? dot(last.step, last.bend) / dot(last.bend, last.bend) : 0.25;
  for (let i = 0; i < direction.length; i += 1) direction[i] = (direction[i] ?? 0) * stretch;
  for (const { step, bend, scale } of memory) {
    addTo(direction, step, (shares.pop() ?? 0) - scale * dot(bend, direction));
  }
  return direction;
}

interface Reached {
  readonly place: Float64Array<ArrayBuffer>;
  readonly slope: Float64Array<ArrayBuffer>;
  readonly level: number;
}

/** A lower place along the direction: half the way each time until there is one, or twice as far
 *  for as long as the way still falls nearly as steeply as at its start. */
function search(
  energy: Energy,
  place: Float64Array,
  level: number,
  slope: Float64Array,
  direction: Float64Array
): Reached | undefined {
  const promised = Math.min(0, dot(slope, direction));
  const tryLength = (length: number): Reached | undefined => {
    const next = place.slice();
    addTo(next, direction, length);
    const nextSlope = new Float64Array(place.length);
    const nextLevel = energy(next, nextSlope);
    const isLower = nextLevel < level && nextLevel <= level + 1e-4 * length * promised;
    return isLower ? { place: next, slope: nextSlope, level: nextLevel } : undefined;
  };
  let reached = tryLength(1);
  for (let length = 2; reached && length < 1000; length *= 2) {
    if (dot(reached.slope, direction) > 0.9 * promised) return reached;
    const further = tryLength(length);
    if (!further || further.level >= reached.level) return reached;
    reached = further;
  }
  for (let length = 0.5; !reached && length > 1e-4; length /= 2) reached = tryLength(length);
  return reached;
}

function remember(memory: Memory[], step: Float64Array, bend: Float64Array): void {
  const curve = dot(step, bend);
  if (curve <= 1e-14) return;
  memory.push({ step, bend, scale: 1 / curve });
  if (memory.length > memoryLength) memory.shift();
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
}

function addTo(target: Float64Array, source: Float64Array, times: number): void {
  for (let i = 0; i < target.length; i += 1)
    target[i] = (target[i] ?? 0) + times * (source[i] ?? 0);
}

function difference(a: Float64Array, b: Float64Array): Float64Array {
  const result = a.slice();
  addTo(result, b, -1);
  return result;
}
