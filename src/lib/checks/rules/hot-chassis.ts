// A chassis that hangs on the power line, directly or through parts.
import type { PlacedElement, Study } from '#study/index.ts';
import { formatAmps, formatOhms, formatVolts, roundSignificant } from '#quantity/index.ts';
import { plainInput } from '../amount-input.ts';
import { cautionOf } from '../cautions.ts';
import { elementNames, elementPlaces } from '../element-places.ts';
import type { Finding, Rule } from '../finding.ts';
import {
  bodyOhms,
  findLeaks,
  findLineEntries,
  lineHertz,
  type Leak,
  type LineEntry
} from '../leak-paths.ts';
import { inPieces, wholeChassis } from '../pieces.ts';
import { partPlace } from '../places.ts';

const source =
  'leakage to ground through 1500 ohm, 0.5 mA at most, as service practice has it, and 3.5 mA as for grounded equipment: from memory, check against your local rules';

export const hotChassis: Rule = {
  id: 'hot-chassis',
  severity: 'danger',
  title: 'Chassis on the power line',
  source,
  explain:
    'Tried are both ways round of the plug, with all switches closed and with all open: one side of the line is live, the other at ground, and a person of 1500 ohm joins the chassis to ground. What flows then, through wires, resistors, heaters and capacitors, at high line and 60 cycles, is held against half a milliampere: above it is a caution, from 3.5 mA on, or where nothing lies between, a danger. Capacitors count as good as new; old ones leak. With the switch in the return lead the chassis stays live when the set is off. A set that is fed through its transformer alone is not found here, which does not say that it is safe: insulation fails. Nothing on a screen puts this right: use an isolation transformer, and measure the leakage. It passes when no path leads from the line to the chassis.',
  ...inPieces(
    wholeChassis(
      (study) => findLineEntries(study).flatMap((entry) => checkEntry(study, entry)),
      ({ elements, index, nets, netOf, document, policy }) => [
        elements,
        index.parts,
        nets,
        netOf,
        document.units,
        policy
      ]
    )
  )
};

const leastA = 0.0005;
const manyA = 0.0035;

function checkEntry(study: Study, entry: LineEntry): Finding[] {
  const leaks = findLeaks(study, entry).filter(({ amps }) => amps > leastA);
  const [first] = leaks;
  if (!first) return [];
  const worst = leaks.reduce((a, b) => (b.amps > a.amps ? b : a), first);
  const isDanger = worst.isDirect || worst.amps >= manyA;
  const between = [...new Set(leaks.flatMap(({ through }) => through))];
  return [
    {
      rule: 'hot-chassis',
      severity: isDanger ? 'danger' : 'caution',
      at: [
        partPlace(entry.first.part),
        ...elementPlaces(between).filter(({ id }) => id !== entry.first.part.id)
      ],
      message: [
        worstWords(worst, entry),
        waysWords(leaks, entry),
        capacitorWords(between),
        askedFor
      ]
        .filter((text) => text !== '')
        .join(' '),
      source,
      ...(isDanger
        ? { caution: `${cautionOf('hot-chassis').short} ${cautionOf('competence').short}` }
        : {}),
      why: {
        sum: null,
        inputs: [
          plainInput('Line', formatVolts(entry.volts), 'as drawn, or 117 V'),
          plainInput(
            'High line',
            `+${roundSignificant(study.policy.highLine * 100, 3)} %`,
            'policy'
          ),
          plainInput('Person', formatOhms(bodyOhms), 'leakage network, from memory'),
          plainInput('Frequency', `${lineHertz} Hz`, 'the highest of the usual ones'),
          ...leaks.map(({ switches, live, amps, through }) =>
            plainInput(
              `Live at ${live.terminal.name}, switches ${switches}`,
              formatAmps(roundSignificant(amps, 2)),
              through.length === 0 ? 'directly' : `through ${elementNames(through)}`
            )
          )
        ],
        outcome: `At worst ${formatAmps(roundSignificant(worst.amps, 2))} against ${formatAmps(leastA)}.`,
        passes: 'when no path leads from either side of the line to the chassis.'
      }
    }
  ];
}

const askedFor = 'Measure the leakage first: plug both ways, on and off.';

function worstWords({ isDirect, through, amps, live }: Leak, { first }: LineEntry): string {
  if (isDirect) {
    return `The chassis is joined to the power line at ${first.part.reference} ${live.terminal.name}: all metal of it may be at full line voltage.`;
  }
  return `The chassis hangs on the power line through ${elementNames(through, 4)}: about ${formatAmps(roundSignificant(amps, 2))} flow through a person who touches it and ground (limit ${formatAmps(leastA)}).`;
}

/** When it is so: which side of the plug is live, on or off. */
function waysWords(leaks: readonly Leak[], { first, second }: LineEntry): string {
  const whenLive = (switches: Leak['switches']): string => {
    const lives = leaks.filter((leak) => leak.switches === switches);
    const names = [first, second]
      .filter((entry) => lives.some(({ live }) => live === entry))
      .map(({ part, terminal }) => `${part.reference} ${terminal.name}`);
    if (names.length === 0) return '';
    return names.length === 2
      ? 'either way round of the plug'
      : `while ${names[0] ?? ''} is the live side`;
  };
  const [on, off] = [whenLive('closed'), whenLive('open')];
  if (off === '') return `It is so ${on}.`;
  if (on === '') return `It is so with the switch off, ${off}.`;
  if (on === off) return `On and off it is so ${on}.`;
  return `Switched on it is so ${on}, switched off ${off}.`;
}

const capacitorWords = (between: readonly PlacedElement[]): string => {
  const capacitors = between.filter(({ values }) => values.kind === 'capacitor');
  return capacitors.length === 0
    ? ''
    : `That is with ${elementNames(capacitors, 3)} as good as new.`;
};
