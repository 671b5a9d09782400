// Wire sizes that hook-up wire is made in, and the strandings that each is sold as.
import { verified, type Sourced } from './source.ts';

/** American wire gauges of hook-up wire, thickest first. */
export const hookUpGauges: readonly number[] = [10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30];

export interface Stranding extends Sourced {
  readonly awg: number;
  /** Count of strands / gauge of each: "7/30". */
  readonly name: string;
  readonly strands: number;
  readonly strandAwg: number;
  /** Outside diameter of the bare conductor, mm. */
  readonly conductorMm: number;
  /** Printed resistance, ohm per 1000 ft at 20 C: loose by some ten per cent. */
  readonly ohmsPer1000Ft: number;
}

const chart = verified(
  'published stranded wire chart: gauge, stranding, diameter, ohms per 1000 ft'
);

const row = (
  awg: number,
  strands: number,
  strandAwg: number,
  diameterIn: number,
  ohmsPer1000Ft: number
): Stranding => ({
  awg,
  name: `${strands}/${strandAwg}`,
  strands,
  strandAwg,
  conductorMm: Math.round(diameterIn * 25_400) / 1000,
  ohmsPer1000Ft,
  ...chart
});

export const strandings: readonly Stranding[] = [
  row(16, 19, 29, 0.058, 4.27),
  row(16, 26, 30, 0.059, 4.0),
  row(18, 16, 30, 0.047, 6.48),
  row(18, 19, 30, 0.049, 5.46),
  row(20, 10, 30, 0.035, 10.32),
  row(20, 26, 34, 0.036, 10.05),
  row(22, 7, 30, 0.03, 14.74),
  row(22, 19, 34, 0.031, 13.73),
  row(24, 7, 32, 0.024, 23.3),
  row(24, 19, 36, 0.024, 21.08),
  row(26, 7, 34, 0.019, 37.3),
  row(28, 7, 36, 0.015, 64.9),
  row(30, 7, 38, 0.012, 103.2)
];

/** The published strandings of a gauge; an empty list where the chart has none. */
export const strandingsOf = (awg: number): readonly Stranding[] =>
  strandings.filter((stranding) => stranding.awg === awg);

export interface WireDiameter extends Sourced {
  readonly style: string;
  readonly awg: number;
  /** Over the insulation, mm. */
  readonly outsideMm: number;
}

const diameters = verified('published overall diameters of UL 1007 class wire');

/** Published overall diameters. Where none is: conductor diameter + 2 x wall. */
export const wireDiameters: readonly WireDiameter[] = [
  { style: '1007', awg: 20, outsideMm: 1.8, ...diameters },
  { style: '1007', awg: 22, outsideMm: 1.6, ...diameters },
  { style: '1007', awg: 24, outsideMm: 1.4, ...diameters },
  { style: '1007', awg: 26, outsideMm: 1.3, ...diameters }
];
