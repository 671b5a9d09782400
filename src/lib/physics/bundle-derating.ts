// How much less each wire may carry when it lies in a bundle with others that carry theirs.
import { checkedNumber } from './guard.ts';
import { interpolate, type TableRow } from './interpolate.ts';

/** Share of the free-air current by the number of wires and by how much of what the bundle could carry
 *  is in use, per cent. */
const curves: readonly (readonly [loadedPercent: number, rows: readonly TableRow[]])[] = [
  [20, curve(0.9675, 0.935, 0.9075, 0.875, 0.85, 0.82, 0.795, 0.775, 0.755, 0.715, 0.67)],
  [40, curve(0.92, 0.855, 0.805, 0.76, 0.725, 0.695, 0.6675, 0.645, 0.6225, 0.585, 0.54)],
  [60, curve(0.91, 0.815, 0.75, 0.695, 0.655, 0.625, 0.595, 0.575, 0.55, 0.515, 0.465)],
  [80, curve(0.87, 0.77, 0.705, 0.65, 0.605, 0.57, 0.5425, 0.52, 0.5, 0.465, 0.42)],
  [100, curve(0.825, 0.725, 0.66, 0.61, 0.5725, 0.54, 0.5125, 0.485, 0.465, 0.43, 0.385)]
];

/** The counts of wires that the copy gives, after one wire alone. */
function curve(...shares: readonly number[]): readonly TableRow[] {
  const counts = [2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15];
  return [[1, 1], ...counts.map((count, n): TableRow => [count, shares[n] ?? 1])];
}

const lastCount = 15;
/** Below it the copy gives nothing, and its first curve is held, per cent. */
export const leastLoadedPercent = 20;

/** Share of its free-air current that each wire of a bundle may carry.
 *  Formula:  the curve to 15 wires, straight between its points and between curves; above 15 wires: that
 *            of 15 x sqrt(15 / N), a bound: the bundle then gives off no more heat in all than the one of
 *            15 did, from more surface
 *  Source:   MIL-W-5088L / SAE AS50881 bundle curves, a digitised copy (a few per cent)
 *  Valid:    1 to 400 wires, 20 to 100 % of the bundle's whole current in use; otherwise SumError
 *  Example:  bundleShare(7) // 0.54
 */
export function bundleShare(wires: number, loadedPercent = 100): number {
  const limits = { min: 1, max: 400, whole: true, unit: 'wires' };
  const count = checkedNumber('wires', wires, limits);
  const loaded = checkedNumber('loaded', loadedPercent, {
    min: leastLoadedPercent,
    max: 100,
    unit: '%'
  });
  const counted = Math.min(count, lastCount);
  const byLoad = curves.map(([percent, rows]): TableRow => [
    percent,
    interpolate('wires', rows, counted, 'wires')
  ]);
  const share = interpolate('loaded', byLoad, loaded, '%');
  return count > lastCount ? share * Math.sqrt(lastCount / count) : share;
}
