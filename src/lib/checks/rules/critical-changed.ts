// A lead marked keep length, keep place or keep short, of which that cannot be kept.
import type { Wire } from '#document/index.ts';
import { formatAwg } from '#quantity/index.ts';
import type { Study, WireStudy } from '#study/index.ts';
import type { Finding, Rule, Severity } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject } from '../words.ts';

export const criticalChanged: Rule = {
  id: 'critical-changed',
  severity: 'fault',
  title: 'Critical leads that are not kept as they were',
  source: commonPractice,
  explain:
    'In tuned and fast circuits a lead is a part of the tuning: its length, its place and its thickness. Of a lead marked to keep its length the length has to be taped while the old one is there, and of one to keep its place the route or a dress note written down, save for one of 60 mm or less, which goes straight: a caution without, a fault once the wire is out. A planned gauge two sizes or more from the one found is a note, a splice in such a lead a caution. It passes with the length taped, or the route or a dress note written down, a gauge near the one found, and no splice.',
  ...inPieces(eachWire(checkWire))
};

function checkWire(study: Study, wire: Wire): Finding[] {
  const about = study.wires.get(wire.id);
  const { critical } = wire;
  if (!about || !critical || wire.planned.way === 'keep') return [];
  if (wire.state === 'fitted' || wire.state === 'checked') return [];
  const subject = wiresAsSubject(study, [wire]);
  const findings: Finding[] = [];
  const say = (severity: Severity, message: string, wayOut: string) =>
    findings.push({
      rule: 'critical-changed',
      severity,
      at: [wirePlace(study, wire)],
      message: `${subject} ${message}`,
      source: commonPractice,
      fix: { words: wayOut }
    });
  const isOut = wire.state === 'removed';
  const lost: Severity = isOut ? 'fault' : 'caution';
  if (critical.keepLength === true && about.length?.how !== 'taped') {
    const known = about.length ? 'its length is only drawn' : 'its length is not known';
    say(
      lost,
      `has to keep its length, but ${known}.`,
      isOut ? 'Tape the old wire.' : 'Tape it before it is torn out.'
    );
  }
  if (critical.keepPlace === true && !hasPlace(wire, about)) {
    say(
      lost,
      'has to keep its place, but neither its route nor how it is dressed is written down.',
      'Give its supports, or a note on its dress.'
    );
  }
  if (wire.planned.way === 'splice in') {
    say(
      'caution',
      'is critical, but is to be spliced: the joint changes it.',
      'Run one new wire of the same length and place.'
    );
  }
  const change = gaugeChange(wire);
  if (change !== null) say('note', change, 'Take the gauge that was there.');
  return findings;
}

/** A lead this short goes straight from end to end: there is no other way for it. */
const straightMm = 60;

const hasPlace = ({ route, dress }: Wire, { length }: WireStudy): boolean =>
  route !== undefined ||
  (dress !== undefined && dress !== '') ||
  (length !== null && length.mm <= straightMm);

function gaugeChange({ found, planned }: Wire): string | null {
  if (found.awg === undefined || planned.awg === undefined) return null;
  if (Math.abs(found.awg - planned.awg) < 2) return null;
  return `is critical and was ${formatAwg(found.awg)}; ${formatAwg(planned.awg)} is planned, which shifts its inductance and capacitance a little.`;
}
