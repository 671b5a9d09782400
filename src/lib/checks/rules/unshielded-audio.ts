// A long bare lead of low-level audio: it picks up hum.
import type { Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { formatMm } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject } from '../words.ts';

export const unshieldedAudio: Rule = {
  id: 'unshielded-audio',
  severity: 'note',
  title: 'Long leads of low-level audio without a shield',
  source: commonPractice,
  explain:
    'Looks at leads of low-level audio (volume control, phono, tape, tone, audio grids) of 150 mm and more that are in no shielded cable. It is a note: the makers left many as they are. Loudspeaker and output leads are left out, and so are IF, video and radio-frequency leads, which a shield would detune. It passes with a shielded lead, a shorter one, or a dress note.',
  check: (study) => study.index.wires.flatMap((wire) => checkWire(study, wire))
};

const longFromMm = 150;
/** More than that is no longer low level. */
const lowLevelV = 3;

const lowLevelWords =
  /\b(?:volume|phono|pick-?up|tape|tone|microphone|audio (?:grid|in(?:put)?|amp|signal|to|from)|detected audio)\b/i;
const notLowLevel =
  /\b(?:speaker|voice coil|output|i\.?f|video|r\.?f|b\s?\+|b\s?-|heater|shield|return|ground)(?![a-z])/i;

function checkWire(study: Study, wire: Wire): Finding[] {
  const words = wire.function ?? '';
  if (!lowLevelWords.test(words) || notLowLevel.test(words) || isShielded(study, wire)) return [];
  const about = study.wires.get(wire.id);
  const mm = about?.length?.mm ?? 0;
  if (mm < longFromMm || (about?.carries.acV?.value ?? 0) > lowLevelV) return [];
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

function isShielded(study: Study, wire: Wire): boolean {
  if (wire.construction === 'coax' || wire.construction === 'shield') return true;
  const cable =
    wire.cable === undefined ? undefined : findElement(study.document.cables, wire.cable);
  return cable !== undefined && cable.kind !== 'twin lead' && cable.kind !== 'multi-conductor';
}
