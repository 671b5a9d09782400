// From a measured path to a length that can be cut: slack, strips, twist, rounding up.
import { roundUpTo } from '#quantity/index.ts';
import { mmPerInch } from './conductor.ts';
import { checkedNumber, type Limits } from './guard.ts';

const lengthMm: Limits = { min: 0, max: 1_000_000, unit: 'mm' };

export interface CutLengthInputs {
  readonly pathMm: number;
  /** Slack as a share of the path, and as a length. */
  readonly slackShare?: number;
  readonly slackMm?: number;
  readonly stripFromMm?: number;
  readonly stripToMm?: number;
  /** Length of wire for each length of path: see `twistFactor`. */
  readonly twist?: number;
  readonly roundUpMm?: number;
}

/** Length to cut, mm: the path (twisted) with its slack and both strips, rounded up to the step.
 *  Formula:  ceil((path x twist x (1 + share) + slack + strips) / step) x step
 *  Source:   common practice, no source
 *  Valid:    lengths 0 to 1 km, share 0 to 1, twist 1 to 3, step 0.1 to 100 mm; otherwise SumError
 *  Example:  cutLengthMm({ pathMm: 200, slackShare: 0.05, slackMm: 10, stripFromMm: 9, stripToMm: 9 }) // 240
 */
export function cutLengthMm(inputs: CutLengthInputs): number {
  const path = checkedNumber('path', inputs.pathMm, lengthMm);
  const share = checkedNumber('slack share', inputs.slackShare ?? 0, { min: 0, max: 1 });
  const slack = checkedNumber('slack', inputs.slackMm ?? 0, lengthMm);
  const from = checkedNumber('strip', inputs.stripFromMm ?? 0, lengthMm);
  const to = checkedNumber('strip', inputs.stripToMm ?? 0, lengthMm);
  const twist = checkedNumber('twist', inputs.twist ?? 1, { min: 1, max: 3 });
  const step = checkedNumber('round up', inputs.roundUpMm ?? 5, { min: 0.1, max: 100, unit: 'mm' });
  return roundUpTo(path * twist * (1 + share) + slack + from + to, step);
}

/** Wire used for each length of a twisted pair.
 *  Formula:  sqrt(1 + (pi D / p)^2), D the insulated diameter (the wires' centres run on a circle of
 *            that diameter), p the length of one full twist
 *  Source:   geometry of the helix
 *  Valid:    D 0.1 to 50 mm, p at least 2 D; otherwise SumError
 *  Example:  twistFactor({ diameterMm: 1.6, twistMm: 25 }) // 1.020013
 */
export function twistFactor(inputs: {
  readonly diameterMm: number;
  readonly twistMm: number;
}): number {
  const diameter = checkedNumber('diameter', inputs.diameterMm, { min: 0.1, max: 50, unit: 'mm' });
  const least = { min: 2 * diameter, max: 10_000, unit: 'mm' };
  const twist = checkedNumber('twist length', inputs.twistMm, least);
  return Math.hypot(1, (Math.PI * diameter) / twist);
}

/** A length in inches, rounded up to the next eighth: never shorter than asked.
 *  Example:  toEighthsUp(240) // 9.5
 */
export const toEighthsUp = (mm: number): number =>
  roundUpTo(checkedNumber('length', mm, lengthMm) / mmPerInch, 1 / 8);
