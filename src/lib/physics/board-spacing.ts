// How far the conductors of a printed board must stay apart. An old board's lacquer earns no credit
// unless it is whole.
import { checkedNumber } from './guard.ts';
import { nextRowUp, type TableRow } from './interpolate.ts';

export const boardCoatings = ['bare', 'coated'] as const;
export type BoardCoating = (typeof boardCoatings)[number];

interface BoardRule {
  /** Volts peak up to and with, mm. */
  readonly rows: readonly TableRow[];
  /** For each volt above the last row. */
  readonly mmPerV: number;
}

/** IPC-D-275, the table that IPC-2221 took over, as quoted; the bare column begins at 51 V and is held
 *  below. */
const rules: Readonly<Record<BoardCoating, BoardRule>> = {
  coated: {
    rows: [
      [100, 0.13],
      [300, 0.38],
      [500, 0.75]
    ],
    mmPerV: 0.00305
  },
  bare: {
    rows: [
      [150, 0.64],
      [300, 1.27],
      [500, 2.54]
    ],
    mmPerV: 0.005
  }
};
const lastRowV = 500;

/** The later rule for power supplies, IPC-9592: so much, and so much for each volt. */
const supplyRule = { mm: 0.6, mmPerV: 0.005 };

export interface BoardSpacing {
  readonly spacingMm: number;
  /** The larger of the published figures. */
  readonly adviceMm: number;
}

/** Least distance between conductors on the outside of a printed board.
 *  Formula:  the table's figure at the first row >= the peak; above 500 V its last row + (peak - 500) x
 *            0.00305 mm/V coated, 0.005 mm/V bare; advice = the larger of it and 0.6 mm + 0.005 mm/V
 *  Source:   IPC-D-275 (later IPC-2221 Table 6-1), as quoted in a published mailing list, and IPC-9592, as
 *            quoted on a page on board clearances; neither standard was read, and that the coated figures
 *            are those of a coated assembly is from memory
 *  Valid:    0 to 30 kV peak or dc, to 3050 m; otherwise SumError
 *  Example:  boardSpacing({ peakV: 600, coating: "coated" }).spacingMm // 1.055
 */
export function boardSpacing(inputs: {
  readonly peakV: number;
  readonly coating: BoardCoating;
}): BoardSpacing {
  const peakV = checkedNumber('peak', inputs.peakV, { min: 0, max: 30_000, unit: 'V' });
  const { rows, mmPerV } = rules[inputs.coating];
  const [, tableMm] = nextRowUp('peak', rows, Math.min(peakV, lastRowV), 'V');
  const spacingMm = tableMm + mmPerV * Math.max(0, peakV - lastRowV);
  return { spacingMm, adviceMm: Math.max(spacingMm, supplyRule.mm + supplyRule.mmPerV * peakV) };
}
