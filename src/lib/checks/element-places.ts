// The parts that elements belong to, as places.
import type { PlacedElement } from '#study/index.ts';
import type { FindingPlace } from './finding.ts';
import { partPlace } from './places.ts';
import { listed } from './words.ts';

type OfPart = Pick<PlacedElement, 'part'>;

/** Each part once, in the order of the elements. */
export const elementPlaces = (elements: readonly OfPart[]): readonly FindingPlace[] =>
  [...new Set(elements.map(({ part }) => part))].map(partPlace);

/** "V1", "V1, V2 and 4 more": the parts that elements belong to. */
export const elementNames = (elements: readonly OfPart[], most = 8): string =>
  listed(
    elementPlaces(elements).map(({ label }) => label),
    most
  );
