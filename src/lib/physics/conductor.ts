// Copper wire by its gauge: diameter, area, resistance at a temperature, tinned and stranded.
import { checkedNumber, type Limits } from './guard.ts';
import { SumError } from './sum-error.ts';

export const mmPerInch = 25.4;

/** Resistivity of annealed copper at 20 C, ohm mm2 / m (100 % IACS, 58 S m / mm2). */
export const copperOhmMm2PerM = 1 / 58;
/** Change of resistance per kelvin, referred to 20 C, annealed copper. */
export const copperPerKelvin = 0.00393;

export const awgLimits: Limits = {
  min: -3,
  max: 50,
  whole: true,
  unit: 'AWG',
  wayOut: 'Give a whole gauge from 50 (thinnest) to 0, or 2/0, 3/0, 4/0 (-1, -2, -3).'
};
const temperatureLimits: Limits = { min: -100, max: 250, unit: 'C' };
const lengthLimits: Limits = { min: 0, max: 100_000, unit: 'm' };

export type Plating = 'bare' | 'tinned';

/** Strands of one gauge twisted to a conductor: 7/30 is seven strands of 30 AWG. */
export interface Stranding {
  readonly strands: number;
  readonly strandAwg: number;
}

/** Diameter of a solid round wire, mm.
 *  Formula:  d = 0.127 mm x 92^((36 - n) / 39), n the gauge (0 is 1/0, -3 is 4/0)
 *  Source:   ASTM B258 (36 AWG = 0.0050 in and 4/0 = 0.4600 in exactly)
 *  Valid:    whole gauges -3 to 50; otherwise SumError
 *  Example:  wireDiameterMm(22) // 0.6438033
 */
export function wireDiameterMm(awg: number): number {
  const gauge = checkedNumber('awg', awg, awgLimits);
  return 0.005 * mmPerInch * 92 ** ((36 - gauge) / 39);
}

/** Cross-section of a solid round wire, mm2.
 *  Formula:  A = pi d^2 / 4
 *  Source:   geometry on ASTM B258 diameters
 *  Example:  wireAreaMm2(22) // 0.325534
 */
export const wireAreaMm2 = (awg: number): number => (Math.PI / 4) * wireDiameterMm(awg) ** 2;

/** Cross-section in circular mils: the diameter in thousandths of an inch, squared.
 *  Source:   definition of the circular mil
 *  Example:  circularMils(22) // 642.449
 */
export const circularMils = (awg: number): number =>
  (wireDiameterMm(awg) / (mmPerInch / 1000)) ** 2;

/** Cross-section of a stranded conductor, mm2: the strands' areas added, lay not counted.
 *  Example:  strandedAreaMm2({ strands: 7, strandAwg: 30 }) // 0.356482
 */
export function strandedAreaMm2({ strands, strandAwg }: Stranding): number {
  const count = checkedNumber('strands', strands, { min: 1, max: 1000, whole: true });
  return count * wireAreaMm2(strandAwg);
}

/** Maximum resistivity of tinned soft copper, ohm g / m2, by the diameter's lower edge in inches. */
const tinnedBands = [
  { fromIn: 0.29, resistivity: 0.15695 },
  { fromIn: 0.103, resistivity: 0.15776 },
  { fromIn: 0.0201, resistivity: 0.1594 },
  { fromIn: 0.0111, resistivity: 0.16279 },
  { fromIn: 0.003, resistivity: 0.16454 }
] as const;
const softCopperOhmGPerM2 = 0.15328;

/** How much more a tinned wire resists than a bare one of the same size (a maximum).
 *  Source:   ASTM B33-04 Table 2, over 0.15328 ohm g / m2 for soft copper
 *  Valid:    0.0030 to 0.460 in, the diameter taken to 0.0001 in as the table prints it; otherwise SumError
 *  Example:  tinnedFactor(0.6438) // 1.039927
 */
export function tinnedFactor(diameterMm: number): number {
  const limits = { min: 0.0762, max: 11.684, unit: 'mm' };
  checkedNumber('diameter', diameterMm, { min: 0 });
  const inches = Math.round((diameterMm / mmPerInch) * 10_000) / 10_000;
  const band = tinnedBands.find(({ fromIn }) => inches >= fromIn);
  if (!band || inches > 0.46) {
    throw new SumError({
      problem: 'outside the table',
      input: 'diameter',
      value: `${diameterMm} mm`,
      limit: `${limits.min} to ${limits.max} mm (40 AWG to 4/0)`,
      wayOut: 'Ask for bare copper, or a gauge that the standard lists.'
    });
  }
  return band.resistivity / softCopperOhmGPerM2;
}

/** Resistance at a temperature over that at 20 C.
 *  Formula:  1 + 0.00393 (T - 20)
 *  Source:   annealed copper, IACS
 *  Valid:    -100 to 250 C; otherwise SumError
 *  Example:  temperatureFactor(65) // 1.17685
 */
export function temperatureFactor(temperatureC: number): number {
  return 1 + copperPerKelvin * (checkedNumber('temperature', temperatureC, temperatureLimits) - 20);
}

export interface ConductorInputs {
  readonly awg: number;
  readonly temperatureC?: number;
  readonly plating?: Plating;
  /** Where given, area and tinning go by the strands and the gauge is only a name. */
  readonly stranding?: Stranding;
}

/** Resistance per metre of a conductor, ohm / m.
 *  Formula:  R = rho / A x plating x (1 + 0.00393 (T - 20)), rho = 1/58 ohm mm2 / m
 *  Source:   ASTM B258, ASTM B33-04 Table 2, IACS
 *  Valid:    as its parts; otherwise SumError
 *  Example:  ohmPerMetre({ awg: 22 }) // 0.0529634
 */
export function ohmPerMetre({
  awg,
  temperatureC = 20,
  plating = 'bare',
  stranding
}: ConductorInputs): number {
  const areaMm2 = stranding ? strandedAreaMm2(stranding) : wireAreaMm2(awg);
  const metalAwg = stranding ? stranding.strandAwg : awg;
  const platingFactor = plating === 'tinned' ? tinnedFactor(wireDiameterMm(metalAwg)) : 1;
  return (copperOhmMm2PerM / areaMm2) * platingFactor * temperatureFactor(temperatureC);
}

/** Resistance of a length of conductor, ohm.
 *  Valid:    0 to 100 km; otherwise SumError
 *  Example:  wireResistanceOhm({ awg: 22, lengthM: 0.3048 }) // 0.01614324
 */
export function wireResistanceOhm(inputs: ConductorInputs & { readonly lengthM: number }): number {
  return ohmPerMetre(inputs) * checkedNumber('length', inputs.lengthM, lengthLimits);
}
