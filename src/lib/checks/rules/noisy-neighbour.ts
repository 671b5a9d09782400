// Low-level audio beside something that hums, buzzes or whistles.
import type { Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { coupling } from '#physics/pick-up.ts';
import { SumError } from '#physics/sum-error.ts';
import { formatNumber, formatOhms, formatVolts, roundSignificant } from '#quantity/index.ts';
import type { Bundle, Study, WireStudy } from '#study/index.ts';
import { lengthInput, plainInput } from '../amount-input.ts';
import type { Finding, Rule } from '../finding.ts';
import { isLowLevelAudio, isShielded } from '../low-level.ts';
import { wirePlace } from '../places.ts';
import { wiresAsSubject, wiresInWords } from '../words.ts';

const source = 'capacitance of two parallel wires into a grid circuit: an upper estimate';

export const noisyNeighbour: Rule = {
  id: 'noisy-neighbour',
  severity: 'note',
  title: 'Audio beside heaters, the line or the sweep',
  source,
  explain:
    'Two wires that run side by side are a capacitor. Looked at are bare leads of low-level audio that share a stretch between two supports with a heater lead, the power line or a lead of the sweep that is in no shield and not twisted. The pick-up into 500 kilohms is estimated from the length of the stretch, at 60 Hz for heaters and line and at 15.75 kHz for pulses; the chassis nearby takes a part of it, so the real figure is smaller. From 2 mV on it is a note. It passes with a shield, with distance, or with the other wire twisted and the dress written down.',
  check: (study) =>
    study.index.wires
      .filter((wire) => isLowLevelAudio(study, wire))
      .flatMap((wire) => checkWire(study, wire))
};

const gridOhms = 500_000;
const leastPickUpV = 0.002;
/** Insulation of two hook-up wires between their conductors, and air about them. */
const dielectric = 2;
/** Where neither wire's thickness is known, mm. */
const usualOutsideMm = 2;
const usualConductorMm = 0.64;

interface Noise {
  readonly wire: Wire;
  readonly volts: number;
  readonly hertz: number;
  readonly lengthMm: number;
  readonly pickUpV: number;
}

function checkWire(study: Study, wire: Wire): Finding[] {
  const stretches = (study.bundlesOf.get(wire.id) ?? []).filter(
    ({ support, cable }) => support === null && cable === null
  );
  const noises = stretches.flatMap((stretch) =>
    stretch.wires.flatMap((id) => {
      const other = findElement(study.document.wires, id);
      return other && other !== wire ? (findNoise(study, other, stretch) ?? []) : [];
    })
  );
  const loud = noises.filter(({ pickUpV }) => pickUpV >= leastPickUpV);
  const [first] = loud;
  if (!first) return [];
  const worst = loud.reduce((a, b) => (b.pickUpV > a.pickUpV ? b : a), first);
  const others = [...new Set(loud.map((noise) => noise.wire))];
  const kind = worst.hertz > 1000 ? 'whistle' : 'hum';
  return [
    {
      rule: 'noisy-neighbour',
      severity: 'note',
      at: [wirePlace(study, wire), ...others.map((other) => wirePlace(study, other))],
      message: `${wiresAsSubject(study, [wire])}, low-level audio, runs beside ${wiresInWords(study, others)}: up to ${formatVolts(roundSignificant(worst.pickUpV, 2))} of ${kind} may get into a grid circuit.`,
      source,
      fix: { words: 'Lead it another way, shield it, or cross at a right angle.' },
      why: {
        sum: 'coupling',
        inputs: [
          plainInput(
            'Disturbing volts',
            formatVolts(worst.volts),
            worst.hertz > 1000 ? 'its pulse' : 'its ac'
          ),
          plainInput(
            'Frequency',
            `${formatNumber(worst.hertz)} Hz`,
            worst.hertz > 1000 ? 'line frequency of the sweep' : 'power line'
          ),
          lengthInput(
            'Length side by side',
            roundSignificant(worst.lengthMm, 3),
            'stretches as drawn'
          ),
          plainInput('Circuit', formatOhms(gridOhms), 'taken: a volume control or grid leak')
        ],
        outcome: `${formatVolts(roundSignificant(worst.pickUpV, 2))} against ${formatVolts(leastPickUpV)}.`,
        passes: 'with a shield, more distance, or a shorter way side by side.'
      }
    }
  ];
}

const sweepHertz = 15_750;
const lineHertz = 60;
const leastPulseV = 100;

function findNoise(study: Study, wire: Wire, stretch: Bundle): Noise | null {
  const about = study.wires.get(wire.id);
  if (!about || isShielded(study, wire) || /twist/i.test(wire.dress ?? '')) return null;
  const [volts, hertz] = disturbance(about);
  const lengthMm = lengthOf(study, stretch);
  if (volts === 0 || lengthMm === null) return null;
  try {
    const { pickUpV } = coupling({
      spacingMm: about.conductor.outsideMm ?? usualOutsideMm,
      diameterMm: usualConductorMm,
      lengthM: lengthMm / 1000,
      er: dielectric,
      volts,
      frequencyHz: hertz,
      impedanceOhm: gridOhms
    });
    return { wire, volts, hertz, lengthMm, pickUpV };
  } catch (problem) {
    if (problem instanceof SumError) return null;
    throw problem;
  }
}

/** Volts and frequency of what a wire puts out; no volts for one that is quiet. */
function disturbance({ carries, roles }: WireStudy): readonly [volts: number, hertz: number] {
  const pulseV = carries.pulseV?.value ?? 0;
  if (pulseV >= leastPulseV) return [pulseV, sweepHertz];
  const isLine = roles.has('line') || roles.has('heater');
  return [isLine ? (carries.acV?.value ?? 0) : 0, lineHertz];
}

/** The way between the two supports of a stretch, mm; null where one of its ends is no support. */
function lengthOf({ document }: Study, { id }: Bundle): number | null {
  const [a, b] = id.split(' ').map((key) => findElement(document.supports, key));
  if (!a || !b || a.unit !== b.unit) return null;
  return Math.hypot(a.place.x - b.place.x, a.place.y - b.place.y);
}
