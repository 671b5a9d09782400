// Cushioned loop clamps (MS21919): the dash number is the diameter in sixteenths of an inch.
import { fromMemory, type Sourced } from './source.ts';

export interface LoopClamp extends Sourced {
  readonly dash: number;
  readonly diameterMm: number;
}

/** From 1/16 in to 4 in, smallest first. */
export const loopClamps: readonly LoopClamp[] = Array.from({ length: 64 }, (_, index) => ({
  dash: index + 1,
  diameterMm: ((index + 1) * 25.4) / 16,
  ...fromMemory
}));

/** The smallest loop clamp that a bundle of this diameter (mm) goes into, or null above 4 in. */
export const findLoopClamp = (bundleMm: number): LoopClamp | null =>
  loopClamps.find((clamp) => clamp.diameterMm >= bundleMm) ?? null;
