// The shield of an audio lead: grounded at one end it keeps hum out, at both it can make a loop,
// at neither it does nothing.
import type { Cable, Wire, WireEnd } from '#document/index.ts';
import { findWireWay } from '#study/wire-way.ts';
import type { Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { cablePlace, wirePlace } from '../places.ts';
import { commonPractice, listed } from '../words.ts';

export const shieldGround: Rule = {
  id: 'shield-ground',
  severity: 'caution',
  title: 'Audio shields grounded at both ends, or at neither',
  source: commonPractice,
  explain:
    'Looks at the shields of cables that carry audio. An end counts as grounded when it is connected to the chassis by another way than the shield itself. Grounded at both ends, the shield and the chassis make a loop that picks up hum: a caution. Grounded at neither, it shields nothing: a caution. An end that nobody has found is not judged. Shields of coax for radio frequencies belong grounded at both ends and are left out. It passes when one end is grounded and the other is not.',
  check: (study) => {
    const shields = study.index.wires.filter((wire) => wire.construction === 'shield');
    if (shields.length === 0) return [];
    return Object.values(study.document.cables)
      .filter((cable) => carriesAudio(study, cable))
      .flatMap((cable) =>
        shields
          .filter((wire) => wire.cable === cable.id)
          .flatMap((shield) => checkShield(study, cable, shield))
      );
  }
};

/** Kinds of cable whose shield is there for audio where nothing else is said. */
function carriesAudio(study: Study, cable: Cable): boolean {
  if (cable.signal !== undefined) return cable.signal === 'audio';
  if (cable.kind !== 'shielded pair' && cable.kind !== 'shielded wire') return false;
  const inside = study.index.wires.filter((wire) => wire.cable === cable.id);
  return inside.some((wire) => study.wires.get(wire.id)?.roles.has('audio') === true);
}

function checkShield(study: Study, cable: Cable, shield: Wire): Finding[] {
  const ends = [shield.from, shield.to];
  const grounded = ends.map((end) => isGrounded(study, shield, end));
  if (grounded.includes(null)) return [];
  const both = grounded.every((end) => end === true);
  const neither = grounded.every((end) => end === false);
  if (!both && !neither) return [];
  const labels = ends.map((end) => (end.at ? study.index.labelOf(end) : 'the open end'));
  return [
    {
      rule: 'shield-ground',
      severity: 'caution',
      at: [cablePlace(cable), wirePlace(study, shield)],
      message: both
        ? `The shield of ${cable.name} is grounded at both ends (${listed(labels)}): with the chassis it makes a loop that can pick up hum.`
        : `The shield of ${cable.name} is grounded at neither end (${listed(labels)}): it shields nothing, and stands at whatever it touches.`,
      source: commonPractice,
      fix: {
        words: both
          ? 'Lift the shield at one end, as a rule at the source, unless the service data says otherwise.'
          : 'Ground the shield at one end, where the signal goes to.'
      }
    }
  ];
}

/** Null where nobody has found the end; an end written down as cut back or open is not grounded. */
function isGrounded(study: Study, shield: Wire, end: WireEnd): boolean | null {
  const entry = study.index.findAt(end);
  if (!entry)
    return /\b(open|cut|nothing|not connected|free|lifted|insulated)\b/i.test(end.as ?? '')
      ? false
      : null;
  const point = study.pointOf.get(entry.key);
  if (point === undefined) return null;
  return findWireWay(study, point, study.chassisPoint, shield) !== null;
}
