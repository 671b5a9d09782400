// Words for the page that the registry of sums has no need of: what a result means, which units are
// at hand for a thumb, and which cautions stand beside a sum that touches lethal voltages.
import { cautionOf, type Caution, type CautionId } from '#checks/cautions.ts';
import type { InputAbout } from '#physics/index.ts';
import type { Dimension } from '#quantity/index.ts';

/** By sum and result. A result without words of its own goes by its name alone. */
export const resultWords: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'wire-size': { diameter: 'of the bare wire', area: 'of the copper', circular_mils: 'area' },
  'wire-resistance': { resistance: 'of the length', per_metre: 'of the wire' },
  'voltage-drop': { drop: 'lost in the run', percent: 'of the source', at_load: 'what is left' },
  stress: { stress: 'peak to chassis' },
  'insulation-class': {
    stress: 'peak to chassis',
    required: 'class, at the margin',
    preferred: 'class, at the preferred margin'
  },
  ampacity: { single: 'alone in air', allowed: 'in its bundle, all loaded' },
  'bundle-share': { share: 'of the current of one wire alone' },
  bundle: {
    packed: 'smallest round hole',
    estimate: "the handbook's rule",
    clamp_mm: 'clamp that closes on it',
    clamp_sixteenths: 'the same clamp',
    sleeve_mm: 'sleeve, as supplied'
  },
  'coax-line': { velocity: 'share of that of light' },
  'twin-line': { velocity: 'share of that of light' },
  mismatch: { reflection: 'share that comes back', vswr: 'standing waves' },
  'air-gap': { clearance: 'the IEC figure', advice: 'the largest of the published figures' },
  creepage: { creepage: 'along the surface' },
  'board-spacing': {
    spacing: 'edge to edge, by the table',
    advice: 'the larger of the published figures'
  },
  discharge: { time: 'by the known resistor only', energy: 'at the start', charge: 'at the start' },
  'anode-resistor': {
    drop: 'in use',
    fault_current: 'anode shorted, at most',
    fault_power: 'anode shorted, at most'
  },
  'treble-corner': { corner: '3 dB down' },
  coupling: { capacitance: 'between the two', pickup: 'on the disturbed wire' },
  fusing: { onderdonk: 'melts in the time given', preece: 'melts in free air, no time' },
  'post-wrap': { turns: 'bare', strip: 'of the insulation' },
  'bend-radius': { minimum: 'inside the bend', preferred: 'inside the bend' }
};

/** "at_load" as it is said. */
export const spokenName = (name: string): string => name.replaceAll('_', ' ');

/** The name of a result, without the unit that stands behind its figure. */
export const resultLabel = (name: string): string => spokenName(name.replace(/_mm$/, ''));

const unitsByDimension: Readonly<Partial<Record<Dimension, readonly string[]>>> = {
  voltage: ['V', 'kV'],
  current: ['A', 'mA', 'µA'],
  resistance: ['Ω', 'k', 'MEG'],
  capacitance: ['µF', 'pF'],
  frequency: ['Hz', 'kHz', 'MHz'],
  time: ['s', 'ms'],
  temperature: ['°C', '°F']
};
const unitsOfLength: Readonly<Record<string, readonly string[]>> = {
  m: ['m', 'ft', 'in'],
  mm: ['mm', 'in', 'mil']
};

/** Units that one tap sets behind a number, the most used first; none where there is no choice. */
export function unitsAtHandOf({ reading, unit }: InputAbout): readonly string[] {
  if (reading.as === 'choice') return [];
  const isLength = reading.as === 'lengths' || reading.dimension === 'length';
  return (isLength ? unitsOfLength[unit] : unitsByDimension[reading.dimension]) ?? [];
}

/** More whole numbers than this are typed, not picked. */
const mostPicked = 4;

/** The few texts that an input may have, to be picked instead of typed; none where it is typed. */
export function choicesOf({ reading }: InputAbout): readonly string[] {
  if (reading.as === 'choice') return reading.choices;
  if (reading.as !== 'amount' || reading.limits.whole !== true) return [];
  const { min, max } = reading.limits;
  if (min === undefined || max === undefined || max - min >= mostPicked) return [];
  return Array.from({ length: max - min + 1 }, (_, step) => String(min + step));
}

/** The text with the unit behind its number, in place of one that stood there; as it is where there
 *  is no number. */
export function withUnit(text: string, unit: string): string {
  const bare = text.trim().replace(/(?<=[\d.,'"]) ?[^\d.,/]*$/, '');
  return /\d/.test(bare) ? `${bare} ${unit}` : text;
}

const cautionIdsBySum: Readonly<Record<string, readonly CautionId[]>> = {
  discharge: ['stored-charge', 'competence'],
  'anode-resistor': ['stored-charge', 'x-radiation', 'competence'],
  'air-gap': ['competence', 'x-radiation'],
  creepage: ['competence'],
  'board-spacing': ['competence']
};
export const sumsWithCautions: readonly string[] = Object.keys(cautionIdsBySum);

export const cautionsOfSum = (id: string): readonly Caution[] =>
  (cautionIdsBySum[id] ?? []).map(cautionOf);
