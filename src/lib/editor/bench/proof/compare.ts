// Ours against what the source says: how far off, what is allowed, and whether it is within.
import { acceptedRange, type ReferenceRow } from '#physics/reference/reference-row.ts';
import { formatNumber } from '#quantity/index.ts';

export interface Comparison {
  readonly isWithin: boolean;
  /** "+0.12 %", "0", "−0.004", "< 0.001 %". */
  readonly difference: string;
}

/** Holds a figure of ours against a row, in per cent or, where the row allows an amount, in its unit. */
export function compare({ expected, tolerance }: ReferenceRow, ours: number): Comparison {
  const [least, most] = acceptedRange(expected, tolerance);
  const isWithin = ours >= least && ours <= most;
  const isShare = expected !== 0 && (tolerance.endsWith('%') || tolerance === 'exact');
  const off = isShare ? ((ours - expected) / Math.abs(expected)) * 100 : ours - expected;
  // What nine digits cannot tell from nothing is nothing.
  const isNothing = Math.abs(ours - expected) <= 1e-9 * Math.max(Math.abs(expected), 1e-300);
  if (isNothing) return { isWithin, difference: '0' };
  const sign = off < 0 ? '−' : '+';
  if (!isShare) return { isWithin, difference: `${sign}${formatNumber(Math.abs(off), 2)}` };
  const size = Math.abs(off) < leastPercent ? `< ${leastPercent}` : sign + percent(Math.abs(off));
  return { isWithin, difference: `${size} %` };
}

/** Smaller shares are not told apart. */
const leastPercent = 0.001;
const percent = (value: number): string => formatNumber(Number(value.toFixed(3)), 2);

/** What a row allows, for people: "± 0.2 %", "0 to +2 %", "± 0.5", "9 digits". */
export function allowedWords(tolerance: string): string {
  const spaced = (text: string): string => text.replace('%', ' %').replace('-', '−');
  if (tolerance === 'exact') return '9 digits';
  const range = /^([-+]?[\d.]+)%?\.\.([-+]?[\d.]+%)$/.exec(tolerance);
  if (range) return `${spaced(range[1] ?? '')} to ${spaced(range[2] ?? '')}`;
  return `± ${tolerance.endsWith('%') ? spaced(tolerance) : formatNumber(Number(tolerance))}`;
}

/** A figure of a row, as many digits as tell it from its neighbours. */
export const figureText = (value: number): string => formatNumber(value, 6);

export interface RowCounts {
  readonly verified: number;
  readonly derived: number;
  readonly memory: number;
  /** Verified ones from tables that the code does not hold. */
  readonly independent: number;
  readonly sources: number;
}

export function countRows(rows: readonly ReferenceRow[]): RowCounts {
  const count = (test: (row: ReferenceRow) => boolean): number => rows.filter(test).length;
  return {
    verified: count(({ mark }) => mark === 'verified'),
    derived: count(({ mark }) => mark === 'derived'),
    memory: count(({ mark }) => mark === 'memory'),
    independent: count(({ mark, inCode }) => mark === 'verified' && !inCode),
    sources: new Set(rows.map(({ source }) => source)).size
  };
}
