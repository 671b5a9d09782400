// Many kilovolts in one bundle with ordinary wire.
import { formatMm, formatVolts, roundSignificant } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';
import { lengthInput, plainInput } from '../amount-input.ts';
import { findNeighbours, gapAt, placesWords, type Neighbours } from '../bundle-neighbours.ts';
import { cautionAtVolts } from '../cautions.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { carriesWords, wiresAsSubject, wiresInWords } from '../words.ts';

const source =
  'the largest of IEC 60664-1, the IEC 60950 reprint and 1 inch for each 10 kV: advice, never a pass';

/** Below this a wire of many volts in a bundle is a caution of mixed-bundle. */
export const manyKilovoltsV = 5000;

export const hvNear: Rule = {
  id: 'hv-near',
  severity: 'danger',
  title: 'Kilovolts beside ordinary wire',
  source,
  explain:
    'A lead of 5 kV and more is run on its own through the air: beside other wire its corona eats both insulations until they arc over. Looked at are the wires that share a support or a stretch with it, stand at less than half of its volts and are not rated for them. Each of them keeps its own class; what is asked for is distance. The gap is the largest of the published figures for bare metal, taken as advice: old insulation earns no credit. It passes when the two take different ways.',
  ...inPieces(
    eachWire((study, wire) => {
      const near = findNeighbours(study, wire, manyKilovoltsV, Infinity);
      return near ? [findingOf(study, near)] : [];
    })
  )
};

function findingOf(study: Study, { wire, about, volts, weaker, bundles }: Neighbours): Finding {
  const { adviceMm, adviceFrom } = gapAt(volts);
  const gap = formatMm(Math.ceil(adviceMm));
  return {
    rule: 'hv-near',
    severity: 'danger',
    at: [wirePlace(study, wire), ...weaker.map((other) => wirePlace(study, other))],
    message: `${wiresAsSubject(study, [wire])} carries ${carriesWords(about)} and runs beside ${wiresInWords(study, weaker)} ${placesWords(study, bundles)}. Keep them ${gap} apart at least.`,
    source,
    fix: {
      words: 'Give it a way of its own through free air, round, without points, away from metal.'
    },
    caution: cautionAtVolts(volts),
    why: {
      sum: 'air-gap',
      inputs: [
        plainInput('Peak', formatVolts(roundSignificant(volts, 4)), about.stress?.basis ?? ''),
        plainInput('Field', 'inhomogeneous', 'round wire near metal'),
        lengthInput('Gap', Math.ceil(adviceMm), adviceFrom)
      ],
      outcome: `Beside it ${weaker.length === 1 ? 'lies a wire that is' : `lie ${weaker.length} wires that are`} not rated for ${formatVolts(roundSignificant(volts, 4))}.`,
      passes: 'when they share no support and no stretch.'
    }
  };
}
