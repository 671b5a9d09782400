// Shifts parts about on a floor, at first far and even where it costs, later only where it gains
// (simulated annealing: Kirkpatrick, Gelatt, Vecchi, Science 220, 1983, pp. 671-680). The same seed
// gives the same floor.
import type { Floor, FloorPart } from './floor.ts';

export interface Cooling {
  /** Lanes of cost that a shift may lose at the beginning and at the end. */
  readonly from: number;
  readonly to: number;
  /** How hard overlaps weigh at the beginning and at the end. */
  readonly overlap: readonly [number, number];
  readonly steps: number;
}

/** Cools the floor down, in place.
 *  @param chance numbers from 0 to below 1 */
export const anneal = (floor: Floor, cooling: Cooling, chance: () => number): void => {
  const { from, to, overlap, steps } = cooling;
  const count = floor.parts.length;
  if (count < 2) return;
  const cool = Math.log(to / from);
  const harden = Math.log(overlap[1] / overlap[0]);
  const farthest = Math.max(...floor.regions.map(({ width, height }) => Math.max(width, height)));
  for (let step = 0; step < steps; step++) {
    const share = step / steps;
    floor.turn(step);
    const heat = from * Math.exp(cool * share);
    floor.overlapWeight = overlap[0] * Math.exp(harden * share);
    const part = Math.floor(chance() * count);
    const dice = chance();
    if (dice < 0.2) {
      trySwap(floor, part, Math.floor(chance() * count), heat, chance);
      continue;
    }
    const reach = Math.max(1.5, farthest * (1 - share) ** 2 * (heat / from) ** 0.25 * 0.5);
    const [x, y] = [floor.x[part] ?? 0, floor.y[part] ?? 0];
    const middle = dice < 0.35 ? floor.middleOfOthers(part, chance()) : null;
    const { width, height } = floor.parts[part] as FloorPart;
    const start = middle ? { x: middle.x - width / 2, y: middle.y - height / 2 } : { x, y };
    // Every other small shift goes one way only, so that what is straight can stay straight.
    const axis = reach < 12 ? chance() : 1;
    const dx = axis < 0.4 ? 0 : (chance() * 2 - 1) * reach;
    const dy = axis >= 0.4 && axis < 0.8 ? 0 : (chance() * 2 - 1) * reach;
    const before = floor.costOf(part);
    floor.put(part, start.x + dx, start.y + dy);
    if (floor.x[part] === x && floor.y[part] === y) continue;
    const worse = floor.costOf(part) - before;
    if (worse > 0 && chance() >= Math.exp(-worse / heat)) floor.put(part, x, y);
  }
};

const trySwap = (floor: Floor, a: number, b: number, heat: number, chance: () => number): void => {
  const [one, two] = [floor.parts[a] as FloorPart, floor.parts[b] as FloorPart];
  if (a === b || one.region !== two.region) return;
  const [ax, ay, bx, by] = [floor.x[a] ?? 0, floor.y[a] ?? 0, floor.x[b] ?? 0, floor.y[b] ?? 0];
  const before = floor.costOf(a) + floor.costOf(b);
  const [wide, high] = [(one.width - two.width) / 2, (one.height - two.height) / 2];
  floor.put(a, bx - wide, by - high);
  floor.put(b, ax + wide, ay + high);
  const worse = floor.costOf(a) + floor.costOf(b) - before;
  if (worse > 0 && chance() >= Math.exp(-worse / heat)) {
    floor.put(a, ax, ay);
    floor.put(b, bx, by);
  }
};
