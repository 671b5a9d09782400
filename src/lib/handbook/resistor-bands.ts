// The value of a resistor from the colours of its bands, read from the end that they crowd to.
import { chassisColours } from './colour-code.ts';
import { colourHexes, parseColour } from './colours.ts';

const digitOf: ReadonlyMap<string, number> = new Map(
  chassisColours.map(({ colour, digit }) => [colour, digit])
);
const metals: Readonly<Record<string, { readonly power: number; readonly tolerance: number }>> = {
  gold: { power: -1, tolerance: 5 },
  silver: { power: -2, tolerance: 10 }
};
/** How each band is shown on a screen, in the order of the digits, metals last. */
export const bandHexes: Readonly<Record<string, string>> = {
  ...Object.fromEntries(chassisColours.map(({ colour }) => [colour, colourHexes[colour]])),
  gold: '#c9a13b',
  silver: '#b9bdc1'
};

/** Per cent; bands that stand for no tolerance are refused. */
const tolerances: Readonly<Record<string, number>> = { brown: 1, red: 2, gold: 5, silver: 10 };

export interface Bands {
  readonly ohms: number;
  /** Per cent: 20 where there is no fourth band. */
  readonly tolerance: number;
  /** The ohms as a value is written: "47k". */
  readonly text: string;
  /** What of it no published table was read for; the digits are those of the colour code's table. */
  readonly fromMemory: string;
}

const shortOhms = (ohms: number): string => {
  const round = (value: number): string => String(Number(value.toPrecision(3)));
  if (ohms >= 1e6) return `${round(ohms / 1e6)}M`;
  return ohms >= 1e3 ? `${round(ohms / 1e3)}k` : `${round(ohms)} ohm`;
};

/** Two digits, a multiplier and, if there is a fourth band, a tolerance; null where the words are
 *  anything else. @example readBands('yellow violet orange silver') // 47k, 10 % */
export const readBands = (text: string): Bands | null => {
  const words = text
    .trim()
    .toLowerCase()
    .split(/[\s,/-]+/)
    .map((word) => (Object.hasOwn(metals, word) ? word : (parseColour(word)?.colour ?? '')));
  if (words.length < 3 || words.length > 4) return null;
  const [first = '', second = '', third = '', fourth] = words;
  const tens = digitOf.get(first);
  const ones = digitOf.get(second);
  const power = digitOf.get(third) ?? metals[third]?.power;
  const tolerance = fourth === undefined ? 20 : tolerances[fourth];
  if (tens === undefined || tens === 0 || ones === undefined) return null;
  if (power === undefined || tolerance === undefined) return null;
  const ohms = Number(((tens * 10 + ones) * 10 ** power).toPrecision(3));
  const isBelowOne = digitOf.get(third) === undefined;
  const fromMemory = isBelowOne ? 'multiplier and tolerance from memory' : 'tolerance from memory';
  return { ohms, tolerance, text: shortOhms(ohms), fromMemory };
};
