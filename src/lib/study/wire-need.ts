// The insulation class that a stress asks for under the document's policy.
import type { Policy } from '#document/index.ts';
import { insulationClass } from '#physics/insulation-class.ts';
import { formatNumber, formatVolts, roundSignificant } from '#quantity/index.ts';
import type { Need, Net, Stress } from './types.ts';

/** The ladder without steps of 0 V, which no wire is sold as; the whole of it where none is left. */
const usableLadder = (policy: Policy): readonly number[] => {
  const steps = policy.ladderV.filter((step) => step > 0);
  return steps.length > 0 ? steps : [policy.supplyFloorV || 1];
};

/** A class below which nothing is proposed, whatever the volts. */
export interface ClassFloor {
  readonly volts: number;
  /** "supply rail". */
  readonly words: string;
}

export const noFloor: ClassFloor = { volts: 0, words: '' };

export const railFloor = (policy: Policy): ClassFloor => ({
  volts: policy.supplyFloorV,
  words: 'supply rail'
});

/** The floor of the nets that a wire is on. That of the line side is there for what the volts do not
 *  show: the surges of the line, and wire that stays live with the set switched off. Common practice; of
 *  surges IEC 60664-1, Table F.1, counts 2500 V on a 300 V line (as reprinted). */
export function floorOf(
  nets: readonly Pick<Net, 'standsOnRail' | 'onLineSide'>[],
  policy: Policy
): ClassFloor {
  const rail = nets.some(({ standsOnRail }) => standsOnRail) ? railFloor(policy) : noFloor;
  const isOnLine = nets.some(({ onLineSide }) => onLineSide);
  return isOnLine && policy.lineFloorV > rail.volts
    ? { volts: policy.lineFloorV, words: 'line side' }
    : rail;
}

/** The class that volts ask for with the margin required, no floor counted. */
export const classOfVolts = (stressV: number, policy: Policy): number => {
  const { marginRequired } = policy;
  return insulationClass({ stressV, marginRequired, ladderV: usableLadder(policy) }).required.stepV;
};

/** The class needed and preferred; null where the stress is not known. */
export function needOf(stress: Stress | null, floor: ClassFloor, policy: Policy): Need | null {
  if (!stress) return null;
  const floorV = floor.volts;
  const { marginRequired, marginPreferred } = policy;
  const { required, preferred } = insulationClass({
    stressV: stress.volts,
    marginRequired,
    marginPreferred,
    ladderV: usableLadder(policy),
    floorV
  });
  const product = roundSignificant(stress.volts * marginRequired);
  const sum = `${formatVolts(stress.volts)} x ${formatNumber(marginRequired)} = ${formatVolts(product)}`;
  return {
    requiredV: required.stepV,
    preferredV: preferred.stepV,
    beyondLadder: required.beyondLadder,
    atLeast: stress.atLeast,
    askedV: required.askedV,
    basis:
      stress.volts === 0
        ? stress.basis
        : floorV > product
          ? `${floor.words}: ${formatVolts(floorV)} at least (${sum})`
          : sum
  };
}
