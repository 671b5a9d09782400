// How much less each wire may carry when it lies in a bundle with others that carry theirs.
import { checkedNumber } from './guard.ts';
import { interpolate, type TableRow } from './interpolate.ts';

/** Share of the free-air current by the number of wires, all of them fully loaded. */
const fullyLoaded: readonly TableRow[] = [
  [1, 1],
  [2, 0.825],
  [3, 0.725],
  [4, 0.66],
  [5, 0.61],
  [6, 0.5725],
  [7, 0.54],
  [8, 0.5125],
  [9, 0.485],
  [10, 0.465],
  [12, 0.43],
  [15, 0.385]
];
const lastCount = 15;
const lastShare = 0.385;

/** Share of its free-air current that each wire of a bundle may carry with all of them fully loaded.
 *  Formula:  the curve to 15 wires, straight between its points; above: 0.385 x sqrt(15 / N), a bound:
 *            the bundle then gives off no more heat in all than the one of 15 did, from more surface
 *  Source:   MIL-W-5088L / SAE AS50881 bundle curve at 100 % loading, a digitised copy (a few per cent)
 *  Valid:    1 to 400 wires; otherwise SumError
 *  Example:  bundleShare(7) // 0.54
 */
export function bundleShare(wires: number): number {
  const limits = { min: 1, max: 400, whole: true, unit: 'wires' };
  const count = checkedNumber('wires', wires, limits);
  if (count > lastCount) return lastShare * Math.sqrt(lastCount / count);
  return interpolate('wires', fullyLoaded, count, 'wires');
}
