// What a run of wire costs in volts on its way to a load.
import { wireResistanceOhm, type ConductorInputs } from './conductor.ts';
import { checkedNumber } from './guard.ts';
import { SumError } from './sum-error.ts';

export interface VoltageDropInputs extends ConductorInputs {
  /** One way. */
  readonly lengthM: number;
  readonly amps: number;
  readonly supplyV: number;
  /** 1: the chassis is the way back and counts as no resistance; 2: a wire there and a wire back. */
  readonly returns?: number;
}

export interface VoltageDrop {
  readonly dropV: number;
  readonly percent: number;
  readonly atLoadV: number;
}

/** Voltage lost along a run, the share of the supply that it is, and what is left at the load.
 *  Formula:  V = I R x wires; R by gauge, length and temperature
 *  Source:   Ohm's law on ASTM B258 sizes
 *  Valid:    0 to 1000 A, supply above 0 to 200 kV, 1 or 2 wires; a drop over the supply: SumError
 *  Example:  voltageDrop({ awg: 22, lengthM: 0.3048, amps: 1.35, supplyV: 6.3, returns: 1 }).dropV // 0.02179337
 */
export function voltageDrop(inputs: VoltageDropInputs): VoltageDrop {
  const amps = checkedNumber('amps', inputs.amps, { min: 0, max: 1000, unit: 'A' });
  const volts = { min: 0, max: 200_000, above: true, unit: 'V' };
  const supplyV = checkedNumber('volts', inputs.supplyV, volts);
  const returns = checkedNumber('returns', inputs.returns ?? 2, { min: 1, max: 2, whole: true });
  const ohms = wireResistanceOhm(inputs) * returns;
  const dropV = amps * ohms;
  if (dropV > supplyV) {
    throw new SumError({
      problem: 'out of range',
      input: 'amps',
      value: `${amps} A`,
      limit: `up to ${(supplyV / ohms).toPrecision(4)} A, where the whole supply is lost in this run`,
      wayOut: 'Check the current and the supply, or take thicker or shorter wire.'
    });
  }
  return { dropV, percent: (100 * dropV) / supplyV, atLoadV: supplyV - dropV };
}
