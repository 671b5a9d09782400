// A series string of heaters: whether its tubes belong together, what it asks for against what it gets,
// and whether its dropper stands the heat.
import {
  formatAmps,
  formatNumber,
  formatVolts,
  formatWatts,
  roundSignificant
} from '#quantity/index.ts';
import type { PlacedElement, Study } from '#study/index.ts';
import { plainInput } from '../amount-input.ts';
import { elementNames, elementPlaces } from '../element-places.ts';
import type { Finding, Rule } from '../finding.ts';
import { heaterBasis } from '../heater-basis.ts';
import { inPieces, wholeChassis } from '../pieces.ts';
import { findHeaterStrings, type HeaterString, type StringLink } from '../heater-strings.ts';
import { capitalised } from '../words.ts';

const source =
  "Ohm's law; heater ratings by the tube handbook, limits by the policy of the document";

export const heaterString: Rule = {
  id: 'heater-string',
  severity: 'fault',
  title: 'Series strings that do not add up',
  source,
  explain:
    'Heaters in series share one current, so all of them have to be made for it: ratings more than a twentieth apart are a fault, save where a shunt lies across one. The volts of all heaters and droppers at that current have to come to what feeds the string; where a heater gets less or more than the limits of the policy allow it is a caution, beyond twice the limit a fault. A dropper that turns more into heat than it is rated for is a fault. It passes with the right tubes, a dropper of the right ohms and watts, or the right supply.',
  ...inPieces(
    wholeChassis(
      (study) =>
        findHeaterStrings(study).flatMap((string) => [
          ...checkCurrents(string),
          ...checkVolts(study, string),
          ...droppersOf(string).flatMap((element) => checkDropper(study, element))
        ]),
      ({ elements, nets, network, policy }) => [elements, nets, network, policy]
    )
  )
};

const droppersOf = ({ links }: HeaterString): readonly PlacedElement[] =>
  links.flatMap(({ heaters, resistors }) => (heaters.length === 0 ? resistors : []));

const ratingOf = ({ values }: PlacedElement): { volts: number; amps: number } =>
  values.kind === 'heater' ? values : { volts: 0, amps: 0 };

/** Amperes that a link with heaters is made for. */
const ampsOf = ({ heaters }: StringLink): number =>
  heaters.reduce((sum, heater) => sum + ratingOf(heater).amps, 0);

/** Links of heaters that no shunt helps out. */
const plainLinks = ({ links }: HeaterString): readonly StringLink[] =>
  links.filter(({ heaters, resistors }) => heaters.length > 0 && resistors.length === 0);

function checkCurrents(string: HeaterString): Finding[] {
  const links = plainLinks(string);
  const amps = links.map(ampsOf);
  const [least, most] = [Math.min(...amps), Math.max(...amps)];
  if (links.length === 0 || most <= 1.05 * least) return [];
  const high = links.filter((link) => ampsOf(link) > 1.05 * least);
  const isHighOdd = high.length <= links.length / 2;
  const odd = isHighOdd ? high : links.filter((link) => !high.includes(link));
  const heaters = odd.flatMap((link) => link.heaters);
  const [own, others] = isHighOdd ? [most, least] : [least, most];
  const verb = elementPlaces(heaters).length === 1 ? 'is' : 'are';
  return [
    {
      rule: 'heater-string',
      severity: 'fault',
      at: elementPlaces(heaters),
      message: `${capitalised(elementNames(heaters))} ${verb} made for ${formatAmps(own)}, but ${verb} in series with tubes of ${formatAmps(others)}: in a string all heaters carry the same current.`,
      source,
      fix: {
        words: 'Look for the wrong tube, or for the type with the heater current of the string.'
      }
    }
  ];
}

interface Share {
  readonly heater: PlacedElement;
  readonly volts: number;
  readonly share: number;
}

function checkVolts(study: Study, string: HeaterString): Finding[] {
  const { heaterLow, heaterHigh } = study.policy;
  const shares = plainLinks(string)
    .flatMap(({ heaters }) => heaters)
    .flatMap((heater): Share[] => {
      const rated = ratingOf(heater).volts;
      const { volts } = study.network.stateOf(heater);
      // Not fed as far as is recorded.
      if (volts === null || volts < 0.3 * rated) return [];
      return [{ heater, volts, share: roundSignificant(volts / rated - 1) }];
    });
  const [first, ...others] = shares.filter(({ share }) => share < heaterLow || share > heaterHigh);
  if (!first) return [];
  const worst = others.reduce((a, b) => (Math.abs(b.share) > Math.abs(a.share) ? b : a), first);
  const limit = worst.share < 0 ? heaterLow : heaterHigh;
  const name = worst.heater.part.reference || worst.heater.part.kind;
  const amps = ratingOf(worst.heater).amps;
  return [
    {
      rule: 'heater-string',
      severity: Math.abs(worst.share) > 2 * Math.abs(limit) ? 'fault' : 'caution',
      at: elementPlaces(string.heaters),
      message: `The string of ${elementNames(string.heaters)} asks for ${askedWords(string, amps)}; ${name} gets ${formatVolts(roundSignificant(worst.volts, 3))} of its ${formatVolts(ratingOf(worst.heater).volts)} (${percent(worst.share)}), and the limit is ${percent(limit)}.`,
      source,
      fix: {
        words:
          worst.share > 0
            ? 'A dropper is missing or too small, or a tube of fewer volts is in the wrong socket.'
            : 'Look for a tube of more volts, a dropper that has gone high, or too low a line.'
      },
      why: {
        sum: null,
        inputs: shares.map(({ heater, volts, share }) =>
          plainInput(
            heater.part.reference || heater.part.kind,
            `${formatVolts(volts)} of ${formatVolts(ratingOf(heater).volts)}, ${percent(share)}`,
            heaterBasis(heater)
          )
        ),
        outcome: `Limits of the policy: ${percent(heaterLow)} to ${percent(heaterHigh)}.`,
        passes: 'when each heater of the string gets its volts within the limits.'
      }
    }
  ];
}

const percent = (share: number): string =>
  `${share > 0 ? '+' : ''}${formatNumber(share * 100, 2)} %`;

/** "122.8 V at 150 mA, and 18.8 V for its droppers". */
function askedWords(string: HeaterString, amps: number): string {
  const asked = string.links.reduce((sum, { heaters: [heater] }) => {
    return sum + (heater ? ratingOf(heater).volts : 0);
  }, 0);
  const dropped = droppersOf(string).reduce(
    (sum, { values }) => sum + (values.kind === 'resistor' ? values.ohms * amps : 0),
    0
  );
  const words = `${formatVolts(roundSignificant(asked, 4))} at ${formatAmps(amps)}`;
  return dropped === 0
    ? words
    : `${words}, and ${formatVolts(roundSignificant(dropped, 3))} for what is in series with it`;
}

function checkDropper(study: Study, element: PlacedElement): Finding[] {
  const { values, part } = element;
  if (values.kind !== 'resistor' || !values.watts || !(values.ohms > 0)) return [];
  const { volts } = study.network.stateOf(element);
  if (volts === null) return [];
  const watts = (volts * volts) / values.ohms;
  if (roundSignificant(watts) <= roundSignificant(values.watts)) return [];
  return [
    {
      rule: 'heater-string',
      severity: 'fault',
      at: elementPlaces([element]),
      message: `${capitalised(part.reference || part.kind)} in the heater string turns ${formatWatts(roundSignificant(watts, 3))} into heat and is rated ${formatWatts(values.watts)}.`,
      source,
      fix: { words: 'Take a dropper of twice the watts that it turns into heat.' }
    }
  ];
}
