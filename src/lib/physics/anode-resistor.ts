// The resistor in the second-anode lead: what it costs in normal use, and what it must stand when
// the anode is shorted.
import { checkedNumber } from './guard.ts';
import { SumError } from './sum-error.ts';

export interface AnodeResistor {
  readonly dropV: number;
  readonly faultAmps: number;
  readonly faultW: number;
}

/** Drop at the beam current, and current and power with the anode shorted to ground.
 *  Formula:  drop = I R; fault = V / R; power = V^2 / R
 *  Source:   Ohm's law; the supply taken as stiff, which a flyback supply is not: the fault figures are upper bounds
 *  Valid:    supply above 0 to 200 kV, R above 0 to 1e10 ohm, beam 0 to 1 A, drop up to the supply; otherwise SumError
 *  Example:  anodeResistor({ supplyV: 18000, resistanceOhm: 1e6, beamA: 2e-4 }).dropV // 200
 */
export function anodeResistor(inputs: {
  readonly supplyV: number;
  readonly resistanceOhm: number;
  readonly beamA: number;
}): AnodeResistor {
  const supply = { min: 0, max: 200_000, above: true, unit: 'V' };
  const supplyV = checkedNumber('supply', inputs.supplyV, supply);
  const ohms = { min: 0, max: 1e10, above: true, unit: 'ohm' };
  const resistance = checkedNumber('resistance', inputs.resistanceOhm, ohms);
  const beamA = checkedNumber('beam', inputs.beamA, { min: 0, max: 1, unit: 'A' });
  const dropV = beamA * resistance;
  if (dropV > supplyV) {
    throw new SumError({
      problem: 'out of range',
      input: 'beam',
      value: `${beamA} A`,
      limit: `up to ${(supplyV / resistance).toPrecision(4)} A, where the whole supply is lost`,
      wayOut: 'Check the beam current and the resistor.'
    });
  }
  return { dropV, faultAmps: supplyV / resistance, faultW: (supplyV * supplyV) / resistance };
}
