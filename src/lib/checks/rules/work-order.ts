// Work that is done in an order that will have to be undone.
import type { Support, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import type { Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachWire, inPieces, wholeChassis } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject, wiresInWords } from '../words.ts';

export const workOrder: Rule = {
  id: 'work-order',
  severity: 'caution',
  title: 'Steps out of order',
  source: commonPractice,
  explain:
    'A wire that was taken out although it has no number on its tag, or although nobody has said what comes in its place, is a caution: soon nobody will know. New wire that lies in a clamp or tie together with old wire that is still to be replaced is a note, one for each support: the bundle would have to be opened again, so do all of it before it is closed. It passes once the wire is numbered and planned, and the bundle is done.',
  ...inPieces(
    eachWire(checkRemoved),
    wholeChassis((study) =>
      Object.values(study.document.supports).flatMap((support) => checkSupport(study, support))
    )
  )
};

function checkRemoved(study: Study, wire: Wire): Finding[] {
  if (wire.state !== 'removed') return [];
  const missing = [
    wire.number.trim() === '' ? 'it bore no number' : '',
    wire.planned.way === undefined ? 'nothing is planned in its place' : ''
  ].filter((text) => text !== '');
  if (missing.length === 0) return [];
  return [
    {
      rule: 'work-order',
      severity: 'caution',
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} was taken out, but ${missing.join(' and ')}.`,
      source: commonPractice,
      fix: { words: 'Tag both places that it came off, and plan what goes there.' }
    }
  ];
}

const isNew = ({ state, planned }: Wire): boolean =>
  (state === 'fitted' || state === 'checked') && planned.way === 'new wire';

const isToCome = ({ state, planned }: Wire): boolean =>
  planned.way === 'new wire' && (state === 'found' || state === 'tagged' || state === 'removed');

function checkSupport(study: Study, { id, kind, name }: Support): Finding[] {
  if (kind !== 'clamp' && kind !== 'tie') return [];
  const bundle = study.bundles.find(({ support }) => support === id);
  if (!bundle) return [];
  const wires = bundle.wires
    .map((wire) => findElement(study.document.wires, wire))
    .filter((wire) => wire !== undefined);
  const [fitted, pending] = [wires.filter(isNew), wires.filter(isToCome)];
  if (fitted.length === 0 || pending.length === 0) return [];
  return [
    {
      rule: 'work-order',
      severity: 'note',
      at: [...pending, ...fitted].map((wire) => wirePlace(study, wire)),
      message: `At the ${kind} ${name} ${wiresInWords(study, fitted)} ${fitted.length === 1 ? 'is' : 'are'} new, but ${wiresInWords(study, pending)} ${pending.length === 1 ? 'is' : 'are'} still to be replaced: do ${pending.length === 1 ? 'it' : 'them'} before the bundle is closed.`,
      source: commonPractice,
      fix: { words: 'Leave the support open until all of its wires are in.' }
    }
  ];
}
