// What a bundle needs: the hole it goes through, the clamp and sleeve round it, by real packing,
// with the handbook's estimate beside it.
import { heatShrinks } from '#handbook/index.ts';
import { roundSignificant } from '#quantity/index.ts';
import { mmPerInch } from './conductor.ts';
import { checkedNumber } from './guard.ts';
import { packCircles } from './packing/pack-circles.ts';
import { SumError } from './sum-error.ts';

/** Diameter of a bundle of equal wires over that of one, by the most wires that the factor is good for. */
const equalFactors: readonly (readonly [upTo: number, factor: number])[] = [
  [1, 1],
  [2, 2],
  [3, 2.16],
  [4, 2.41],
  [5, 2.7],
  [7, 3],
  [8, 3.6],
  [12, 4],
  [14, 4.41],
  [16, 4.7],
  [19, 5],
  [21, 5.31],
  [24, 5.61],
  [27, 6],
  [30, 6.41],
  [33, 6.7],
  [37, 7],
  [40, 7.31],
  [44, 7.61],
  [48, 8],
  [52, 8.41],
  [56, 8.7],
  [61, 9]
];

/** Bundle diameter by the handbook's rule, in the unit of the wires.
 *  Formula:  equal wires: factor x d by count, to 61; else 1.2 sqrt(sum of d^2)
 *  Source:   published table "calculating wire and cable bundle size"
 *  Valid:    1 or more diameters above 0; otherwise SumError
 *  Example:  bundleEstimate([1.19, 1.19, 1.19, 1.4, 1.4, 1.4, 1.4, 1.4, 1.65]) // 4.914260
 */
export function bundleEstimate(diameters: readonly number[]): number {
  checkedNumber('diameters', diameters.length, { min: 1, unit: 'wires' });
  for (const d of diameters) checkedNumber('diameters', d, { min: 0, max: 1000, above: true });
  const largest = Math.max(...diameters);
  const isEqual = diameters.every((diameter) => largest - diameter < 1e-9 * largest);
  const row = equalFactors.find(([upTo]) => upTo >= diameters.length);
  if (isEqual && row) return row[1] * largest;
  return 1.2 * Math.sqrt(diameters.reduce((sum, diameter) => sum + diameter * diameter, 0));
}

export interface Bundle {
  readonly packedMm: number;
  readonly estimateMm: number;
  /** The smallest loop clamp, in sixteenths of an inch and in mm. */
  readonly clampSixteenths: number;
  readonly clampMm: number;
  /** Inside diameter as supplied of a 2:1 sleeve that slips over and still grips; null where none is listed. */
  readonly sleeveMm: number | null;
}

const mmPerSixteenth = mmPerInch / 16;
const largestClampSixteenths = 64;
/** A bundle is not as round and smooth as its circle: a sleeve must be this much wider to slip on. */
const slipOn = 1.25;

/** Diameter of a bundle of wires, and what goes round it.
 *  Formula:  packed: smallest hole found; clamp: rounded up to 1/16 in; sleeve: the smallest supplied
 *            size of at least 1.25 x packed whose recovered size is below packed
 *  Source:   packing of unequal circles; MS21919 sizes (dash number from memory); 2:1 heat-shrink data
 *            sheet; 1.25: common practice, no source
 *  Valid:    1 to 400 diameters up to a bundle of 4 in; otherwise SumError
 *  Example:  bundle([2, 2, 2, 2, 2, 2, 2]).clampSixteenths // 4
 */
export function bundle(diametersMm: readonly number[]): Bundle {
  const packedMm = packCircles(diametersMm).diameter;
  const clampSixteenths = Math.ceil(roundSignificant(packedMm / mmPerSixteenth));
  if (clampSixteenths > largestClampSixteenths) throw tooThick(packedMm);
  return {
    packedMm,
    estimateMm: bundleEstimate(diametersMm),
    clampSixteenths,
    clampMm: clampSixteenths * mmPerSixteenth,
    sleeveMm: sleeveOver(packedMm)
  };
}

/** Supplied diameter of the sleeve for a round thing, mm; null where no listed size slips over and grips.
 *  Example:  sleeveOver(2) // 3.2
 */
export function sleeveOver(outsideMm: number): number | null {
  const needed = roundSignificant(outsideMm * slipOn);
  const sleeve = heatShrinks.find(({ suppliedMm }) => suppliedMm >= needed);
  return sleeve && sleeve.recoveredMm < outsideMm ? sleeve.suppliedMm : null;
}

const tooThick = (packedMm: number): SumError =>
  new SumError({
    problem: 'outside the table',
    input: 'diameters',
    value: `a bundle of ${packedMm.toPrecision(4)} mm`,
    limit: 'up to 101.6 mm (4 in)',
    wayOut: 'Split the bundle.'
  });
