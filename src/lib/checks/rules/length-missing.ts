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
    'A wire is cut by the length taped along the old one, or by its path drawn to scale: both ends and all supports placed and, between two units, the length outside given. Wires that stay, that have been fitted, that nobody has found both ends of, and leads of parts are left out.',
  check: (study) => study.index.wires.flatMap((wire) => checkWire(study, wire))
};

function checkWire(study: Study, wire: Wire): Finding[] {
  const about = study.wires.get(wire.id);
  if (!about || about.length !== null || about.recommended === null) return [];
  if (wire.planned.way === 'keep' || wire.state === 'fitted' || wire.state === 'checked') return [];
  const from = study.index.findAt(wire.from);
  const to = study.index.findAt(wire.to);
  if (!from || !to) return [];
  const apart = from.part.unit !== to.part.unit && from.part.place && to.part.place;
  return [
    {
      rule: 'length-missing',
      severity: 'note',
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} has no length${apart ? ': its way from one unit to the other is not drawn' : ''}.`,
      source: commonPractice,
      fix: {
        words:
          wire.state === 'removed'
            ? 'Tape the old wire before it is thrown away.'
            : apart
              ? 'Tape it lug to lug, or give the length outside the drawing.'
              : 'Tape it lug to lug before it is torn out, or place its ends and supports to scale.'
      }
    }
  ];
}
