// No length is known: nothing can be cut.
import type { Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject } from '../words.ts';

export const lengthMissing: Rule = {
  id: 'length-missing',
  severity: 'note',
  title: 'Wires whose length nobody knows',
  source: commonPractice,
  explain:
    'A wire is cut by the length taped along the old one, or by its path drawn to scale: both ends and all supports placed and, between two units, the length outside given. Wires that stay, that have been fitted, that nobody has found both ends of, and leads of parts are left out. It passes once a length is taped, or both ends and all supports are placed.',
  check: (study) =>
    cases.flatMap((one) => {
      const wires = study.index.wires.filter((wire) => caseOf(study, wire) === one);
      return wires.length === 0 ? [] : [together(study, wires, one)];
    })
};

/** What is to be done about it differs, so each of these is a finding of its own. */
const cases = ['removed', 'apart', 'in place'] as const;
type Case = (typeof cases)[number];

function caseOf(study: Study, wire: Wire): Case | null {
  const about = study.wires.get(wire.id);
  if (!about || about.length !== null || about.recommended === null) return null;
  if (wire.planned.way === 'keep' || wire.state === 'fitted' || wire.state === 'checked')
    return null;
  const from = study.index.findAt(wire.from);
  const to = study.index.findAt(wire.to);
  if (!from || !to) return null;
  if (wire.state === 'removed') return 'removed';
  const isApart = from.part.unit !== to.part.unit && from.part.place && to.part.place;
  return isApart ? 'apart' : 'in place';
}

const ways: Readonly<Record<Case, string>> = {
  removed: 'Tape the old wire before it is thrown away.',
  apart: 'Tape it lug to lug, or give the length outside the drawing.',
  'in place': 'Tape it lug to lug before it is torn out, or place its ends and supports to scale.'
};

function together(study: Study, wires: readonly Wire[], one: Case): Finding {
  const why = one === 'apart' ? ': the way from one unit to the other is not drawn' : '';
  const verb = wires.length === 1 ? 'has' : 'have';
  return {
    rule: 'length-missing',
    severity: 'note',
    at: wires.map((wire) => wirePlace(study, wire)),
    message: `${wiresAsSubject(study, wires)} ${verb} no length${why}.`,
    source: commonPractice,
    fix: { words: ways[one] }
  };
}
