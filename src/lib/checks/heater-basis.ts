// Where the rating of a heater comes from, in words.
import { findTubeType } from '#handbook/tube-types.ts';
import type { PlacedElement } from '#study/index.ts';

/** "rating as entered", "rating by the handbook", which says where it has it from memory. */
export function heaterBasis({ fromHandbook, part }: PlacedElement): string {
  if (!fromHandbook) return 'rating as entered';
  const heater = findTubeType(part.type ?? '')?.heater;
  return `rating by the handbook${heater?.mark === 'from memory' ? ', from memory' : ''}`;
}
