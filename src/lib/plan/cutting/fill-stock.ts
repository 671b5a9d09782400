// The pieces that fill one length of stock best: the heart of the cutting. A search through the subsets
// that begins with the longest pieces and stops at a fill without waste, or when it has looked enough.
import type { WantedPiece } from './types.ts';

/** Lengths nearer than this are one, mm: sums of decimals are not exact. */
export const hairMm = 1e-6;

/** Indices of the pieces that fill a length with the least left over.
 *  Formula:  largest sum of a subset not above the length, by branch and bound
 *  Source:   minimum bin slack, Gupta and Ho, "A new heuristic algorithm for the one-dimensional
 *            bin-packing problem", Production Planning & Control 10 (1999)
 *  Valid:    pieces longest first; of the search no more than `looks` steps are done
 *  @param first the index of a piece that must be in it, or null
 */
export function fillStock(
  lengthMm: number,
  pieces: readonly WantedPiece[],
  first: number | null,
  looks: number
): readonly number[] {
  const held = first === null ? 0 : (pieces[first]?.mm ?? 0);
  if (held > lengthMm + hairMm) return [];
  const tail = new Float64Array(pieces.length + 1);
  for (let at = pieces.length - 1; at >= 0; at--) tail[at] = (tail[at + 1] ?? 0) + mmAt(pieces, at);
  let best: number[] = [];
  let bestLeft = Infinity;
  let left = looks;
  const chosen: number[] = [];
  const search = (from: number, room: number): boolean => {
    if (room < bestLeft - hairMm) {
      bestLeft = room;
      best = [...chosen];
      if (room <= hairMm) return true;
    }
    const start = firstFitting(pieces, from, room);
    for (let at = start; at < pieces.length; at++) {
      if (left-- <= 0) return true;
      // All that is left together would not do better than what was found.
      if (room - (tail[at] ?? 0) >= bestLeft - hairMm) return false;
      if (at === first) continue;
      const mm = mmAt(pieces, at);
      // A piece as long as the one just tried and left out leads to the same sums.
      if (at > start && at - 1 !== first && mm === mmAt(pieces, at - 1)) continue;
      chosen.push(at);
      if (search(at + 1, room - mm)) return true;
      chosen.pop();
    }
    return false;
  };
  search(0, lengthMm - held);
  return first === null ? best : [first, ...best].sort((a, b) => a - b);
}

const mmAt = (pieces: readonly WantedPiece[], at: number): number => pieces[at]?.mm ?? 0;

/** The first piece from a place on that is no longer than the room. */
function firstFitting(pieces: readonly WantedPiece[], from: number, room: number): number {
  let [low, high] = [from, pieces.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (mmAt(pieces, middle) > room + hairMm) low = middle + 1;
    else high = middle;
  }
  return low;
}
