// What is planned for a wire is rated below the class that it needs.
import type { Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { cautionAtVolts } from '../cautions.ts';
import { classReasoning } from '../class-reasoning.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { shortfallOf } from '../shortfall.ts';
import { carriesWords, classWords, commonPractice, ratingWords, wiresAsSubject } from '../words.ts';
import { planClass } from './class-found.ts';

export const classPlanned: Rule = {
  id: 'class-planned',
  severity: 'danger',
  title: 'Insulation planned below the class that the wire needs',
  source: commonPractice,
  explain:
    'As class-found, for the wire that is planned: its rating as entered, or that of its style. Below the stress at 1 kV and more it is a danger; otherwise a fault, since the wire is still to be bought. It passes with a rating that reaches stress x margin, and the floors of supply rails and the line side.',
  ...inPieces(eachWire(checkWire))
};

function checkWire(study: Study, wire: Wire): Finding[] {
  const about = study.wires.get(wire.id);
  const rating = about?.plannedRating;
  if (!about?.need || !about.stress || !rating) return [];
  const shortfall = shortfallOf(rating, about);
  if (!shortfall) return [];
  const severity = shortfall === 'danger' ? 'danger' : 'fault';
  const done = wire.state === 'fitted' || wire.state === 'checked' ? 'was fitted' : 'is planned';
  const fix = wire.isPart === undefined ? planClass(wire, about) : undefined;
  return [
    {
      rule: 'class-planned',
      severity,
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} ${done} with insulation ${ratingWords(rating)}; it carries ${carriesWords(about)} and needs ${classWords(about.need)} (${about.need.basis}).`,
      source: commonPractice,
      ...(fix ? { fix } : {}),
      ...(severity === 'danger' ? { caution: cautionAtVolts(about.stress.volts) } : {}),
      why: classReasoning(study, about, rating)
    }
  ];
}
