// Sleeves that shrink: over the old conductor, or over a splice. What they are when shrunk, and what
// they may be trusted with.
import { heatShrinks, type HeatShrink } from '#handbook/index.ts';
import { formatMm, formatNumber } from '#quantity/index.ts';
import type { PlannedSleeve } from './types.ts';

/** What polyolefin sleeving of the MIL-I-23053 class is commonly rated, V. From memory: check against
 *  the data of the sleeve that you use. */
export const sleeveRatingV = 600;
/** Thinner than that, shrunk on, it is not counted as 600 V insulation, mm. From memory. */
export const leastWallMm = 0.4;

/** Wall of a sleeve that has shrunk onto something wider than it would shrink to by itself, mm.
 *  Formula:  its cross-section stays: w = sqrt(D^2/4 + (d + w0) w0) - D/2, d the recovered inside, w0 the
 *            wall there, D what it lies on
 *  Source:   geometry; length taken as unchanged
 *  Example:  shrunkWallMm({ recoveredMm: 1.6, wallMm: 0.48 }, 2) // 0.4141428
 */
export function shrunkWallMm(
  { recoveredMm, wallMm }: Pick<HeatShrink, 'recoveredMm' | 'wallMm'>,
  overMm: number
): number {
  const radius = Math.max(overMm, recoveredMm) / 2;
  return Math.sqrt(radius * radius + (recoveredMm + wallMm) * wallMm) - radius;
}

/** A sleeve must be this much wider to slip on. Common practice, no source. */
const slipOn = 1.25;
/** Sleeves shrink along their length as well. Common practice, no source. */
export const lengthAllowance = 1.1;

/** The smallest listed sleeve that slips over something round, shrunk on; null where none does, or its
 *  wall comes out too thin.
 *  @param lengthMm of one sleeve as cut; null where not known */
export function sleeveFor(
  overMm: number,
  lengthMm: number | null,
  count: number
): PlannedSleeve | null {
  const sleeve = heatShrinks.find(
    (each) => each.suppliedMm >= overMm * slipOn && shrunkWallMm(each, overMm) >= leastWallMm
  );
  if (!sleeve) return null;
  const { suppliedMm, recoveredMm } = sleeve;
  const wallMm = shrunkWallMm(sleeve, overMm);
  const size = `${formatNumber(suppliedMm)} mm sleeve, shrinking ${formatNumber(suppliedMm / recoveredMm, 2)} to 1 to ${formatMm(recoveredMm)}`;
  const over = formatMm(Number(overMm.toPrecision(3)));
  const wall = formatMm(Number(wallMm.toPrecision(2)));
  const words =
    recoveredMm < overMm
      ? `${size}: over ${over} its wall is ${wall}`
      : `${size}: its wall is ${wall}, and it does not grip ${over}, so fix it at both ends`;
  return { suppliedMm, recoveredMm, wallMm, lengthMm, count, words };
}
