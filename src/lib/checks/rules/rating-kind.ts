// A rating counts for its kind only: kilovolts of dc say nothing of a recurring pulse.
import type { Wire } from '#document/index.ts';
import { formatVolts } from '#quantity/index.ts';
import type { Rating, Study, WireStudy } from '#study/index.ts';
import { classReasoning } from '../class-reasoning.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { isFoundInPlace } from '../shortfall.ts';
import { carriesWords, commonPractice, ratingWords, wiresAsSubject } from '../words.ts';

export const ratingKind: Rule = {
  id: 'rating-kind',
  severity: 'caution',
  title: 'Ratings of one kind on stress of another',
  source: commonPractice,
  explain:
    'High-voltage leads are often rated for dc only. Recurring pulses and ac heat insulation and start corona far below such a rating. A rating for dc only on a wire of whose stress more than a tenth is ac or pulse, one for ac only where more than a tenth is pulse, and one for pulses only where more than half is dc, are cautions. What was found counts until something else is planned. It passes with a rating that holds for the kind, or for any.',
  ...inPieces(eachWire(checkWire))
};

/** A part of the stress that is smaller than this is left out of the question. */
const share = 0.1;

function checkWire(study: Study, wire: Wire): Finding[] {
  const about = study.wires.get(wire.id);
  if (!about?.stress || about.stress.volts === 0) return [];
  const planned = wire.planned.way === 'keep' ? null : about.plannedRating;
  const rating = planned ?? (isFoundInPlace(wire) ? about.foundRating : null);
  const foreign = rating && foreignPart(rating, about);
  if (!rating || foreign === null) return [];
  const verb = planned ? 'is planned' : 'was found';
  return [
    {
      rule: 'rating-kind',
      severity: 'caution',
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} ${verb} with insulation ${ratingWords(rating)}; it carries ${carriesWords(about)}, and such a rating says nothing of ${foreign}.`,
      source: commonPractice,
      fix: {
        words: 'Ask the maker of the wire for its rating of that kind, or take wire that has one.'
      },
      why: classReasoning(study, about, rating)
    }
  ];
}

/** The part of the stress that the rating does not speak of, in words; null where there is none. */
function foreignPart({ kind }: Rating, { carries, stress }: WireStudy): string | null {
  const total = stress?.volts ?? 0;
  const dc = Math.abs(carries.dcV?.value ?? 0);
  const ac = (carries.acV?.value ?? 0) * Math.SQRT2;
  const pulse = carries.pulseV?.value ?? 0;
  if (kind === 'dc' && pulse > share * total) return `a pulse of ${formatVolts(pulse)}`;
  if (kind === 'dc' && ac > share * total) return `${formatVolts(ac / Math.SQRT2)} ac`;
  if (kind === 'ac' && pulse > share * total) return `a pulse of ${formatVolts(pulse)}`;
  if (kind === 'pulse' && dc > 0.5 * total) return `${formatVolts(dc)} dc`;
  return null;
}
