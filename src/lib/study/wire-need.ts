// The insulation class that a stress asks for under the document's policy.
import type { Policy } from '#document/index.ts';
import { insulationClass } from '#physics/insulation-class.ts';
import { formatNumber, formatVolts, roundSignificant } from '#quantity/index.ts';
import type { Need, Stress } from './types.ts';

/** The ladder without steps of 0 V, which no wire is sold as; the whole of it where none is left. */
const usableLadder = (policy: Policy): readonly number[] => {
  const steps = policy.ladderV.filter((step) => step > 0);
  return steps.length > 0 ? steps : [policy.supplyFloorV || 1];
};

/** The class needed and preferred; null where the stress is not known.
 *  @param onRail the wire stands on a supply rail, where the policy's floor holds */
export function needOf(stress: Stress | null, onRail: boolean, policy: Policy): Need | null {
  if (!stress) return null;
  const floorV = onRail ? policy.supplyFloorV : 0;
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
          ? `supply rail: ${formatVolts(floorV)} at least (${sum})`
          : sum
  };
}
