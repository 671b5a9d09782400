// Times a piece of work against a named baseline in one run. Only ratios are worth quoting: the
// machine's own speed cancels out of them.

export interface Timing {
  readonly name: string;
  /** Median of the counted runs, milliseconds. */
  readonly ms: number;
  readonly runs: number;
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1
    ? (sorted[middle] ?? 0)
    : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2;
};

/** Median time of some work after warm-up. Short work is repeated until half a second is spent. */
export const measure = (name: string, work: () => unknown, warmUps = 3, atLeast = 5): Timing => {
  for (let run = 0; run < warmUps; run += 1) work();
  const times: number[] = [];
  const start = performance.now();
  while (times.length < atLeast || (performance.now() - start < 500 && times.length < 200)) {
    const before = performance.now();
    work();
    times.push(performance.now() - before);
  }
  return { name, ms: median(times), runs: times.length };
};

export interface Named {
  readonly name: string;
  readonly work: () => unknown;
}

/** Median times of some work and of its baseline, measured by turns: whatever else the machine does
 *  meanwhile falls on both.
 *  @param times runs of the work to one of the baseline */
export const measureBeside = (
  { name, work }: Named,
  baseline: Named,
  times: number,
  rounds = 7
): readonly [Timing, Timing] => {
  const own: number[] = [];
  const base: number[] = [];
  const warmUps = 2;
  for (let round = -warmUps; round < rounds; round += 1) {
    const before = performance.now();
    baseline.work();
    if (round >= 0) base.push(performance.now() - before);
    for (let run = 0; run < times; run += 1) {
      const start = performance.now();
      work();
      if (round >= 0) own.push(performance.now() - start);
    }
  }
  return [
    { name, ms: median(own), runs: own.length },
    { name: baseline.name, ms: median(base), runs: base.length }
  ];
};

/** As `measure`, for work that answers later. */
export const measureAsync = async (
  name: string,
  work: () => Promise<unknown>,
  warmUps = 2,
  runs = 3
): Promise<Timing> => {
  for (let run = 0; run < warmUps; run += 1) await work();
  const times: number[] = [];
  for (let run = 0; run < runs; run += 1) {
    const before = performance.now();
    await work();
    times.push(performance.now() - before);
  }
  return { name, ms: median(times), runs };
};

/** "study + rules 12.3 ms = 4.1 x zod's parse 3.0 ms" */
export const ratioLine = (work: Timing, baseline: Timing): string =>
  `${work.name} ${work.ms.toFixed(1)} ms = ${Number((work.ms / baseline.ms).toPrecision(3))} x ${baseline.name} ${baseline.ms.toFixed(1)} ms`;
