// How far apart live metal must be along a surface, by pollution and by how readily the material tracks.
import { checkedNumber } from './guard.ts';
import { nextRowUp } from './interpolate.ts';

export const materialGroups = ['I', 'II', 'IIIa'] as const;
export type MaterialGroup = (typeof materialGroups)[number];

type Row = readonly [rmsV: number, groupI: number, groupII: number, groupIII: number];

/** Pollution degree 2, mm. IEC 60664-1 Table F.5 (F.4 in the first edition). */
const degree2: readonly Row[] = [
  [10, 0.4, 0.4, 0.4],
  [25, 0.5, 0.5, 0.5],
  [32, 0.53, 0.53, 0.53],
  [40, 0.56, 0.8, 1.1],
  [50, 0.6, 0.85, 1.2],
  [63, 0.63, 0.9, 1.25],
  [80, 0.67, 0.95, 1.3],
  [100, 0.71, 1, 1.4],
  [125, 0.75, 1.05, 1.5],
  [160, 0.8, 1.1, 1.6],
  [200, 1, 1.4, 2],
  [250, 1.25, 1.8, 2.5],
  [320, 1.6, 2.2, 3.2],
  [400, 2, 2.8, 4],
  [500, 2.5, 3.6, 5],
  [630, 3.2, 4.5, 6.3],
  [800, 4, 5.6, 8],
  [1000, 5, 7.1, 10],
  [1250, 6.3, 9, 12.5],
  [1600, 8, 11, 16],
  [2000, 10, 14, 20],
  [2500, 12.5, 18, 25],
  [3200, 16, 22, 32],
  [4000, 20, 28, 40],
  [5000, 25, 36, 50],
  [6300, 32, 45, 63],
  [8000, 40, 56, 80],
  [10_000, 50, 71, 100],
  [12_500, 63, 90, 125],
  [16_000, 80, 110, 160],
  [20_000, 100, 140, 200],
  [25_000, 125, 180, 250],
  [32_000, 160, 220, 320],
  [40_000, 200, 280, 400],
  [50_000, 250, 360, 500],
  [63_000, 320, 450, 600]
];

/** Pollution degree 3, mm: the rows that were read in a reprint, few as they are. */
const degree3: readonly Row[] = [
  [100, 1.8, 2, 2.2],
  [250, 3.2, 3.6, 4],
  [400, 5, 5.6, 6.3],
  [500, 6.3, 7.1, 8],
  [1000, 12.5, 14, 16],
  [2000, 25, 28, 32]
];

export interface Creepage {
  readonly creepageMm: number;
  /** The table's row that was used, V rms: the next one up where the voltage lies between two. */
  readonly rowV: number;
  readonly basis: string;
}

/** Creepage along a surface, mm. Between two rows the next one up holds, never less than a straight
 *  line between them would give: whether the standard allows that line was not read.
 *  Formula:  the table's figure at the first row >= the voltage
 *  Source:   IEC 60664-1 Table F.5; pollution degree 3 from a reprint; degree 1 is taken as 2
 *  Valid:    0 to 63 kV rms (degree 3: to 2 kV), degree 1 to 3, groups I, II, IIIa; otherwise SumError
 *  Example:  creepage({ rmsV: 250, pollution: 2, group: "IIIa" }).creepageMm // 2.5
 */
export function creepage(inputs: {
  readonly rmsV: number;
  readonly pollution: number;
  readonly group: MaterialGroup;
}): Creepage {
  const rmsV = checkedNumber('rms', inputs.rmsV, { min: 0, max: 63_000, unit: 'V rms' });
  const degree = checkedNumber('pollution', inputs.pollution, { min: 1, max: 3, whole: true });
  const rows = degree === 3 ? degree3 : degree2;
  const [rowV, groupI, groupII, groupIII] = nextRowUp('rms', rows, rmsV, 'V rms');
  const creepageMm = { I: groupI, II: groupII, IIIa: groupIII }[inputs.group];
  const step = rowV === rmsV ? 'the row' : 'the next row up, not interpolated';
  const taken = degree === 1 ? '; pollution degree 1 taken as 2, never less' : '';
  return { creepageMm, rowV, basis: `${step}: ${rowV} V rms, group ${inputs.group}${taken}` };
}
