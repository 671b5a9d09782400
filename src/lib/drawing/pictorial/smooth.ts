// Rounds the corners of a line as a wire bends: short curves, flattened here, so that every writer
// draws the same ones whatever its own idea of a round corner.
import type { Spot } from '../presentation/sides.ts';
import { distance, minus, plus, times, turnBetween, unitOf } from './vectors.ts';

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

export interface Station {
  /** From the start of the line, mm. */
  readonly mm: number;
  readonly at: Spot;
  /** The line's direction, a step of 1. */
  readonly along: Spot;
}

/** Places along a line at distances from its start, which must grow. */
export function stationsAlong(line: readonly Spot[], distancesMm: readonly number[]): Station[] {
  const stations: Station[] = [];
  let run = 0;
  let index = 1;
  for (const mm of distancesMm) {
    for (;;) {
      const [a, b] = [line[index - 1], line[index]];
      if (!a || !b) return stations;
      const length = distance(a, b);
      if (mm <= run + length || index === line.length - 1) {
        const share = length === 0 ? 0 : Math.min(1, (mm - run) / length);
        stations.push({ mm, at: lerp(a, b, share), along: unitOf(minus(b, a)) });
        break;
      }
      run += length;
      index++;
    }
  }
  return stations;
}
