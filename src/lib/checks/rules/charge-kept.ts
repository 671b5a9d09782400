// Capacitors that nothing discharges.
import type { Part } from '#document/index.ts';
import { discharge, storedOn, touchLimit } from '#physics/discharge.ts';
import {
  formatFarads,
  formatNumber,
  formatOhms,
  formatSeconds,
  formatVolts,
  roundSignificant
} from '#quantity/index.ts';
import type { PlacedElement, Study } from '#study/index.ts';
import { plainInput } from '../amount-input.ts';
import { bleedOhms, chargedTo } from '../discharge-paths.ts';
import type { Finding, Rule } from '../finding.ts';
import { inPieces, wholeChassis } from '../pieces.ts';
import { partPlace } from '../places.ts';
import { capitalised, listed } from '../words.ts';

const source =
  'discharge of a capacitor through a resistor; IEC 60335-1 clause 8.1.4 as quoted for what may be touched';

export const chargeKept: Rule = {
  id: 'charge-kept',
  severity: 'caution',
  title: 'Capacitors that nothing discharges',
  source,
  explain:
    'Once a set is off its tubes cool and draw nothing, so only resistors discharge its capacitors. Looked at is each capacitor that holds more than may be touched, at the higher of its playing and its cold voltage: where no known resistor or winding leads from one side to the other, or where they take more than five minutes down to 60 V, assume that it is charged. The second anode of a picture tube, with its glass as a capacitor, is looked at as well. Heaters do not count, and neither do tubes, switches that are open, or resistors whose value nobody wrote down; and a bleeder counts only if it is good. It passes with a bleeder. Whatever a screen says: discharge it, leave the clip on, measure.',
  ...inPieces(
    wholeChassis(
      (study) => [
        ...byPart(study.elements.flatMap((element) => checkCapacitor(study, element) ?? [])).map(
          findingOf
        ),
        ...study.index.parts.flatMap((part) => checkPictureTube(study, part))
      ],
      ({ elements, index, nets, netOf }) => [elements, index.parts, nets, netOf]
    )
  )
};

/** Published limits of what may be touched begin at 60 V dc. */
const touchV = 60;
const longS = 300;

interface Kept {
  readonly element: PlacedElement;
  readonly farads: number;
  readonly volts: number;
  /** Known resistors from one side to the other; null where there are none. */
  readonly ohms: number | null;
  readonly seconds: number | null;
}

function checkCapacitor(study: Study, element: PlacedElement): Kept | null {
  const { values, from, to } = element;
  if (values.kind !== 'capacitor' || !(values.farads > 0) || from === to) return null;
  const { farads } = values;
  const volts = chargedTo(study, element);
  if (volts === null || volts <= touchV || !touchLimit(farads, volts).isOver) return null;
  const ohms = bleedOhms(study, from.id, to.id);
  if (ohms === null) return { element, farads, volts, ohms, seconds: null };
  const resistanceOhm = Math.min(Math.max(ohms, 1e-3), 1e12);
  const seconds = discharge({
    capacitanceF: farads,
    resistanceOhm,
    fromV: volts,
    toV: touchV
  }).timeS;
  return seconds > longS ? { element, farads, volts, ohms, seconds } : null;
}

function byPart(all: readonly Kept[]): readonly (readonly Kept[])[] {
  const groups = new Map<Part, Kept[]>();
  for (const kept of all) {
    const known = groups.get(kept.element.part);
    if (known) known.push(kept);
    else groups.set(kept.element.part, [kept]);
  }
  return [...groups.values()];
}

function findingOf(all: readonly Kept[]): Finding {
  const [first] = all as readonly [Kept, ...Kept[]];
  const { part } = first.element;
  const what = all.map(
    ({ farads, volts }) =>
      `${formatFarads(farads)} up to ${formatVolts(roundSignificant(volts, 3))} (${formatNumber(storedOn(farads, volts).energyJ, 2)} J)`
  );
  const slowest = all.reduce((a, b) => ((b.seconds ?? Infinity) > (a.seconds ?? Infinity) ? b : a));
  const how =
    slowest.seconds === null
      ? 'no known resistor discharges it. Assume that it is charged.'
      : `known resistors (${formatOhms(roundSignificant(slowest.ohms ?? 0, 3))}) take ${formatSeconds(roundSignificant(slowest.seconds, 2))} down to ${formatVolts(touchV)}, if they are good.`;
  return {
    rule: 'charge-kept',
    severity: 'caution',
    at: [partPlace(part)],
    message: `${capitalised(part.reference || part.kind)} holds ${listed(what)}: ${how}`,
    source,
    fix: {
      words:
        'Discharge it through a resistor with the clip left on, measure, and think of a bleeder.'
    },
    why: {
      sum: 'discharge',
      inputs: all.flatMap(({ farads, volts, ohms }) => [
        plainInput('Capacitance', formatFarads(farads), 'as entered'),
        plainInput(
          'From',
          formatVolts(roundSignificant(volts, 4)),
          'the higher of playing and cold'
        ),
        plainInput(
          'Through',
          ohms === null ? 'nothing known' : formatOhms(roundSignificant(ohms, 4)),
          'resistors and windings between its two nets'
        )
      ]),
      outcome: `What may be touched: ${all.map(({ farads, volts }) => touchLimit(farads, volts).words).join('; ')}.`,
      passes: 'with a known resistor across it that takes it to 60 V within five minutes.'
    }
  };
}

const leastAnodeV = 1000;

function checkPictureTube(study: Study, part: Part): Finding[] {
  if (part.kind !== 'picture tube') return [];
  return (study.index.entriesOf.get(part) ?? []).flatMap(({ key, terminal }): Finding[] => {
    const net = study.nets.get(study.netOf.get(key) ?? '');
    const volts = Math.abs(net?.dcV?.value ?? 0);
    if (!/anode|ultor/i.test(terminal.name) || !net || volts < leastAnodeV) return [];
    const chassis = [...study.nets.values()].find(({ isChassis }) => isChassis);
    if (chassis && bleedOhms(study, net.id, chassis.id) !== null) return [];
    return [
      {
        rule: 'charge-kept',
        severity: 'caution',
        at: [partPlace(part)],
        message: `The second anode of ${part.reference} stands at ${formatVolts(volts)}, its glass is a capacitor, and no known resistor discharges it. Assume that it is charged, days after the set was last on.`,
        source,
        fix: {
          words:
            'Discharge it to its outer coating through a resistor before anything near it is touched, and once more after a while: the glass gives back.'
        }
      }
    ];
  });
}
