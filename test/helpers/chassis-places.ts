// Where the terminals of common parts sit, in mm from the part's middle, and the two kinds of
// value that the builder reads.
import { pinPlaces, tubeBaseOf, type BaseId } from '#handbook/tube-bases.ts';

/** x and y in mm, as seen from below (the wiring side). */
export type Spot = readonly [number, number];

const rounded = (value: number): number => Math.round(value * 100) / 100;

/** Lugs in a row, middle at 0. */
export const rowOffsets = (count: number, pitchMm: number): Spot[] =>
  Array.from({ length: count }, (_, index) => [rounded((index - (count - 1) / 2) * pitchMm), 0]);

/** How far the solder lugs of a socket stand outside its pins. Common practice, no source. */
const lugReachMm = 3.5;

/** Solder lugs of a socket, clockwise from the key or gap, which points down, as seen from below. */
export const socketOffsets = (base: BaseId): Spot[] => {
  const reach = 1 + (2 * lugReachMm) / tubeBaseOf(base).circleMm;
  return pinPlaces(base).map(({ x, y }) => [rounded(x * reach), rounded(y * reach)]);
};

/** `count` terminals evenly round a circle, clockwise from the bottom, as seen from below. */
export const circleOffsets = (count: number, diameterMm: number): Spot[] =>
  Array.from({ length: count }, (_, index) => {
    const turn = (2 * Math.PI * (index + 0.5)) / count;
    return [
      rounded((-diameterMm / 2) * Math.sin(turn)),
      rounded((diameterMm / 2) * Math.cos(turn))
    ];
  });

const readValue = (text: string, multipliers: Readonly<Record<string, number>>): number => {
  const match = /^([\d.]+)\s*([a-zA-Zµ]*)$/.exec(text.trim());
  const multiplier = multipliers[match?.[2] ?? ''];
  if (!match || multiplier === undefined) throw new Error(`cannot read the value "${text}"`);
  return Number((Number(match[1]) * multiplier).toPrecision(12));
};

/** "470", "47k", "2.2M" in ohms. */
export const toOhms = (text: string): number => readValue(text, { '': 1, ohm: 1, k: 1e3, M: 1e6 });

/** "100 pF", "0.05 uF", "40 uF" in farads. */
export const toFarads = (text: string): number =>
  readValue(text, { pF: 1e-12, nF: 1e-9, uF: 1e-6, µF: 1e-6 });
