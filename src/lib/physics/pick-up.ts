// What a run does to a signal: treble lost in its capacitance, and pick-up from a wire beside it.
import { checkedNumber } from './guard.ts';
import { twinLine } from './line.ts';

const ohms = { min: 0, max: 1e12, above: true, unit: 'ohm' };

/** Frequency where a resistance into a capacitance has lost 3 dB, Hz.
 *  Formula:  f = 1 / (2 pi R C)
 *  Source:   RC low-pass
 *  Valid:    R above 0 to 1e12 ohm, C above 0 to 1 F; otherwise SumError
 *  Example:  trebleCornerHz(500000, 3e-10) // 1061.0330
 */
export function trebleCornerHz(resistanceOhm: number, capacitanceF: number): number {
  const resistance = checkedNumber('resistance', resistanceOhm, ohms);
  const farads = { min: 0, max: 1, above: true, unit: 'F' };
  const capacitance = checkedNumber('capacitance', capacitanceF, farads);
  return 1 / (2 * Math.PI * resistance * capacitance);
}

export interface CouplingInputs {
  /** Between centres. */
  readonly spacingMm: number;
  /** Of the bare conductors, taken as equal. */
  readonly diameterMm: number;
  /** Over which the two run beside each other. */
  readonly lengthM: number;
  readonly er?: number;
  /** On the wire that disturbs. */
  readonly volts: number;
  readonly frequencyHz: number;
  /** From the disturbed wire to chassis. */
  readonly impedanceOhm: number;
}

export interface Coupling {
  readonly capacitancePf: number;
  readonly pickUpV: number;
}

/** Capacitance between two parallel wires and the voltage it puts on one of them. The chassis nearby
 *  takes some of the field: the figure is an upper estimate.
 *  Formula:  C = pi e0 er l / acosh(D / d); pick-up = V w C Z / sqrt(1 + (w C Z)^2), Z resistive
 *  Source:   two-wire line; capacitive divider
 *  Valid:    D above d, length 0 to 1000 m, to 10 GHz, Z above 0 to 1e12 ohm; otherwise SumError
 *  Example:  coupling({ spacingMm: 2, diameterMm: 0.64, lengthM: 0.3, volts: 6.3, frequencyHz: 60, impedanceOhm: 500000 }).capacitancePf // 4.6207973
 */
export function coupling(inputs: CouplingInputs): Coupling {
  const { capacitancePfPerM } = twinLine({
    spacingMm: inputs.spacingMm,
    conductorMm: inputs.diameterMm,
    er: inputs.er ?? 1
  });
  const lengthM = checkedNumber('length', inputs.lengthM, { min: 0, max: 1000, unit: 'm' });
  const volts = checkedNumber('volts', inputs.volts, { min: 0, max: 200_000, unit: 'V' });
  const hertz = { min: 0, max: 1e10, unit: 'Hz' };
  const frequency = checkedNumber('frequency', inputs.frequencyHz, hertz);
  const impedance = checkedNumber('impedance', inputs.impedanceOhm, ohms);
  const capacitancePf = capacitancePfPerM * lengthM;
  const ratio = 2 * Math.PI * frequency * capacitancePf * 1e-12 * impedance;
  return { capacitancePf, pickUpV: (volts * ratio) / Math.hypot(1, ratio) };
}
