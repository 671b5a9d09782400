// What somebody declared, and what the circuit comes to, are more than a tenth apart.
import type { Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { formatAmps, formatVolts } from '#quantity/index.ts';
import type { Study, VoltsDisagreement } from '#study/index.ts';
import { ampsInput, plainInput, voltsInput } from '../amount-input.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachWire, inPieces, wholeChassis } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { capitalised, wiresAsSubject } from '../words.ts';

const source = "Ohm's and Kirchhoff's laws";

export const solvedDisagrees: Rule = {
  id: 'solved-disagrees',
  severity: 'caution',
  title: 'Declared figures that the circuit does not come to',
  source,
  explain:
    'The whole chassis is reckoned as a network: sources, resistors, windings, heaters, what tubes draw, and wires by their gauge and length. Where the volts that it gives are more than a tenth (and a volt) from what was declared, the declared figure wins and this rule says so: a caution where every part of that circuit is described, a note where something on it is not and the supply is high enough to give what was declared. A wire of which the circuit asks for more than a tenth above the declared current is a caution: signals come on top of what is reckoned. It passes when the declared figure, a value or a current is put right.',
  ...inPieces(
    wholeChassis(
      (study) => study.network.disagreements.flatMap((each) => checkVolts(study, each)),
      (study) => [
        study.network,
        study.nets,
        ...study.network.disagreements.flatMap((each) => wiresThere(study, each))
      ]
    ),
    eachWire(checkAmps)
  )
};

const wiresThere = ({ document, nets }: Study, { net }: VoltsDisagreement): readonly Wire[] =>
  (nets.get(net)?.wires ?? [])
    .map((id) => findElement(document.wires, id))
    .filter((wire) => wire !== undefined);

function checkVolts(study: Study, disagreement: VoltsDisagreement): Finding[] {
  const { declared, solvedV, fedBy, highestV, open } = disagreement;
  // Without the supply that could give it, the circuit is simply not all there yet.
  if (open !== '' && highestV < 0.9 * Math.abs(declared.value)) return [];
  const net = study.nets.get(disagreement.net);
  const wires = wiresThere(study, disagreement).filter(
    ({ carries }) => carries.dcV === declared.value
  );
  const [first] = wires;
  if (!net || !first) return [];
  const left = open === '' ? '' : ` What ${open} does there is not described.`;
  return [
    {
      rule: 'solved-disagrees',
      severity: open === '' ? 'caution' : 'note',
      at: wires.map((wire) => wirePlace(study, wire)),
      message: `${capitalised(net.name)} is ${declared.basis} at ${formatVolts(declared.value)} dc, but the circuit from ${fedBy} comes to ${formatVolts(solvedV)} there. The declared figure is taken.${left}`,
      source,
      fix: { words: 'Measure it, or look for a wrong value, current or end on the way.' },
      why: {
        sum: null,
        inputs: [
          voltsInput('Declared', declared),
          plainInput('Reckoned', formatVolts(solvedV), `through the circuit from ${fedBy}`)
        ],
        outcome: `They are ${formatVolts(Math.abs(declared.value - solvedV))} apart; a tenth of the larger is allowed.`,
        passes: 'when the two are within a tenth of each other.'
      }
    }
  ];
}

/** Less than that does not matter to a wire, A. */
const leastA = 0.005;

function checkAmps(study: Study, wire: Wire): Finding[] {
  const declared = wire.carries.amps;
  const about = study.wires.get(wire.id);
  const current = about?.current;
  if (declared === undefined || !current || !about.carries.amps) return [];
  if (current.amps <= 1.1 * declared + leastA) return [];
  return [
    {
      rule: 'solved-disagrees',
      severity: 'caution',
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} is declared at ${formatAmps(declared)}, but the circuit draws ${formatAmps(current.amps)} through it.`,
      source,
      fix: { words: 'Put the current right: the gauge is judged by it.' },
      why: {
        sum: null,
        inputs: [
          ampsInput('Declared', about.carries.amps),
          plainInput('Reckoned', formatAmps(current.amps), current.basis)
        ],
        outcome: `${formatAmps(current.amps)} is more than a tenth above ${formatAmps(declared)}.`,
        passes: 'when the declared current is not below what is reckoned by more than a tenth.'
      }
    }
  ];
}
