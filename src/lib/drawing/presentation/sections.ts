// A big unit is laid out in sections, as one would draw it by hand: rows of neighbouring stages, one
// below the other. Where it is cut is where the fewest lines run across.
import type { Id } from '#document/index.ts';
import type { RankLine } from './ranks.ts';

/** What a section costs beside the lines that are cut: too few or too many parts. */
const imbalancePrice = 0.5;

/** Parts in the order of their ranks cut into `count` runs. */
export const cutIntoSections = (
  ordered: readonly Id[],
  lines: readonly RankLine[],
  count: number
): Id[][] => {
  const total = ordered.length;
  if (count <= 1 || total < count) return [[...ordered]];
  const place = new Map(ordered.map((id, index) => [id, index]));
  // How much runs across each gap between neighbours.
  const across = new Float64Array(total + 1);
  for (const { from, to, weight } of lines) {
    const [a, b] = [place.get(from), place.get(to)];
    if (a === undefined || b === undefined) continue;
    for (let gap = Math.min(a, b) + 1; gap <= Math.max(a, b); gap++) {
      across[gap] = (across[gap] ?? 0) + weight;
    }
  }
  const ideal = total / count;
  const price = (from: number, to: number): number => {
    const off = (to - from - ideal) / ideal;
    return imbalancePrice * ideal * off * off * 4;
  };
  const best = Array.from({ length: count + 1 }, () => new Float64Array(total + 1).fill(Infinity));
  const cameFrom = Array.from({ length: count + 1 }, () => new Int32Array(total + 1));
  (best[0] as Float64Array)[0] = 0;
  for (let section = 1; section <= count; section++) {
    const [before, now] = [best[section - 1] as Float64Array, best[section] as Float64Array];
    for (let to = section; to <= total; to++) {
      for (let from = section - 1; from < to; from++) {
        const cut = from === 0 ? 0 : (across[from] ?? 0);
        const cost = (before[from] ?? Infinity) + cut + price(from, to);
        if (cost < (now[to] ?? Infinity)) {
          now[to] = cost;
          (cameFrom[section] as Int32Array)[to] = from;
        }
      }
    }
  }
  const sections: Id[][] = [];
  let to = total;
  for (let section = count; section > 0; section--) {
    const from = (cameFrom[section] as Int32Array)[to] ?? 0;
    sections.unshift(ordered.slice(from, to));
    to = from;
  }
  return sections;
};
