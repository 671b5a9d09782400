// Why a wire needs the class that it needs: what makes up its stress, the margin, the rating.
import { formatNumber, formatVolts, roundSignificant } from '#quantity/index.ts';
import type { Amount, Rating, Study, WireStudy } from '#study/index.ts';
import { plainInput, voltsInput } from './amount-input.ts';
import type { Reasoning, ReasoningInput } from './finding.ts';
import { classWords, ratingWords } from './words.ts';

/** The reasoning of a rating that is held against the class needed. */
export function classReasoning(
  { policy }: Study,
  { carries, stress, need }: WireStudy,
  rating: Rating | null
): Reasoning {
  const parts: readonly (readonly [name: string, amount: Amount | null])[] = [
    ['Dc', carries.dcV],
    ['Ac, rms', carries.acV],
    ['Pulse, peak', carries.pulseV]
  ];
  const known = parts.flatMap(([name, amount]) => (amount ? [voltsInput(name, amount)] : []));
  const counted: ReasoningInput[] = stress
    ? [plainInput('Stress', formatVolts(roundSignificant(stress.volts, 4)), stress.basis)]
    : [];
  const asked = need ? formatVolts(roundSignificant(need.askedV, 4)) : 'not known';
  return {
    sum: 'insulation-class',
    inputs: [
      ...known,
      ...counted,
      plainInput('Margin', `x ${formatNumber(policy.marginRequired)}`, 'policy'),
      ...(rating ? [plainInput('Rating', formatVolts(rating.volts), ratingWords(rating))] : [])
    ],
    outcome: `Asked for: ${asked}${need ? ` (${need.basis})` : ''}; ${rating ? `rated ${formatVolts(rating.volts)}` : 'rating not known'}.`,
    passes: `with ${need ? `insulation of ${classWords(need)} (by the reckoning ${asked} and more)` : 'a rating that is known to be enough'}, or with a lower stress declared from a measurement.`
  };
}
