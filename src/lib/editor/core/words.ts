// Amounts and names as the editor shows them in more than one place. What is not known is said in
// words and never as a number, and a lower bound says "at least".
import type { Wire } from '#document/index.ts';
import { formatAmps, formatInches, formatMm, formatVolts } from '#quantity/index.ts';
import type { Need, WireStudy } from '#study/index.ts';
import type { LengthUnit } from './preferences.svelte.ts';

/** "460 mm" or "18 1/8 in"; a cut length is rounded up so that it is never too short. */
export const lengthText = (
  mm: number,
  unit: LengthUnit,
  round: 'nearest' | 'up' = 'nearest'
): string => (unit === 'mm' ? formatMm(mm) : formatInches(mm, round));

/** "285 V dc, 5 kV pk, 200 mA"; empty where nothing is known. Volts that are known to be nought are
 *  left out beside others, and "0 V" where all are. */
export const carriesText = ({ dcV, acV, pulseV, amps }: WireStudy['carries']): string => {
  const kinds = [
    [dcV, 'dc'],
    [acV, 'ac'],
    [pulseV, 'pk']
  ] as const;
  const known = kinds.flatMap(([amount, kind]) => (amount === null ? [] : [{ ...amount, kind }]));
  const volts = known.filter(({ value }) => value !== 0);
  const words = volts.map(({ value, kind }) => `${formatVolts(value)} ${kind}`);
  if (known.length > 0 && volts.length === 0) words.push('0 V');
  if (amps !== null) words.push(formatAmps(amps.value));
  return words.join(', ');
};

/** "25 kV", "at least 600 V", "over 40 kV", or "not known". */
export const needText = (need: Need | null): string => {
  if (need === null) return 'not known';
  const volts = formatVolts(need.requiredV);
  if (need.beyondLadder) return `over ${volts}`;
  return need.atLeast ? `at least ${volts}` : volts;
};

/** "red/yellow"; empty where no colour is known. */
export const colourText = (colour: string | undefined, tracer: string | undefined): string =>
  tracer === undefined || tracer === '' ? (colour ?? '') : `${colour ?? '?'}/${tracer}`;

/** "wire 12" or, for one that has no number yet, "unnumbered wire". */
export const wireName = (wire: Wire): string =>
  wire.number === '' ? 'unnumbered wire' : `wire ${wire.number}`;

/** An end of the wire has not been found. */
export const isHalfTraced = (wire: Wire): boolean =>
  wire.from.at === undefined || wire.to.at === undefined;

/** "1 wire", "94 wires". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** The text with every number tied to its unit, so that no line ends between the two. */
export const glued = (text: string): string =>
  text.replaceAll(/(\d) (?=(?:[munpkMµ]?[VAΩWF]|mm|in|AWG|MΩ|kΩ)\b)/g, '$1\u00a0');
