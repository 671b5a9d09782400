// More volts between heater and cathode than the tube stands.
import type { Part } from '#document/index.ts';
import { findTubeType, type TubeType } from '#handbook/tube-types.ts';
import { memoryWords } from '#handbook/source.ts';
import { formatVolts, isAtLeast, roundSignificant } from '#quantity/index.ts';
import { terminalKey, type Amount, type Study } from '#study/index.ts';
import { plainInput, voltsInput } from '../amount-input.ts';
import type { Finding, Rule } from '../finding.ts';
import { inPieces, wholeChassis } from '../pieces.ts';
import { partPlace } from '../places.ts';

const source = 'tube data, by the handbook of this program';

export const heaterCathode: Rule = {
  id: 'heater-cathode',
  severity: 'fault',
  title: 'Volts between heater and cathode',
  source,
  explain:
    'Between a heater and its cathode stand the difference of their dc, the peak of the ac that the heater rides on, and a pulse on the cathode. More than the tube data allows is a fault. For a type of which the handbook gives no limit, more than 200 V is a note: most receiving tubes stand 90 to 200 V, from memory. Dampers and rectifiers of which no limit is known are left out, and so are tubes of whose cathode nothing is known. It passes with the heater on a winding of its own that stands at the cathode, or with another type.',
  ...inPieces(
    wholeChassis(
      (study) => study.index.parts.flatMap((part) => checkPart(study, part)),
      ({ index, nets, netOf, network }) => [index.parts, nets, netOf, network]
    )
  )
};

/** Most receiving tubes; from memory. */
const usualV = 200;

function checkPart(study: Study, part: Part): Finding[] {
  if (part.type === undefined || !/^(tube|picture tube)$/.test(part.kind)) return [];
  const type = findTubeType(part.type);
  if (!type?.heater || type.heater.isFilament) return [];
  const limit = limitOf(type);
  if (limit === null) return [];
  const heater = type.heater.pins.map((pin) => standingAt(study, part, pin));
  const worst = type.pinFunctions
    .filter(({ role, also }) => role === 'cathode' || also.includes('cathode'))
    .flatMap(({ pin }) => {
      const cathode = standingAt(study, part, pin);
      if (!cathode?.dcV) return [];
      return heater.flatMap((end) =>
        end?.dcV
          ? [
              {
                pin,
                cathode: cathode.dcV as Amount,
                heater: end.dcV,
                acV: end.acV,
                pulseV: cathode.pulseV,
                volts:
                  Math.abs((cathode.dcV?.value ?? 0) - end.dcV.value) +
                  Math.SQRT2 * end.acV +
                  cathode.pulseV
              }
            ]
          : []
      );
    })
    .reduce<Strain | null>((a, b) => (a && a.volts >= b.volts ? a : b), null);
  if (!worst || isAtLeast(limit.volts, worst.volts)) return [];
  const name = part.reference || part.kind;
  const published = limit.isPublished
    ? `the ${type.name} stands ${formatVolts(limit.volts)}`
    : `no limit of the ${type.name} is at hand, and most tubes stand 90 to ${formatVolts(limit.volts)} (${memoryWords})`;
  return [
    {
      rule: 'heater-cathode',
      severity: limit.isPublished ? 'fault' : 'note',
      at: [partPlace(part)],
      message: `Between heater and cathode of ${name} stand ${formatVolts(roundSignificant(worst.volts, 4))}; ${published}.`,
      source,
      fix: { words: 'Put its heater on a winding of its own that stands at the cathode.' },
      why: {
        sum: null,
        inputs: [
          voltsInput(`Cathode, pin ${worst.pin}`, worst.cathode),
          voltsInput('Heater', worst.heater),
          plainInput(
            'Ac on the heater',
            `${formatVolts(worst.acV)} rms`,
            'the network, or what stands there'
          ),
          plainInput('Pulse on the cathode', formatVolts(worst.pulseV), 'what stands there')
        ],
        outcome: `${formatVolts(roundSignificant(worst.volts, 4))} against ${formatVolts(limit.volts)}.`,
        passes:
          'when the difference of dc, 1.414 x the ac and the pulse together stay within the limit.'
      }
    }
  ];
}

interface Strain {
  readonly pin: string;
  readonly cathode: Amount;
  readonly heater: Amount;
  readonly acV: number;
  readonly pulseV: number;
  readonly volts: number;
}

function limitOf({
  heaterCathodeV,
  what
}: TubeType): { volts: number; isPublished: boolean } | null {
  if (heaterCathodeV !== null) return { volts: heaterCathodeV, isPublished: true };
  return /damper|rectifier/.test(what) ? null : { volts: usualV, isPublished: false };
}

function standingAt(study: Study, part: Part, pin: string) {
  const terminal = study.index.terminalsOf.get(part.id)?.find(({ name }) => name === pin);
  if (!terminal) return null;
  const key = terminalKey(part.id, terminal.id);
  const net = study.nets.get(study.netOf.get(key) ?? '');
  if (!net) return null;
  // In a string the network knows how far up the heater is; the net alone says what it may come to.
  const own = study.network.voltsAt(key).acV;
  return {
    dcV: net.dcV,
    acV: own === null ? (net.acV?.value ?? 0) : Math.abs(own),
    pulseV: net.pulseV?.value ?? 0
  };
}
