// How few lengths of stock could do at the very best, whatever the cutting.
import { hairMm } from './fill-stock.ts';
import type { WantedPiece } from './types.ts';

/** Lower bound for equal lengths of stock.
 *  Formula:  the greatest over K of: pieces above L - K, plus those above L / 2, plus what the rest of
 *            the pieces of K and more needs beyond the room that these leave
 *  Source:   bound L2, Martello and Toth, "Knapsack Problems", 1990, chapter 8
 *  Valid:    no piece longer than the stock
 *  Example:  lowerBound([{ id: 'a', mm: 6 }, { id: 'b', mm: 6 }, { id: 'c', mm: 4 }], 10) // 2
 */
export function lowerBound(pieces: readonly WantedPiece[], stockMm: number): number {
  const lengths = pieces.map(({ mm }) => mm).filter((mm) => mm > 0);
  const thresholds = [0, ...new Set(lengths.filter((mm) => mm <= stockMm / 2))];
  let best = 0;
  for (const least of thresholds) {
    let [large, middle, middleMm, smallMm] = [0, 0, 0, 0];
    for (const mm of lengths) {
      if (mm > stockMm - least + hairMm) large++;
      else if (mm > stockMm / 2 + hairMm) [middle, middleMm] = [middle + 1, middleMm + mm];
      else if (mm >= least) smallMm += mm;
    }
    const room = middle * stockMm - middleMm;
    const beyond = Math.max(0, Math.ceil((smallMm - room) / stockMm - 1e-9));
    best = Math.max(best, large + middle + beyond);
  }
  return best;
}
