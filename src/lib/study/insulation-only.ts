// Leads that are chosen for their insulation alone, such as that of the second anode: what flows in them
// is beside the point, and a figure in amperes draws the eye from the kilovolts.
import type { FunctionRole } from './function-words.ts';

/** From here on current limits no lead, V peak. */
export const insulationOnlyV = 5000;

/** @param says whether the wire, or its net, has a role */
export const isInsulationOnly = (stressV: number, says: (role: FunctionRole) => boolean): boolean =>
  stressV >= insulationOnlyV || says('second anode');
