// Cuts a polygon along straight lines.
import type { Spot } from '../presentation/sides.ts';

/** The part of a polygon that bulges outward on which `insideOf`, a function without bends, is not below 0.
 *  Empty where nothing is left. */
export function clipPolygon(
  corners: readonly Spot[],
  insideOf: (spot: Spot) => number
): readonly Spot[] {
  const kept: Spot[] = [];
  for (const [index, to] of corners.entries()) {
    const from = corners.at(index - 1);
    if (!from) continue;
    const [before, after] = [insideOf(from), insideOf(to)];
    if (before < 0 !== after < 0) {
      const share = before / (before - after);
      kept.push({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share });
    }
    if (after >= 0) kept.push(to);
  }
  return kept;
}
