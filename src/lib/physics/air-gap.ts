// How far bare live metal must stay from other metal through air. Above 1.5 kV the figure is
// advice from the largest published one, and never a pass: old insulation earns no credit here.
import { checkedNumber } from './guard.ts';
import { interpolate, type TableRow } from './interpolate.ts';

export const fields = ['inhomogeneous', 'homogeneous'] as const;
/** Inhomogeneous: points, edges, round wire near a plate; the rule in a chassis. */
export type Field = (typeof fields)[number];

/** kV peak, mm; inhomogeneous field, up to 2000 m. IEC 60664-1 Table F.2 case A. */
const caseA: readonly TableRow[] = [
  [0.33, 0.01],
  [0.4, 0.02],
  [0.5, 0.04],
  [0.6, 0.06],
  [0.8, 0.1],
  [1, 0.15],
  [1.2, 0.25],
  [1.5, 0.5],
  [2, 1],
  [2.5, 1.5],
  [3, 2],
  [4, 3],
  [5, 4],
  [6, 5.5],
  [8, 8],
  [10, 11],
  [12, 14],
  [15, 18],
  [20, 25],
  [25, 33],
  [30, 40],
  [40, 60],
  [50, 75],
  [60, 90],
  [80, 130],
  [100, 170]
];

/** Case B, homogeneous field. Below 1.2 kV the table read here is empty and case A, never smaller, holds. */
const caseB: readonly TableRow[] = [
  [1.2, 0.2],
  [1.5, 0.3],
  [2, 0.45],
  [2.5, 0.6],
  [3, 0.8],
  [4, 1.2],
  [5, 1.5],
  [6, 2],
  [8, 3],
  [10, 3.5],
  [12, 4.5],
  [15, 5.5],
  [20, 8],
  [25, 10],
  [30, 12.5],
  [40, 17],
  [50, 22],
  [60, 27],
  [80, 35],
  [100, 45]
];

/** Least clearance by pollution degree, mm. */
const floorsMm: Readonly<Record<number, number>> = { 1: 0.01, 2: 0.2, 3: 0.8 };

/** Metres, multiplier. IEC 60664-1 Table A.2. */
const altitudeFactors: readonly TableRow[] = [
  [2000, 1],
  [3000, 1.14],
  [4000, 1.29],
  [5000, 1.48],
  [6000, 1.7],
  [7000, 1.95],
  [8000, 2.25],
  [9000, 2.62],
  [10_000, 3.02],
  [15_000, 6.67],
  [20_000, 14.5]
];

/** Volts peak, mm. IEC 60950 secondary clearances as reprinted in a trade paper. */
const reprint60950: readonly TableRow[] = [
  [700, 2.5],
  [840, 3.2],
  [1400, 4.2],
  [2800, 8.4],
  [7000, 17.5],
  [9800, 25],
  [14_000, 37],
  [28_000, 80],
  [42_000, 130]
];
const reprintFirstV = 700;
const reprintLastV = 42_000;
/** One inch for each 10 kV. */
const inchRuleMmPerV = 25.4 / 10_000;

export interface AirGapInputs {
  readonly peakV: number;
  readonly field: Field;
  readonly altitudeM?: number;
  readonly pollution: number;
}

export interface AirGap {
  /** The IEC 60664-1 figure. */
  readonly clearanceMm: number;
  /** The largest of the published figures. */
  readonly adviceMm: number;
  /** Which of them it is. */
  readonly adviceFrom: string;
}

/** Above this the figures are advice and never a pass, V peak. */
export const adviceOnlyAboveV = 1500;

/** Clearance through air between bare metal parts.
 *  Formula:  clearance = max(table at the peak, floor of the pollution degree) x altitude factor;
 *            advice = the largest of it, the 60950 reprint and 1 inch for each 10 kV, x altitude factor
 *  Source:   IEC 60664-1 Tables F.2 and A.2, straight between rows; IEC 60950 as reprinted (held at its
 *            last figure above 42 kV); 1 inch per 10 kV: common practice
 *  Valid:    0 to 100 kV peak, to 20 000 m, pollution degree 1 to 3; otherwise SumError
 *  Example:  airGap({ peakV: 2500, field: "inhomogeneous", pollution: 2 }).clearanceMm // 1.5
 */
export function airGap(inputs: AirGapInputs): AirGap {
  const peakV = checkedNumber('peak', inputs.peakV, { min: 0, max: 100_000, unit: 'V' });
  const pollution = { min: 1, max: 3, whole: true };
  const floorMm = floorsMm[checkedNumber('pollution', inputs.pollution, pollution)] ?? 0.8;
  const altitude = altitudeFactor(inputs.altitudeM ?? 0);
  const clearanceMm = Math.max(tableMm(peakV, inputs.field), floorMm) * altitude;
  const figures = [
    { mm: clearanceMm, from: 'IEC 60664-1' },
    { mm: reprintMm(peakV) * altitude, from: 'the IEC 60950 reprint' },
    { mm: peakV * inchRuleMmPerV * altitude, from: '1 inch for each 10 kV' }
  ];
  const largest = figures.reduce((most, next) => (next.mm > most.mm ? next : most));
  return { clearanceMm, adviceMm: largest.mm, adviceFrom: largest.from };
}

function tableMm(peakV: number, field: Field): number {
  const kilovolts = Math.max(peakV / 1000, 0.33);
  const rows = field === 'homogeneous' && kilovolts >= 1.2 ? caseB : caseA;
  return interpolate('peak', rows, kilovolts, 'kV');
}

const reprintMm = (peakV: number): number =>
  peakV < reprintFirstV ? 0 : interpolate('peak', reprint60950, Math.min(peakV, reprintLastV), 'V');

function altitudeFactor(altitudeM: number): number {
  const metres = checkedNumber('altitude', altitudeM, { min: -500, max: 20_000, unit: 'm' });
  return interpolate('altitude', altitudeFactors, Math.max(metres, 2000), 'm');
}
