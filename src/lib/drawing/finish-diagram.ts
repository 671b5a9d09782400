// From a layout to the diagram that is drawn: parts that a hand has placed, proofs, numbers, and words
// on what could not be done.
import type { Diagram } from './diagram.ts';
import type { Geometry } from './layout/geometry.ts';
import { applyHandPlaces } from './layout/place-by-hand.ts';
import { numberDiagram } from './number-diagram.ts';
import { describeLink } from './presentation/part-ends.ts';
import type { Plan } from './presentation/plan.ts';
import { proveGeometry, type Proofs } from './proofs.ts';

/** Lines that found no room, in words. */
const remarksOn = (plan: Plan, { throughParts, overlaps }: Proofs): string[] => {
  const crowded = new Set([...throughParts.map(({ line }) => line), ...overlaps.map(({ a }) => a)]);
  const named = plan.links.lines.filter(({ id }) => crowded.has(id));
  return named.map(
    (link) => `no room for ${describeLink(plan, link)}: move the parts at its ends further apart`
  );
};

/** The diagram of a layout, with what the plan's document says of places by hand. */
export const finishDiagram = (plan: Plan, laidOut: Geometry): Diagram => {
  const geometry = applyHandPlaces(plan, laidOut);
  const proofs = proveGeometry(geometry);
  return {
    plan,
    geometry,
    laidOut,
    proofs,
    ...numberDiagram(plan, geometry),
    remarks: remarksOn(plan, proofs)
  };
};
