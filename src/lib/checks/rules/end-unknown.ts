// An end of a wire that nobody has found yet.
import type { Wire, WireEnd } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import type { Finding, Rule, Severity } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject } from '../words.ts';

export const endUnknown: Rule = {
  id: 'end-unknown',
  severity: 'fault',
  title: 'Ends that nobody has found',
  source: commonPractice,
  explain:
    'A wire needs a terminal at both ends before it can be judged by what it is connected to, and before it may be torn out. An end without a terminal is a caution, and a fault once the wire has been removed, for then it can no longer be traced. An end whose terminal is written down but marked unknown is a note. It passes when both ends have a terminal that somebody has seen, metered or inferred.',
  ...inPieces(eachWire(checkWire))
};

function checkWire(study: Study, wire: Wire): Finding[] {
  const lost = [wire.from, wire.to].filter((end) => end.at === undefined);
  const doubtful = [wire.from, wire.to].filter((end) => end.at && end.known === 'unknown');
  if (lost.length === 0 && doubtful.length === 0) return [];
  const subject = wiresAsSubject(study, [wire]);
  const isGone = lost.length > 0 && wire.state === 'removed';
  const severity: Severity = isGone ? 'fault' : lost.length > 0 ? 'caution' : 'note';
  return [
    {
      rule: 'end-unknown',
      severity,
      at: [wirePlace(study, wire)],
      message:
        lost.length > 0
          ? `${subject} ${lostWords(study, wire, lost)}${isGone ? ', and the wire has been removed' : ''}.`
          : `${subject}: nobody has seen that it ends at ${doubtful.map((end) => study.index.labelOf(end)).join(' and at ')}.`,
      source: commonPractice,
      fix: {
        words: isGone
          ? 'Look for it in photographs and in the service data.'
          : 'Follow it, or ring it out with a meter, before it is taken out.'
      }
    }
  ];
}

function lostWords(study: Study, wire: Wire, lost: readonly WireEnd[]): string {
  const written = lost.map((end) => end.as ?? '').filter((text) => /[a-z0-9]/i.test(text));
  const as = written.length === 0 ? '' : ` (written down: "${written.join('", "')}")`;
  if (lost.length === 2) return `has no end that anybody has found${as}`;
  const known = wire.from.at === undefined ? wire.to : wire.from;
  return `starts at ${study.index.labelOf(known)}; its other end has not been found${as}`;
}
