// How bad it is when a rating falls short of the class needed, and which rating counts by now.
import type { Wire } from '#document/index.ts';
import type { Rating, WireStudy } from '#study/index.ts';
import { isAtLeast } from '#quantity/index.ts';
import type { Severity } from './finding.ts';

/** From here on insulation that is too weak can kill or burn: a matter of judgement, no source. */
export const highVoltageV = 1000;

/** True where the rating reaches what is asked: stress x margin, and the floor on a rail. A rating
 *  between two steps of the ladder counts as it is. Against a lower bound nothing is known to reach. */
export const reaches = (rating: Rating | null, { need }: WireStudy): boolean =>
  rating !== null && need !== null && !need.atLeast && isAtLeast(rating.volts, need.askedV);

/** How far below: null where it is not. */
export function shortfallOf(
  rating: Rating,
  { need, stress }: WireStudy
): Exclude<Severity, 'note'> | null {
  if (!need || !stress || isAtLeast(rating.volts, need.askedV)) return null;
  if (isAtLeast(rating.volts, stress.volts))
    return stress.volts >= highVoltageV ? 'fault' : 'caution';
  return stress.volts >= highVoltageV ? 'danger' : 'fault';
}

/** The old insulation is still what holds: nothing new was fitted in its place. */
export const isFoundInPlace = ({ state, planned }: Wire): boolean => {
  if (state === 'removed') return false;
  const isReplaced = planned.way !== undefined && planned.way !== 'keep';
  return !((state === 'fitted' || state === 'checked') && isReplaced);
};

/** Something else is planned for the wire, and its rating will do. */
export const planWillDo = (wire: Wire, about: WireStudy): boolean =>
  wire.planned.way !== 'keep' && reaches(about.plannedRating, about);
