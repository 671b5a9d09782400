// Lines made of two conductors: characteristic impedance, capacitance, velocity.
import { checkedNumber } from './guard.ts';
import { SumError } from './sum-error.ts';

/** Speed of light, m/s, and the electric constant, F/m. */
const lightMPerS = 299_792_458;
const electricConstant = 8.854_187_8128e-12;
/** Impedance of space over 2 pi, ohm. */
const spaceOhmOver2Pi = 1 / (2 * Math.PI * lightMPerS * electricConstant);

export interface LineData {
  readonly impedanceOhm: number;
  readonly capacitancePfPerM: number;
  /** Speed on the line over that of light. */
  readonly velocity: number;
}

const size = { min: 0, max: 1000, above: true, unit: 'mm' };
const permittivity = { min: 1, max: 100 };

/** Line data of a coaxial line without loss, from its diameters.
 *  Formula:  Z = 59.96 ln(D / d) / sqrt er; C = 2 pi e0 er / ln(D / d); v = 1 / sqrt er
 *  Source:   line theory; D inside of the shield, d centre conductor
 *  Valid:    D above d, er 1 to 100; otherwise SumError
 *  Example:  coaxLine({ outerMm: 3.7084, innerMm: 0.5842, er: 2.26 }).impedanceOhm // 73.709737
 */
export function coaxLine(inputs: {
  readonly outerMm: number;
  readonly innerMm: number;
  readonly er: number;
}): LineData {
  const outer = checkedNumber('outer', inputs.outerMm, size);
  const inner = checkedNumber('inner', inputs.innerMm, size);
  if (outer <= inner) throw tooSmall('outer', outer, `above the inner diameter of ${inner} mm`);
  const er = checkedNumber('er', inputs.er, permittivity);
  return lineData(Math.log(outer / inner), 1, er);
}

/** Line data of two equal parallel conductors without loss.
 *  Formula:  Z = 119.92 acosh(D / d) / sqrt er; C = pi e0 er / acosh(D / d); v = 1 / sqrt er
 *  Source:   line theory; D between centres, d conductor; er effective, between that of air and of the web
 *  Valid:    D above d, er 1 to 100; otherwise SumError
 *  Example:  twinLine({ spacingMm: 7.62, conductorMm: 0.8128, er: 1 }).impedanceOhm // 351.15735
 */
export function twinLine(inputs: {
  readonly spacingMm: number;
  readonly conductorMm: number;
  readonly er: number;
}): LineData {
  const spacing = checkedNumber('spacing', inputs.spacingMm, size);
  const conductor = checkedNumber('conductor', inputs.conductorMm, size);
  if (spacing <= conductor) {
    throw tooSmall('spacing', spacing, `above the conductor's diameter of ${conductor} mm`);
  }
  const er = checkedNumber('er', inputs.er, permittivity);
  return lineData(Math.acosh(spacing / conductor), 2, er);
}

/** `shape` is ln(D/d) or acosh(D/d), `wires` 1 for a coaxial line and 2 for a pair. */
const lineData = (shape: number, wires: number, er: number): LineData => ({
  impedanceOhm: (wires * spaceOhmOver2Pi * shape) / Math.sqrt(er),
  capacitancePfPerM: (1e12 * 2 * Math.PI * electricConstant * er) / (wires * shape),
  velocity: 1 / Math.sqrt(er)
});

const tooSmall = (input: string, value: number, limit: string): SumError =>
  new SumError({
    problem: 'out of range',
    input,
    value: `${value} mm`,
    limit,
    wayOut: 'Check which of the two diameters is which.'
  });
