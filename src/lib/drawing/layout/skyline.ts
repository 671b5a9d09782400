// Which of many level bands lies directly above which: seen from below, a skyline.

export interface Band {
  readonly x1: number;
  readonly x2: number;
  readonly y1: number;
  readonly y2: number;
}

interface Stretch {
  from: number;
  to: number;
  item: number;
}

/** Pairs of neighbours, by their index: `upper` is the last thing above `lower` over some stretch.
 *  Bands count as wider by `reach` on each side. */
export const findAbove = (
  bands: readonly Band[],
  reach: number
): { upper: number; lower: number }[] => {
  const order = bands
    .map((_, index) => index)
    .sort((a, b) => {
      const [one, two] = [bands[a] as Band, bands[b] as Band];
      return one.y1 + one.y2 - two.y1 - two.y2 || one.x1 - two.x1;
    });
  let skyline: Stretch[] = [];
  const pairs: { upper: number; lower: number }[] = [];
  for (const lower of order) {
    const { x1, x2 } = bands[lower] as Band;
    const [from, to] = [x1 - reach / 2, x2 + reach / 2];
    const next: Stretch[] = [];
    const seen = new Set<number>();
    for (const stretch of skyline) {
      if (stretch.to <= from || stretch.from >= to) {
        next.push(stretch);
        continue;
      }
      if (!seen.has(stretch.item)) {
        seen.add(stretch.item);
        pairs.push({ upper: stretch.item, lower });
      }
      if (stretch.from < from) next.push({ ...stretch, to: from });
      if (stretch.to > to) next.push({ ...stretch, from: to });
    }
    next.push({ from, to, item: lower });
    skyline = next;
  }
  return pairs;
};
