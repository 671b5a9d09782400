// What the program promises of its speed, as ratios: each is measured here and said to be met or missed.
import { ratioLine, type Timing } from './measure.ts';

export interface Verdict {
  readonly line: string;
  readonly isMet: boolean;
}

/** Prints a ratio with its goal, and hands back whether it was met.
 *  @param atMost the largest ratio that meets the goal */
export const judge = (label: string, work: Timing, baseline: Timing, atMost: number): Verdict => {
  const isMet = work.ms <= atMost * baseline.ms;
  const line = `${label}: ${ratioLine(work, baseline)}; goal ${atMost} x, ${isMet ? 'met' : 'MISSED'}`;
  console.log(line);
  return { line, isMet };
};

/** Prints how many goals were met, and the lines of those that were not. */
export const sumUp = (verdicts: readonly Verdict[]): void => {
  const missed = verdicts.filter(({ isMet }) => !isMet);
  console.log(`\nGoals: ${verdicts.length - missed.length} of ${verdicts.length} met.`);
  for (const { line } of missed) console.log(`  ${line}`);
};
