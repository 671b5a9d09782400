// Both ends of a wire at one terminal: no wire of a set does that.
import type { Edit, Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { plainInput } from '../amount-input.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject } from '../words.ts';

export const endsAlike: Rule = {
  id: 'ends-alike',
  severity: 'fault',
  title: 'Wires that end where they start',
  source: commonPractice,
  explain:
    'A wire with both of its ends at one terminal connects nothing: one of the two was picked or typed wrongly, and the wire is missing where it really goes. The fix keeps the first end and leaves the second as one that nobody has found. It passes when the two ends are at different terminals.',
  ...inPieces(eachWire(checkWire))
};

function checkWire(study: Study, wire: Wire): Finding[] {
  const { from, to } = wire;
  const [first, last] = [study.index.findAt(from), study.index.findAt(to)];
  if (!first || first !== last) return [];
  const end: Partial<Record<keyof Wire['to'], unknown>> = { at: null, known: 'unknown' };
  const edit: Edit = { kind: 'change-wire', args: { id: wire.id, fields: { to: end } } };
  const label = study.index.labelOf(from);
  return [
    {
      rule: 'ends-alike',
      severity: 'fault',
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} starts and ends at ${label}: one of its ends is wrong.`,
      source: commonPractice,
      fix: { words: 'Leave its second end open until it has been found.', edit },
      why: {
        sum: null,
        inputs: [
          plainInput('First end', label, `written down as ${from.known}`),
          plainInput('Second end', label, `written down as ${to.known}`)
        ],
        outcome: 'A wire connects two terminals; this one names one of them twice.',
        passes: 'when its ends are at two different terminals.'
      }
    }
  ];
}
