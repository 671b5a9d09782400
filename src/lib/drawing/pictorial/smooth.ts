// Rounds the corners of a line as a wire bends: short curves, flattened here, so that every writer
// draws the same ones whatever its own idea of a round corner.
import type { Spot } from '../presentation/sides.ts';
import { distance, middleOf, minus, plus, times, turnBetween, unitOf } from './vectors.ts';

const lerp = (a: Spot, b: Spot, share: number): Spot => plus(a, times(minus(b, a), share));

/** The line without places that repeat. */
export const withoutRepeats = (line: readonly Spot[]): Spot[] =>
  line.filter((spot, index) => {
    const before = line[index - 1];
    return !before || distance(before, spot) > 0.02;
  });

/** The line with its corners rounded: each curve leaves and meets the legs at most `reachMm` from the
 *  corner, and never beyond their middles. */
export function smoothLine(line: readonly Spot[], reachMm: number): Spot[] {
  const corners = withoutRepeats(line);
  const smooth: Spot[] = [];
  corners.forEach((corner, index) => {
    const before = corners[index - 1];
    const after = corners[index + 1];
    if (!before || !after) {
      smooth.push(corner);
      return;
    }
    const turn = Math.abs(turnBetween(minus(corner, before), minus(after, corner)));
    if (turn < 0.05) {
      smooth.push(corner);
      return;
    }
    const into = Math.min(reachMm, distance(before, corner) / 2);
    const out = Math.min(reachMm, distance(corner, after) / 2);
    const start = plus(corner, times(unitOf(minus(before, corner)), into));
    const end = plus(corner, times(unitOf(minus(after, corner)), out));
    const steps = Math.max(2, Math.ceil(turn / 0.3));
    for (let step = 0; step <= steps; step++) {
      const share = step / steps;
      smooth.push(lerp(lerp(start, corner, share), lerp(corner, end, share), share));
    }
  });
  return withoutRepeats(smooth);
}

/** Length of a line, mm. */
export const lineLength = (line: readonly Spot[]): number =>
  line.reduce((sum, spot, index) => sum + distance(line[index - 1] ?? spot, spot), 0);

/** The place and direction at a distance along a line, from its start. */
export function alongLine(line: readonly Spot[], mm: number): { at: Spot; along: Spot } {
  let left = mm;
  for (let index = 1; index < line.length; index++) {
    const [a, b] = [line[index - 1], line[index]];
    if (!a || !b) break;
    const length = distance(a, b);
    if (left <= length || index === line.length - 1) {
      const share = length === 0 ? 0 : Math.min(1, left / length);
      return { at: lerp(a, b, share), along: unitOf(minus(b, a)) };
    }
    left -= length;
  }
  const only = line[0] ?? { x: 0, y: 0 };
  return { at: middleOf(only, only), along: { x: 1, y: 0 } };
}
