// A long bare lead of low-level audio: it picks up hum.
import type { Wire } from '#document/index.ts';
import { formatMm } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { isLowLevelAudio } from '../low-level.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject } from '../words.ts';

export const unshieldedAudio: Rule = {
  id: 'unshielded-audio',
  severity: 'note',
  title: 'Long leads of low-level audio without a shield',
  source: commonPractice,
  explain:
    'Looks at leads of low-level audio (volume control, phono, tape, tone, audio grids) of 150 mm and more that are in no shielded cable. It is a note: the makers left many as they are. Loudspeaker and output leads are left out, and so are IF, video and radio-frequency leads, which a shield would detune. It passes with a shielded lead, a shorter one, or a dress note.',
  ...inPieces(eachWire(checkWire))
};

const longFromMm = 150;
function checkWire(study: Study, wire: Wire): Finding[] {
  if (!isLowLevelAudio(study, wire)) return [];
  const mm = study.wires.get(wire.id)?.length?.mm ?? 0;
  if (mm < longFromMm) return [];
  if (wire.dress !== undefined && wire.dress !== '') return [];
  return [
    {
      rule: 'unshielded-audio',
      severity: 'note',
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} carries low-level audio over ${formatMm(Math.round(mm))} without a shield; from ${formatMm(longFromMm)} on it may pick up hum.`,
      source: commonPractice,
      fix: { words: 'Use shielded wire, grounded at one end, or write down how it is dressed.' }
    }
  ];
}
