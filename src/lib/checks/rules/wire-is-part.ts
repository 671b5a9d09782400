// A wire that is itself a part, planned as if hook-up wire could take its place.
import type { Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject } from '../words.ts';

export const wireIsPart: Rule = {
  id: 'wire-is-part',
  severity: 'fault',
  title: 'Wires that are parts, planned as hook-up wire',
  source: commonPractice,
  explain:
    'A resistance cord drops the line for the heaters, a fuse link has to melt, two twisted wires are a capacitor, and the turns of a filament loop make its volts: hook-up wire does none of that. Planning new wire for one is a fault; for a filament loop, which is wire of the right kilovolts in the right number of turns, a caution. It passes when it is to be kept, or when the part is planned in some other way.',
  ...inPieces(eachWire(checkWire))
};

const losses: Readonly<Record<string, string>> = {
  'resistance cord': 'hook-up wire would put the whole line on the heaters',
  'fuse link': 'hook-up wire would not melt',
  'twisted-wire capacitor': 'its two wires are a capacitance that the circuit is tuned with',
  'filament loop': 'its turns make the volts of the filament: keep their number, way and spacing'
};

function checkWire(study: Study, wire: Wire): Finding[] {
  const { isPart } = wire;
  if (
    isPart === undefined ||
    (wire.planned.way !== 'new wire' && wire.planned.way !== 'splice in')
  ) {
    return [];
  }
  const loss = losses[isPart] ?? 'what it does has to be done by what takes its place';
  const what = isPart === 'other' ? 'a part of its own' : `a ${isPart}`;
  const planned = wire.planned.way === 'new wire' ? 'new wire is planned' : 'a splice is planned';
  return [
    {
      rule: 'wire-is-part',
      severity: isPart === 'filament loop' || isPart === 'other' ? 'caution' : 'fault',
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} is ${what}, but ${planned} for it: ${loss}.`,
      source: commonPractice,
      fix: {
        words: 'Plan to keep it, and replace it with the same part where it has failed.',
        edit: {
          kind: 'change-wire',
          args: { id: wire.id, fields: { planned: { way: 'keep' } } }
        }
      }
    }
  ];
}
