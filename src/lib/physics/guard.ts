// The checks that every sum makes on its inputs before it reckons.
import { SumError } from './sum-error.ts';

export interface Limits {
  readonly min?: number;
  readonly max?: number;
  /** The minimum itself is not accepted: a length of 0 where something is divided by it. */
  readonly above?: boolean;
  readonly whole?: boolean;
  readonly unit?: string;
  readonly wayOut?: string;
}

/** The value, or a SumError that names the input, the value and the limits. */
export function checkedNumber(input: string, value: number, limits: Limits = {}): number {
  const { min = -Infinity, max = Infinity, above = false, whole = false } = limits;
  // The limits are put in words only where they are needed: a study makes this check thousands of times.
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    const limit = formatLimits(limits);
    const wayOut = limits.wayOut ?? 'Give a number.';
    throw new SumError({ problem: 'not a number', input, value: String(value), limit, wayOut });
  }
  const tooLow = above ? value <= min : value < min;
  if (tooLow || value > max || (whole && !Number.isInteger(value))) {
    const limit = formatLimits(limits);
    const wayOut = limits.wayOut ?? `Give a value within ${limit}.`;
    throw new SumError({ problem: 'out of range', input, value: String(value), limit, wayOut });
  }
  return value;
}

/** "above 0 up to 200000 V", "whole numbers from -3 to 50": the limits in words. */
export function formatLimits({ min, max, above, whole, unit }: Limits): string {
  const suffix = unit === undefined ? '' : ` ${unit}`;
  const low = min === undefined ? '' : above ? `above ${min}` : `from ${min}`;
  const high = max === undefined ? '' : above ? `up to ${max}` : `to ${max}`;
  const range = [low, high].filter((part) => part !== '').join(' ');
  if (range === '') return whole ? 'whole numbers' : 'a number';
  return `${whole ? 'whole numbers ' : ''}${range}${suffix}`;
}
