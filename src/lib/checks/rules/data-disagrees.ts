// What was found is not what the published data says: a repair, a production change, or a slip.
import type { Found, Planned, Wire } from '#document/index.ts';
import { parseColour } from '#handbook/colours.ts';
import { formatAwg, formatVolts } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { listed, wiresAsSubject } from '../words.ts';

const source = 'the service data that was entered for the wire';

export const dataDisagrees: Rule = {
  id: 'data-disagrees',
  severity: 'caution',
  title: 'Wires that differ from the service data',
  source,
  explain:
    'Holds colour, tracer, gauge, style and rating as found against those of the service data, where both were entered. A thinner wire (two gauges or more) or a lower rating than published is a caution, and so is any difference on a wire that is known as an earlier repair or a modification; other differences are a note, since sets were changed while they were made. It passes when what was found is put right, or the data.',
  ...inPieces(eachWire(checkWire))
};

function checkWire(study: Study, wire: Wire): Finding[] {
  const { found, serviceData } = wire;
  if (!serviceData) return [];
  const differences = listDifferences(found, serviceData);
  if (differences.length === 0) return [];
  const wasMeddledWith = wire.origin === 'earlier repair' || wire.origin === 'modification';
  const worse =
    wasMeddledWith ||
    (found.awg ?? 0) - (serviceData.awg ?? Infinity) >= 2 ||
    (found.ratingV ?? Infinity) < (serviceData.ratingV ?? 0);
  const origin = wasMeddledWith
    ? ` It is ${wire.origin === 'modification' ? 'a modification' : 'an earlier repair'}.`
    : '';
  return [
    {
      rule: 'data-disagrees',
      severity: worse ? 'caution' : 'note',
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} was found as ${listed(differences.map(([was]) => was))}; the service data says ${listed(differences.map(([, says]) => says))}.${origin}`,
      source,
      fix: { words: 'Decide which is right before it is replaced.' }
    }
  ];
}

/** Pairs of what was found and what the data says, in words. */
function listDifferences(found: Found, data: Planned): readonly (readonly [string, string])[] {
  const differences: (readonly [string, string])[] = [];
  if (found.colour !== undefined && data.colour !== undefined) {
    const was = colourWords(found.colour, found.tracer);
    const says = colourWords(data.colour, data.tracer);
    if (was !== says) differences.push([was, says]);
  }
  if (found.awg !== undefined && data.awg !== undefined && found.awg !== data.awg) {
    differences.push([formatAwg(found.awg), formatAwg(data.awg)]);
  }
  if (found.ratingV !== undefined && data.ratingV !== undefined && found.ratingV !== data.ratingV) {
    differences.push([formatVolts(found.ratingV), formatVolts(data.ratingV)]);
  }
  if (found.style !== undefined && data.style !== undefined && found.style !== data.style) {
    differences.push([found.style, data.style]);
  }
  return differences;
}

/** "20 AWG and red": what the service data says otherwise than was found; null where they agree, or one of
 *  the two is not written down. */
export function serviceDataWords({ found, serviceData }: Wire): string | null {
  const differences = serviceData ? listDifferences(found, serviceData) : [];
  return differences.length === 0 ? null : listed(differences.map(([, says]) => says));
}

/** "red/yellow", the same however it was spelt. */
function colourWords(colour: string, tracer: string | undefined): string {
  const base = parseColour(colour);
  const stripe =
    base?.tracer ?? (tracer === undefined ? null : (parseColour(tracer)?.colour ?? tracer));
  const name = base?.colour ?? colour.trim().toLowerCase();
  return stripe === null || stripe === '' ? name : `${name}/${stripe}`;
}
