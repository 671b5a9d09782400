// One click plans a wire as the policy would have it: a new wire of that gauge, make and class.
import { setPlanned } from '#document/edits.ts';
import type { Edit, Wire } from '#document/index.ts';
import type { WireStudy } from '#study/index.ts';
import { isUnplanned } from './wire-facts.ts';

/** The edit, or null where the wire is planned already or none is to be bought. Where the class is a
 *  lower bound there is none either: what is not known must be decided by a person. */
export const findPlanEdit = (wire: Wire, about: WireStudy | undefined): Edit | null => {
  const recommended = about?.recommended ?? null;
  if (recommended === null || recommended.atLeast || about?.need === null || !isUnplanned(wire)) {
    return null;
  }
  const { awg, stranding, plating, classV } = recommended;
  return setPlanned(wire.id, {
    way: 'new wire',
    awg,
    stranding,
    plating,
    ratingV: classV,
    ...(wire.found.colour !== undefined && { colour: wire.found.colour }),
    ...(wire.found.tracer !== undefined && { tracer: wire.found.tracer })
  });
};
