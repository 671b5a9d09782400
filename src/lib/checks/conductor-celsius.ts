// What old insulation stands in degrees, by the words that people write down of it. Styles and marked
// figures come first; this is for what has neither.
import type { Found, Planned } from '#document/index.ts';
import type { Conductor } from '#study/index.ts';

/** From memory, on the low side: check against the maker's data where it matters. */
const byWords: readonly (readonly [words: RegExp, celsius: number, name: string])[] = [
  [/ptfe|teflon|fep/i, 150, 'fluoropolymer'],
  [/silicone/i, 150, 'silicone rubber'],
  [/glass|asbestos/i, 125, 'glass or asbestos'],
  [/xlpe|irradiated/i, 105, 'cross-linked'],
  [/thermoplastic|pvc|vinyl|plastic/i, 80, 'thermoplastic'],
  [/cambric/i, 80, 'varnished cambric'],
  [/polyethylene|\bpe\b/i, 75, 'polyethylene'],
  [/rubber|cotton|cloth|silk|push/i, 60, 'rubber or cotton']
];

export interface InsulationCelsius {
  readonly celsius: number;
  /** Neither a rating nor words tell what it is. */
  readonly isUnknown: boolean;
  readonly basis: string;
}

/** The lowest of the usual ratings, where nothing is known. */
const unknown: InsulationCelsius = {
  isUnknown: true,
  celsius: 60,
  basis: 'insulation not known: taken as 60 °C'
};

/** What a conductor's insulation stands, for a sum that needs a figure. */
export function insulationCelsius(
  { ratingC }: Conductor,
  { insulation = '' }: Found | Planned,
  isBare: boolean
): InsulationCelsius {
  if (ratingC !== null) return { celsius: ratingC, isUnknown: false, basis: 'its rating' };
  if (isBare) return { celsius: 105, isUnknown: false, basis: 'bare: taken as 105 °C' };
  const row = byWords.find(([words]) => words.test(insulation));
  return row ? { celsius: row[1], isUnknown: false, basis: `${row[2]}, from memory` } : unknown;
}
