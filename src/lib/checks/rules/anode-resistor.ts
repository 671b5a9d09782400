// The resistor in the second-anode lead: what it costs, and what it must stand when the anode arcs.
import { anodeResistor } from '#physics/anode-resistor.ts';
import { SumError } from '#physics/sum-error.ts';
import {
  formatAmps,
  formatOhms,
  formatVolts,
  formatWatts,
  roundSignificant
} from '#quantity/index.ts';
import type { PlacedElement, Study } from '#study/index.ts';
import { plainInput, voltsInput } from '../amount-input.ts';
import type { Finding, Rule } from '../finding.ts';
import { inPieces, wholeChassis } from '../pieces.ts';
import { partPlace } from '../places.ts';

const source = "Ohm's law; the supply taken as stiff, so that the fault figures are upper bounds";

export const anodeResistorRule: Rule = {
  id: 'anode-resistor',
  severity: 'note',
  title: 'Resistors in a second-anode lead',
  source,
  explain:
    'A resistor of which both sides stand at 5 kV and more lies in the second-anode lead and limits what an arc in the picture tube can draw. The note gives its drop at the current that is known and what it takes while the anode is shorted to ground: then the whole supply stands across it, far more than a single resistor of its size is made for, which is why several in series are used. It is a note and no more: there is nothing to put right, and so nothing that makes it pass.',
  ...inPieces(
    wholeChassis(
      (study) => study.elements.flatMap((element) => checkElement(study, element)),
      ({ elements, nets, network }) => [elements, nets, network]
    )
  )
};

const leastV = 5000;

function checkElement(study: Study, element: PlacedElement): Finding[] {
  const { values, part, from, to } = element;
  if (values.kind !== 'resistor' || part.kind !== 'resistor' || !(values.ohms > 0)) return [];
  const [a, b] = [study.nets.get(from.id)?.dcV, study.nets.get(to.id)?.dcV];
  if (!a || !b || Math.min(Math.abs(a.value), Math.abs(b.value)) < leastV) return [];
  const supply = Math.abs(a.value) >= Math.abs(b.value) ? a : b;
  const beamA = study.network.stateOf(element).amps ?? 0;
  const found = reckon(Math.abs(supply.value), values.ohms, beamA);
  if (!found) return [];
  const drop =
    beamA > 0
      ? `drops ${formatVolts(roundSignificant(found.dropV, 3))} at ${formatAmps(roundSignificant(beamA, 3))}, and `
      : '';
  const rated =
    values.watts === undefined ? '' : ` Its ${formatWatts(values.watts)} are for normal use.`;
  return [
    {
      rule: 'anode-resistor',
      severity: 'note',
      at: [partPlace(part)],
      message: `${part.reference} (${formatOhms(values.ohms)}) ${drop}has all ${formatVolts(Math.abs(supply.value))} across it while the anode is shorted: up to ${formatAmps(roundSignificant(found.faultAmps, 2))} and ${formatWatts(roundSignificant(found.faultW, 2))}.${rated} Use resistors made for such volts, several in series, without points.`,
      source,
      why: {
        sum: 'anode-resistor',
        inputs: [
          voltsInput('Supply', supply),
          plainInput('Resistance', formatOhms(values.ohms), 'as entered'),
          plainInput(
            'Beam',
            beamA > 0 ? formatAmps(roundSignificant(beamA, 3)) : 'not known',
            'the network'
          )
        ],
        outcome: `Drop I R, fault current V / R, fault power V x V / R.`,
        passes: 'never: it is there to be known.'
      }
    }
  ];
}

function reckon(supplyV: number, resistanceOhm: number, beamA: number) {
  try {
    return anodeResistor({ supplyV, resistanceOhm, beamA });
  } catch (problem) {
    // Figures beyond what the sum takes are the affair of other rules.
    if (problem instanceof SumError) return null;
    throw problem;
  }
}
