// The insulation class that a stress asks for: a step of the ladder that wire is bought in.
import { roundSignificant } from '#quantity/index.ts';
import { checkedNumber } from './guard.ts';
import { SumError } from './sum-error.ts';

/** Rated volts that hook-up and high-voltage wire is bought in, smallest first. Common practice, no source. */
export const defaultLadderV: readonly number[] = [
  300, 600, 1000, 3000, 5000, 10_000, 15_000, 20_000, 25_000, 30_000, 40_000
];
export const defaultMarginRequired = 1.25;
export const defaultMarginPreferred = 1.5;

export interface InsulationClassInputs {
  readonly stressV: number;
  readonly marginRequired?: number;
  readonly marginPreferred?: number;
  readonly ladderV?: readonly number[];
  /** A class below which nothing is proposed, as on a supply rail. */
  readonly floorV?: number;
}

export interface ClassStep {
  /** Stress x margin, or the floor where that is higher, V. */
  readonly askedV: number;
  /** The ladder's step; its last one where even that is too low, see `beyondLadder`. */
  readonly stepV: number;
  /** Even the last step is below what is asked: no class on the ladder will do. */
  readonly beyondLadder: boolean;
}

export interface InsulationClass {
  readonly required: ClassStep;
  readonly preferred: ClassStep;
}

/** The smallest steps of the ladder that cover stress x margin, required and preferred.
 *  Formula:  smallest step >= stress x margin, compared to 9 significant digits
 *  Source:   common practice, no source
 *  Valid:    stress 0 to 200 kV, margins 1 to 10, a preferred one below the required one counts as that; otherwise SumError
 *  Example:  insulationClass({ stressV: 400 }).preferred.stepV // 600
 */
export function insulationClass({
  stressV,
  marginRequired = defaultMarginRequired,
  marginPreferred = defaultMarginPreferred,
  ladderV = defaultLadderV,
  floorV = 0
}: InsulationClassInputs): InsulationClass {
  const stress = checkedNumber('stress', stressV, { min: 0, max: 1_000_000, unit: 'V' });
  const required = checkedNumber('margin', marginRequired, { min: 1, max: 10 });
  const preferred = checkedNumber('preferred', marginPreferred, { min: 1, max: 10 });
  const floor = checkedNumber('floor', floorV, { min: 0, max: 1_000_000, unit: 'V' });
  const ladder = checkedLadder(ladderV);
  return {
    required: stepOf(ladder, stress * required, floor),
    preferred: stepOf(ladder, stress * Math.max(required, preferred), floor)
  };
}

function stepOf(ladder: readonly number[], wantedV: number, floorV: number): ClassStep {
  const askedV = roundSignificant(Math.max(wantedV, floorV));
  const lastV = ladder[ladder.length - 1] ?? 0;
  const stepV = ladder.find((step) => step >= askedV);
  return { askedV, stepV: stepV ?? lastV, beyondLadder: stepV === undefined };
}

function checkedLadder(ladderV: readonly number[]): readonly number[] {
  const rises = ladderV.every((step, index) => step > (ladderV[index - 1] ?? 0));
  if (ladderV.length === 0 || !rises || !ladderV.every(Number.isFinite)) {
    throw new SumError({
      problem: 'out of range',
      input: 'ladder',
      value: ladderV.join(', '),
      limit: 'one or more rated voltages above 0, each above the one before',
      wayOut: 'Put the ladder in rising order.'
    });
  }
  return ladderV;
}
