// A laid-out diagram: geometry, where the numbers stand, and what has been proved of it.
import type { Id } from '#document/index.ts';
import type { NumberTag } from './figures/number-tag.ts';
import type { Geometry } from './layout/geometry.ts';
import type { NumberPlace } from './place-numbers.ts';
import type { Plan } from './presentation/plan.ts';
import type { Proofs } from './proofs.ts';

export interface PlacedTag {
  readonly tag: NumberTag;
  readonly place: NumberPlace;
}

export interface CableName {
  readonly cable: Id;
  readonly text: string;
  readonly place: NumberPlace;
}

export interface Diagram {
  readonly plan: Plan;
  /** As it is drawn: what a hand has placed stands where it was put. */
  readonly geometry: Geometry;
  /** As it was laid out, without places by hand. */
  readonly laidOut: Geometry;
  readonly proofs: Proofs;
  readonly tags: readonly PlacedTag[];
  readonly cableNames: readonly CableName[];
  /** What could not be done as asked, in words; empty when all went well. */
  readonly remarks: readonly string[];
}
