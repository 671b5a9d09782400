// Heaters that get too little or too much along their trunk.
import { findElement } from '#document/references.ts';
import { formatNumber, formatVolts, roundSignificant } from '#quantity/index.ts';
import { terminalKey, type ElementState, type PlacedElement, type Study } from '#study/index.ts';
import { plainInput } from '../amount-input.ts';
import { elementNames, elementPlaces } from '../element-places.ts';
import type { Finding, Rule, Severity } from '../finding.ts';
import { heaterBasis } from '../heater-basis.ts';
import { findHeaterStrings } from '../heater-strings.ts';
import { wireLabel } from '../places.ts';
import { capitalised, listed } from '../words.ts';

const source =
  "Ohm's law on ASTM B258 sizes; heater volts by the tube handbook, limits by the policy of the document";

export const heaterDrop: Rule = {
  id: 'heater-drop',
  severity: 'fault',
  title: 'Heaters with too few or too many volts',
  source,
  explain:
    'Each heater is a resistance of its rated volts over its rated amperes; the trunk that feeds it and the way back have that of their gauge and length at the ambient of the policy. Where the volts across a heater lie outside of the limits of the policy it is a caution, beyond twice the limit a fault. Wires of which gauge or length are not known count as no resistance, so that the real volts are lower still. Heaters in series are judged by heater-string. Those that no source or declared voltage feeds are left out. One finding for all heaters on the same trunk. It passes with a thicker or shorter trunk, a better return, or another winding.',
  check: (study) => {
    const inStrings = new Set(findHeaterStrings(study).flatMap(({ heaters }) => heaters));
    const byTrunk = new Map<string, Heated[]>();
    for (const element of study.elements) {
      if (inStrings.has(element)) continue;
      const heated = findHeated(study, element);
      if (!heated) continue;
      const key = `${element.from.id} ${element.to.id} ${heated.share > 0}`;
      byTrunk.set(key, [...(byTrunk.get(key) ?? []), heated]);
    }
    return [...byTrunk.values()].flatMap((all) => checkTrunk(study, all));
  }
};

interface Heated {
  readonly element: PlacedElement;
  readonly state: ElementState;
  readonly volts: number;
  readonly ratedV: number;
  /** How far from its rating, as a share of it. */
  readonly share: number;
}

/** A heater that is fed; null for other elements, and where a few millivolts of ground drop are all. */
function findHeated(study: Study, element: PlacedElement): Heated | null {
  const { values } = element;
  if (values.kind !== 'heater' || !(values.volts > 0)) return null;
  const state = study.network.stateOf(element);
  const { volts } = state;
  if (volts === null || volts < 0.3 * values.volts) return null;
  const share = roundSignificant(volts / values.volts - 1);
  return { element, state, volts, ratedV: values.volts, share };
}

function checkTrunk(study: Study, all: readonly Heated[]): Finding[] {
  const { heaterLow, heaterHigh } = study.policy;
  const wrong = all.filter(
    ({ share, state }) => share < heaterLow || (share > heaterHigh && state.doubt === null)
  );
  const [first] = wrong;
  if (!first) return [];
  const worst = wrong.reduce((a, b) => (Math.abs(b.share) > Math.abs(a.share) ? b : a), first);
  const isLow = worst.share < 0;
  const limit = isLow ? heaterLow : heaterHigh;
  const severity: Severity = Math.abs(worst.share) > 2 * Math.abs(limit) ? 'fault' : 'caution';
  const elements = wrong.map(({ element }) => element);
  const lost = isLow ? lostWords(study, worst) : '';
  const others =
    elementPlaces(elements).length === 1
      ? ''
      : `${capitalised(elementNames(elements))} lie outside of the limit; at worst `;
  const name = worst.element.part.reference || worst.element.part.kind;
  const said = `the heater of ${name} gets ${formatVolts(worst.volts)} of its ${formatVolts(worst.ratedV)} (${percent(worst.share)}); the limit is ${percent(limit)}.${lost}`;
  return [
    {
      rule: 'heater-drop',
      severity,
      at: elementPlaces(elements),
      message: others === '' ? capitalised(said) : `${others}${said}`,
      source,
      fix: {
        words: isLow
          ? 'Run the trunk in thicker wire, or the return, and look at the joints.'
          : 'Measure the line and the winding; a dropping resistor may be called for.'
      },
      why: {
        sum: 'voltage-drop',
        inputs: wrong.map(({ element, volts, ratedV, share }) =>
          plainInput(
            element.part.reference || element.part.kind,
            `${formatVolts(volts)} of ${formatVolts(ratedV)}, ${percent(share)}`,
            heaterBasis(element)
          )
        ),
        outcome: `Limits of the policy: ${percent(heaterLow)} to ${percent(heaterHigh)}.`,
        passes: 'when the volts across each heater lie within the limits.'
      }
    }
  ];
}

const percent = (share: number): string =>
  `${share > 0 ? '+' : ''}${formatNumber(share * 100, 2)} %`;

/** The wires that lose most on the way there and back. */
function lostWords(study: Study, { element, ratedV }: Heated): string {
  const losses = [element.from, element.to].flatMap((net) =>
    net.wires.flatMap((id) => {
      const wire = findElement(study.document.wires, id);
      if (!wire?.from.at || !wire.to.at) return [];
      const [a, b] = [wire.from.at, wire.to.at].map(
        ({ part, terminal }) => study.network.voltsAt(terminalKey(part, terminal)).acV
      );
      if (a == null || b == null) return [];
      return [{ wire, volts: Math.abs(a - b) }];
    })
  );
  const most = losses
    .filter(({ volts }) => volts > 0.003 * ratedV)
    .sort((a, b) => b.volts - a.volts)
    .slice(0, 3);
  if (most.length === 0) return '';
  return ` Most is lost in ${listed(most.map(({ wire, volts }) => `${wireLabel(study, wire)} (${formatVolts(roundSignificant(volts, 2))})`))}.`;
}
