// What comes back where a line of one impedance meets a port of another.
import { checkedNumber } from './guard.ts';

export interface Mismatch {
  /** Size of the reflection coefficient, 0 to 1. */
  readonly reflection: number;
  readonly vswr: number;
  /** Null where the impedances are equal: nothing comes back and the figure has no limit. */
  readonly returnLossDb: number | null;
  readonly mismatchLossDb: number;
}

/** Reflection between two resistive impedances.
 *  Formula:  G = |z2 - z1| / (z2 + z1); S = (1 + G) / (1 - G); RL = -20 log G; ML = -10 log(1 - G^2)
 *  Source:   line theory
 *  Valid:    0.001 ohm to 1 Mohm; otherwise SumError
 *  Example:  mismatch(75, 300).vswr // 4
 */
export function mismatch(z1Ohm: number, z2Ohm: number): Mismatch {
  const limits = { min: 0.001, max: 1e6, unit: 'ohm' };
  const z1 = checkedNumber('z1', z1Ohm, limits);
  const z2 = checkedNumber('z2', z2Ohm, limits);
  const reflection = Math.abs(z2 - z1) / (z2 + z1);
  return {
    reflection,
    vswr: Math.max(z1, z2) / Math.min(z1, z2),
    returnLossDb: reflection === 0 ? null : Math.abs(20 * Math.log10(reflection)),
    mismatchLossDb: Math.abs(10 * Math.log10(1 - reflection * reflection))
  };
}
