// Lengths as wire is sold and kept: metres or feet from a metre on, shorter ones as everywhere else.
import { formatNumber } from '#quantity/index.ts';
import type { LengthUnit } from '../core/preferences.svelte.ts';
import { lengthText } from '../core/words.ts';

export const mmPerFoot = 304.8;

/** "16.58 m", "54.4 ft", "155 mm". Rounded down: there is never less than it says. */
export function stockLength(mm: number, unit: LengthUnit): string {
  if (mm < 1000) return lengthText(unit === 'mm' ? Math.floor(mm) : mm, unit);
  return unit === 'mm'
    ? `${formatNumber(Math.floor(mm / 10) / 100, 6)} m`
    : `${formatNumber(Math.floor((mm / mmPerFoot) * 10) / 10, 6)} ft`;
}

/** A length that is sold: "25 ft", "10 m". */
export const soldLength = (mm: number, by: 'foot' | 'metre'): string =>
  by === 'foot' ? `${formatNumber(mm / mmPerFoot)} ft` : `${formatNumber(mm / 1000)} m`;
