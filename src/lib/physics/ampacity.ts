// What a wire may carry before its insulation grows too hot. Published figures for one wire differ
// by four to one, because each supposes another surrounding: so the basis is part of the answer.
import { bundleShare } from './bundle-derating.ts';
import { circularMils } from './conductor.ts';
import { checkedNumber } from './guard.ts';
import { nextRowUp } from './interpolate.ts';
import { SumError } from './sum-error.ts';

/** Currents of a wire in a bundle of 33 or more, 20 % loaded, A; insulation rated 105 C in air of
 *  70 C. FAA AC 43.13-1B CHG 1, Table 11-9. */
const bundledAmps: readonly (readonly [awg: number, amps: number])[] = [
  [10, 17],
  [12, 13],
  [14, 10],
  [16, 7],
  [18, 6],
  [20, 4],
  [22, 3],
  [24, 2.5]
];
const tableRiseC = 105 - 70;
/** Share at 20 wires, 20 % loaded: the last point read off the bundle curve. The table's bundles are
 *  larger still, so that undoing only this much leaves a single wire's figure on the low side. */
const tableBundleShare = 0.615;

/** Currents of TFE-insulated wire alone and in a bundle, A: insulation rated 200 C, 70 C, no air. Printed as
 *  "TFE insulated, Bundled / Single" without the name of its standard; that it is the table of
 *  EEE-INST-002, its temperatures, and the sizes 26 and 28 are from memory. */
const spaceAmps: readonly (readonly [awg: number, singleA: number, bundledA: number])[] = [
  [8, 44, 23],
  [10, 33, 16],
  [12, 25, 12],
  [14, 19, 8],
  [16, 13, 6],
  [18, 9.2, 5],
  [20, 6.5, 3.7],
  [22, 4.5, 2.5],
  [24, 3.3, 2],
  [26, 2.5, 1.4],
  [28, 1.8, 1],
  [30, 1.3, 0.7]
];
const spaceRiseC = 200 - 70;

export const ampacityBases = ['cabinet', 'space', '700 cmil'] as const;
/** `cabinet`: hook-up wire in the warm, still air of a set. `space`: a spacecraft's table, alone or
 *  bundled, for wire that no air cools. `700 cmil`: the old rule for windings and power runs, 700
 *  circular mils for each ampere, whatever the insulation. */
export type AmpacityBasis = (typeof ampacityBases)[number];

export interface AmpacityInputs {
  readonly awg: number;
  /** Wires in the bundle, this one among them. */
  readonly wires?: number;
  /** What the insulation is rated for. */
  readonly ratingC: number;
  readonly ambientC: number;
  readonly basis?: AmpacityBasis;
}

export interface Ampacity {
  /** Alone in air. */
  readonly singleA: number;
  /** In its bundle, with all wires of it fully loaded. */
  readonly allowedA: number;
  readonly basis: string;
}

/** Continuous current of a copper wire, alone and in its bundle.
 *  Formula:  single = I / 0.615 x sqrt((rating - ambient) / 35), I the table's current at 105 C
 *            insulation in 70 C air; allowed = single x bundle share. Basis space: table x sqrt((rating -
 *            ambient) / 130). Basis 700 cmil: area / 700
 *  Source:   FAA AC 43.13-1B Table 11-9; MIL-W-5088L / SAE AS50881 bundle curve; spacecraft derating
 *            table for TFE wire; heat in proportion to the rise and to the square of the current
 *  Valid:    24 to 10 AWG, basis space 30 to 8 AWG (odd sizes as the next thinner), rating 40 to 250 C above the ambient,
 *            ambient -40 to 200 C; otherwise SumError
 *  Example:  ampacity({ awg: 22, ratingC: 105, ambientC: 70 }).singleA // 4.878049
 */
export function ampacity(inputs: AmpacityInputs): Ampacity {
  const { awg, wires = 1, basis = 'cabinet' } = inputs;
  const ambientC = checkedNumber('ambient', inputs.ambientC, { min: -40, max: 200, unit: 'C' });
  const ratingC = checkedNumber('rating', inputs.ratingC, { min: 40, max: 250, unit: 'C' });
  if (ratingC <= ambientC) throw noRise(ratingC, ambientC);
  const share = bundleShare(wires);
  if (basis === '700 cmil') {
    const amps = circularMils(awg) / 700;
    return { singleA: amps, allowedA: amps, basis: windingWords };
  }
  if (basis === 'space') return spaceAmpacity(awg, wires, ratingC, ambientC);
  const [tableAwg, amps] = nextRowUp('awg', bundledAmps, checkedGauge(awg), 'AWG');
  const singleA = (amps / tableBundleShare) * Math.sqrt((ratingC - ambientC) / tableRiseC);
  return {
    singleA,
    allowedA: singleA * share,
    basis: cabinetWords({ awg, tableAwg, wires, share, ratingC, ambientC })
  };
}

function spaceAmpacity(awg: number, wires: number, ratingC: number, ambientC: number): Ampacity {
  const gauge = checkedNumber('awg', awg, { min: 8, max: 30, whole: true, unit: 'AWG' });
  const [, single, bundled] = nextRowUp('awg', spaceAmps, gauge, 'AWG');
  const rise = Math.sqrt((ratingC - ambientC) / spaceRiseC);
  return {
    singleA: single * rise,
    allowedA: (wires > 1 ? bundled : single) * rise,
    basis: `A spacecraft's table for TFE wire of 200 C at 70 C without air, ${wires > 1 ? 'bundled' : 'single'}; corrected to ${ratingC} C insulation at ${ambientC} C. Its temperatures are from memory.`
  };
}

function checkedGauge(awg: number): number {
  return checkedNumber('awg', awg, {
    min: 10,
    max: 24,
    whole: true,
    unit: 'AWG',
    wayOut: 'The published table holds 24 to 10 AWG; for other sizes ask for the 700 cmil basis.'
  });
}

const noRise = (ratingC: number, ambientC: number): SumError =>
  new SumError({
    problem: 'out of range',
    input: 'rating',
    value: `${ratingC} C`,
    limit: `above the ambient of ${ambientC} C`,
    wayOut: 'Take wire with a higher temperature rating, or move it to a cooler place.'
  });

const windingWords =
  '700 circular mils for each ampere, a rule for windings and power runs; temperatures and bundle not counted.';

const cabinetWords = (facts: {
  awg: number;
  tableAwg: number;
  wires: number;
  share: number;
  ratingC: number;
  ambientC: number;
}): string => {
  const { awg, tableAwg, wires, share, ratingC, ambientC } = facts;
  const odd = tableAwg === awg ? '' : ` Read as ${tableAwg} AWG, the next thinner in the table.`;
  return (
    'Published figures for one wire differ by four to one (22 AWG: 0.92 to 7 A), for each supposes another ' +
    'surrounding, and none was written for a tube chassis. Taken here: the aviation table for bundled wire ' +
    `with 105 C insulation in 70 C air, its bundling undone (/ ${tableBundleShare}), its allowance for thin air kept in ` +
    `for the still air of a cabinet; corrected to ${ratingC} C insulation in ${ambientC} C air; ` +
    `${wires === 1 ? 'one wire alone' : `${wires} wires in the bundle, all fully loaded: x ${share.toPrecision(3)}`}.` +
    odd
  );
};
