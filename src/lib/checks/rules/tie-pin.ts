// A tube pin that is joined to something inside, used as if it were free.
import { formatPinFunction } from '#handbook/pin-functions.ts';
import { findTubeType } from '#handbook/tube-types.ts';
import { memoryWords } from '#handbook/source.ts';
import type { Study, TerminalEntry } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachTerminal, inPieces } from '../pieces.ts';
import { terminalPlace } from '../places.ts';

const source = 'tube data, by the handbook of this program';

export const tiePin: Rule = {
  id: 'tie-pin',
  severity: 'caution',
  title: 'Pins with an internal connection used as tie points',
  source,
  explain:
    'Empty pins of a socket are handy tie points, but a pin marked IC is joined to an electrode inside the tube, and the tube of another maker may join it elsewhere. A wire or a lead on such a pin is a caution; a note where the handbook has the pins from memory. Gas regulators, whose internal jumper is meant to be used, pins without any connection, and pins of which the handbook says nothing, are left out. It passes when the wire or lead goes to another point.',
  ...inPieces(eachTerminal(checkPin))
};

function checkPin(study: Study, entry: TerminalEntry): Finding[] {
  const { part, terminal } = entry;
  if (part.kind !== 'tube' || part.type === undefined || !isUsed(study, entry)) return [];
  const type = findTubeType(part.type);
  const pin = type?.pinFunctions.find((row) => row.pin === terminal.name);
  // In gas regulators those pins are a jumper that sets do use, to break the supply with the tube out.
  if (!type?.heater || pin?.role !== 'internal connection') return [];
  const fromMemory = type.pins !== 'verified';
  const place = terminalPlace(study, entry);
  return [
    {
      rule: 'tie-pin',
      severity: fromMemory ? 'note' : 'caution',
      at: [place],
      message: `Something is tied to ${place.label}, but that pin of the ${type.name} has an ${formatPinFunction(pin)}${fromMemory ? ` (${memoryWords})` : ''}.`,
      source,
      fix: { words: 'Move it to a lug of a strip, unless the service data shows it on that pin.' }
    }
  ];
}

function isUsed(study: Study, { key }: TerminalEntry): boolean {
  if ((study.index.wiresAt.get(key)?.length ?? 0) > 0) return true;
  return study.index.leadsOn.has(key);
}
