// What a wire's insulation must stand: all the volts that may stand on it at one moment.
import { checkedNumber, type Limits } from './guard.ts';

const limits: Limits = { min: -200_000, max: 200_000, unit: 'V' };
const positiveLimits: Limits = { ...limits, min: 0 };

export interface StressInputs {
  readonly dcV?: number;
  readonly acRmsV?: number;
  readonly pulsePeakV?: number;
}

/** Peak volts to chassis, V. A part that is not given counts as 0: who leaves one out because it is
 *  not known must call the figure a lower bound.
 *  Formula:  |dc| + sqrt 2 x ac rms + pulse peak
 *  Source:   common practice, no source: the peaks are taken to coincide
 *  Valid:    dc -200 to 200 kV, ac and pulse 0 to 200 kV; otherwise SumError
 *  Example:  stressV({ dcV: 285, acRmsV: 6.3 }) // 293.90955
 */
export function stressV({ dcV = 0, acRmsV = 0, pulsePeakV = 0 }: StressInputs): number {
  const dc = Math.abs(checkedNumber('dc', dcV, limits));
  const ac = checkedNumber('ac', acRmsV, positiveLimits);
  const pulse = checkedNumber('pulse', pulsePeakV, positiveLimits);
  return dc + Math.SQRT2 * ac + pulse;
}
