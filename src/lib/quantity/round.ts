// Rounding that thresholds rely on: 400 x 1.5 must be exactly 600 and not a hair above it, or a
// wire would be asked for the next class because of how computers store fractions.

/** The value rounded to that many significant digits (9 where not said); other than finite numbers pass through. */
export function roundSignificant(value: number, digits = 9): number {
  if (!Number.isFinite(value)) return value;
  // Most figures are whole already.
  if (Number.isInteger(value) && Math.abs(value) < 10 ** digits) return value;
  return Number(value.toPrecision(digits));
}

/** True where the value reaches the limit, to 9 significant digits. */
export const isAtLeast = (value: number, limit: number): boolean =>
  roundSignificant(value) >= roundSignificant(limit);

/** The smallest multiple of the step that is not below the value, to 9 significant digits. */
export function roundUpTo(value: number, step: number): number {
  const steps = Math.ceil(roundSignificant(value / step));
  return roundSignificant(steps * step, 12);
}
