// At what current a bare copper wire melts: why a fuse must be smaller, never a rating and never
// a reason to call a wire protected.
import { circularMils, mmPerInch, wireDiameterMm } from './conductor.ts';
import { checkedNumber } from './guard.ts';

const copperMeltsC = 1083;
const preeceCopper = 10_244;

/** Current that melts a bare copper wire within a time, A; no heat given off meanwhile.
 *  Formula:  I = A sqrt(log10((Tm - Ta) / (234 + Ta) + 1) / (33 t)), A in circular mils, Tm = 1083 C
 *  Source:   Onderdonk's equation as commonly quoted
 *  Valid:    0.001 to 10 s (longer, heat lost to the air counts), ambient -40 to 200 C; otherwise SumError
 *  Example:  onderdonkAmps({ awg: 16, seconds: 5 }) // 168.97782
 */
export function onderdonkAmps(inputs: {
  readonly awg: number;
  readonly seconds: number;
  readonly ambientC?: number;
}): number {
  const { awg, ...rest } = inputs;
  return onderdonkAmpsOf({ circularMils: circularMils(awg), ...rest });
}

/** The same by area in circular mils. Valid: above 0 to 10 million circular mils; otherwise SumError. */
export function onderdonkAmpsOf(inputs: {
  readonly circularMils: number;
  readonly seconds: number;
  readonly ambientC?: number;
}): number {
  const mils = { min: 0, max: 1e7, above: true, unit: 'circular mils' };
  const area = checkedNumber('area', inputs.circularMils, mils);
  const seconds = checkedNumber('seconds', inputs.seconds, {
    min: 0.001,
    max: 10,
    unit: 's',
    wayOut: 'For longer times look at the other figure, which has no time in it.'
  });
  const ambient = checkedNumber('ambient', inputs.ambientC ?? 25, {
    min: -40,
    max: 200,
    unit: 'C'
  });
  const rise = Math.log10((copperMeltsC - ambient) / (234 + ambient) + 1);
  return area * Math.sqrt(rise / (33 * seconds));
}

/** Current that melts a bare copper wire in free air sooner or later, A.
 *  Formula:  I = 10244 d^1.5, d in inches
 *  Source:   W. H. Preece's rule
 *  Example:  preeceAmps(22) // 41.337936
 */
export const preeceAmps = (awg: number): number => preeceAmpsOf(wireDiameterMm(awg));

/** The same by diameter in mm. Valid: above 0 to 20 mm; otherwise SumError. */
export function preeceAmpsOf(diameterMm: number): number {
  const limits = { min: 0, max: 20, above: true, unit: 'mm' };
  return preeceCopper * (checkedNumber('diameter', diameterMm, limits) / mmPerInch) ** 1.5;
}
