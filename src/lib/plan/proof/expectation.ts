// What a reading should be, and whether one that was typed in is: a plain function, so that paper, grid
// and command line judge alike.
import { formatQuantity, parseQuantity, type Dimension } from '#quantity/index.ts';

export interface Expectation {
  readonly dimension: Extract<Dimension, 'voltage' | 'resistance' | 'current'>;
  readonly least: number | null;
  readonly most: number | null;
  /** In words, for paper: "285 V, 228 to 342 V". */
  readonly words: string;
  readonly basis: string;
}

export interface Judged {
  readonly verdict: 'as expected' | 'too low' | 'too high' | 'not judged';
  readonly words: string;
}

/** A reading against what is expected. Nothing is called good or safe. */
export function judgeReading(expected: Expectation | null, typed: string): Judged {
  if (typed.trim() === '') return { verdict: 'not judged', words: 'no reading yet' };
  if (expected === null)
    return { verdict: 'not judged', words: 'nothing is known that it could be held against' };
  const parsed = parseQuantity(typed, expected.dimension);
  if (!parsed.ok)
    return { verdict: 'not judged', words: `"${typed}" is not understood: ${parsed.problem}` };
  const { least, most, words, dimension } = expected;
  if (dimension === 'resistance' && parsed.value < 0)
    return {
      verdict: 'not judged',
      words: `"${typed}" is no reading: a resistance is never below 0 Ω. Look for a charge that is left, null the leads, and measure again`
    };
  const shown = formatQuantity(parsed.value, dimension);
  if (least !== null && parsed.value < least)
    return { verdict: 'too low', words: `${shown} is below what is expected: ${words}` };
  if (most !== null && parsed.value > most)
    return { verdict: 'too high', words: `${shown} is above what is expected: ${words}` };
  return { verdict: 'as expected', words: `${shown}; expected ${words}` };
}
