// What may still be charged, and for how long: the head of every test sheet. Only known resistors count,
// and only if they are good; with none, it is charged.
import { bleedOhms, chargedTo } from '#checks/discharge-paths.ts';
import { discharge, storedOn } from '#physics/discharge.ts';
import {
  formatFarads,
  formatNumber,
  formatOhms,
  formatSeconds,
  formatVolts
} from '#quantity/index.ts';
import type { Study } from '#study/index.ts';

/** Published limits of what may be touched begin at 60 V dc. */
const touchV = 60;
/** What holds less than this is left out of the list, J. A matter of judgement, no source. */
const leastJ = 0.01;

export interface Charged {
  readonly part: string;
  readonly volts: number;
  readonly farads: number | null;
  /** Down to 60 V through known resistors; null where none is known. */
  readonly seconds: number | null;
  readonly words: string;
}

/** Worst first: what nothing discharges, then the slow. */
export function chargedParts(study: Study): readonly Charged[] {
  const all = study.elements.flatMap((element): Charged[] => {
    const { values, from, to, part } = element;
    if (values.kind !== 'capacitor' || !(values.farads > 0) || from === to) return [];
    const volts = chargedTo(study, element);
    if (volts === null || volts <= touchV) return [];
    const { farads } = values;
    const { energyJ } = storedOn(farads, volts);
    if (energyJ < leastJ) return [];
    const ohms = bleedOhms(study, from.id, to.id);
    const seconds = ohms === null ? null : secondsTo(farads, ohms, volts);
    const what = `${part.reference}: ${formatFarads(farads)} at up to ${formatVolts(Number(volts.toPrecision(3)))}, ${formatNumber(energyJ, 2)} J`;
    return [
      {
        part: part.reference,
        volts,
        farads,
        seconds,
        words:
          seconds === null
            ? `${what}. No known resistor discharges it: assume that it is charged.`
            : `${what}. ${formatSeconds(Number(seconds.toPrecision(2)))} to ${formatVolts(touchV)} through ${formatOhms(Number((ohms ?? 0).toPrecision(3)))}, if the bleeder is good.`
      }
    ];
  });
  return [
    ...pictureTubes(study),
    ...all.sort((a, b) => (b.seconds ?? Infinity) - (a.seconds ?? Infinity) || b.volts - a.volts)
  ];
}

const secondsTo = (capacitanceF: number, ohms: number, fromV: number): number =>
  discharge({
    capacitanceF,
    resistanceOhm: Math.min(Math.max(ohms, 1e-3), 1e12),
    fromV,
    toV: touchV
  }).timeS;

const pictureTubes = (study: Study): readonly Charged[] =>
  study.index.parts
    .filter(({ kind }) => kind === 'picture tube')
    .map(({ reference }) => ({
      part: reference,
      volts: Infinity,
      farads: null,
      seconds: null,
      words: `${reference}: the glass of a picture tube is a capacitor and gives back. Assume that it is charged; discharge the second anode to the outer coating through a resistor, and once more after a while.`
    }));

/** In this order, before anything is touched. */
export const dischargeSteps: readonly string[] = [
  'Pull the plug. A switch that is off proves nothing.',
  'Discharge the picture tube and each filter capacitor through a resistor to the chassis, one hand behind your back.',
  'Leave the clip on.',
  'Measure that there is nothing, with a meter that you have just tried on a known voltage.',
  'Only then touch. Repeat after every power-up.'
];
