// A wire of a kilovolt or more in one bundle with wire of a few hundred volts.
import { formatMm, formatVolts, roundSignificant } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';
import { lengthInput, plainInput } from '../amount-input.ts';
import { findNeighbours, gapAt, placesWords, type Neighbours } from '../bundle-neighbours.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { highVoltageV } from '../shortfall.ts';
import { carriesWords, commonPractice, wiresAsSubject, wiresInWords } from '../words.ts';
import { manyKilovoltsV } from './hv-near.ts';

export const mixedBundle: Rule = {
  id: 'mixed-bundle',
  severity: 'caution',
  title: 'Pulses and boosted rails bundled with ordinary wire',
  source: commonPractice,
  explain:
    'Yoke leads, plate leads of the sweep and boosted rails from 1 kV to 5 kV are kept out of the bundles of ordinary wire: their pulses couple into everything beside them, and both insulations share the volts. Looked at are the wires that share a support or a stretch with one, stand at less than half of its volts and are not rated for them; conductors of one cable are left out. It passes when they take different ways, or when the neighbours are rated for it as well. From 5 kV on it is a danger of hv-near.',
  ...inPieces(
    eachWire((study, wire) => {
      const near = findNeighbours(study, wire, highVoltageV, manyKilovoltsV);
      return near ? [findingOf(study, near)] : [];
    })
  )
};

function findingOf(study: Study, { wire, about, volts, weaker, bundles }: Neighbours): Finding {
  const { adviceMm, adviceFrom } = gapAt(volts);
  return {
    rule: 'mixed-bundle',
    severity: 'caution',
    at: [wirePlace(study, wire), ...weaker.map((other) => wirePlace(study, other))],
    message: `${wiresAsSubject(study, [wire])} carries ${carriesWords(about)} and is bundled with ${wiresInWords(study, weaker)} ${placesWords(study, bundles)}.`,
    source: commonPractice,
    fix: { words: 'Dress it by itself, and cross other wires at a right angle.' },
    why: {
      sum: 'air-gap',
      inputs: [
        plainInput('Peak', formatVolts(roundSignificant(volts, 4)), about.stress?.basis ?? ''),
        lengthInput('Gap between bare metal', roundSignificant(adviceMm, 2), adviceFrom)
      ],
      outcome: `Its neighbours stand at less than half of that and are rated below ${formatVolts(roundSignificant(volts * study.policy.marginRequired, 4))}; ${formatMm(roundSignificant(adviceMm, 2))} is advised between bare metal.`,
      passes: 'when they share no support and no stretch, or are rated for it.'
    }
  };
}
