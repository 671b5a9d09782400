// Wires of many volts among wires of few: who lies beside whom, and where.
import type { Id, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { airGap, type AirGap } from '#physics/air-gap.ts';
import type { Bundle, Rating, Study, WireStudy } from '#study/index.ts';

export interface Neighbours {
  readonly wire: Wire;
  readonly about: WireStudy;
  /** Peak volts of the wire to chassis. */
  readonly volts: number;
  /** Wires that lie beside it and are not made for it, in the order of the document. */
  readonly weaker: readonly Wire[];
  /** Where: supports and stretches. */
  readonly bundles: readonly Bundle[];
}

/** The neighbours of a wire from `leastV` up to (not with) `belowV` that stand at less than half as much
 *  and whose own insulation would not stand it; null where there are none. The conductors of one cable
 *  are what their maker made them. */
export function findNeighbours(
  study: Study,
  wire: Wire,
  leastV: number,
  belowV: number
): Neighbours | null {
  const about = study.wires.get(wire.id);
  const volts = about?.stress?.volts ?? 0;
  if (!about || volts < leastV || volts >= belowV) return null;
  const bundles = (study.bundlesOf.get(wire.id) ?? []).filter(({ cable }) => cable === null);
  const ids = new Set<Id>();
  for (const { wires } of bundles) for (const id of wires) if (id !== wire.id) ids.add(id);
  const weaker = study.index.wires.filter(
    (other) => ids.has(other.id) && !shareCable(wire, other) && isWeaker(study, other, volts)
  );
  if (weaker.length === 0) return null;
  const where = bundles.filter(({ wires }) => weaker.some(({ id }) => wires.includes(id)));
  return { wire, about, volts, weaker, bundles: where };
}

const shareCable = (a: Wire, b: Wire): boolean => a.cable !== undefined && a.cable === b.cable;

function isWeaker(study: Study, wire: Wire, volts: number): boolean {
  const about = study.wires.get(wire.id);
  // A wire of which nothing is known may be anything.
  if (!about || (about.stress?.volts ?? 0) >= volts / 2) return false;
  const rating = bestRating(about);
  return (rating?.volts ?? 0) < volts * study.policy.marginRequired;
}

const bestRating = ({ foundRating, plannedRating }: WireStudy): Rating | null =>
  (plannedRating?.volts ?? 0) > (foundRating?.volts ?? 0) ? plannedRating : foundRating;

/** "at K1 and G2", "over a stretch of their way": where a wire meets its neighbours. */
export function placesWords(study: Study, bundles: readonly Bundle[]): string {
  const names = [
    ...new Set(
      bundles.flatMap(({ support }) => {
        const name =
          support === null ? undefined : findElement(study.document.supports, support)?.name;
        return name === undefined || name === '' ? [] : [name];
      })
    )
  ];
  if (names.length === 0) return 'over a stretch of its way';
  return `at ${names.length > 1 ? `${names.slice(0, -1).join(', ')} and ` : ''}${names[names.length - 1] ?? ''}`;
}

/** No published table goes higher. */
const tableEndV = 100_000;

/** The gap that is advised between bare metal at so many volts and other metal. */
export const gapAt = (volts: number): AirGap =>
  airGap({ peakV: Math.min(volts, tableEndV), field: 'inhomogeneous', pollution: 2 });
