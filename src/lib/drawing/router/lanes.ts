// Lanes: everything that wires run between and along stands on multiples of one step, so that two
// wires are either on one lane or clearly apart.
import { roundMm } from '../presentation/sides.ts';

/** From lane to lane, mm: a number's box on one does not touch the next. */
export const laneMm = 2.4;

/** The nearest lane, mm. */
export const toLane = (mm: number): number => roundMm(Math.round(mm / laneMm) * laneMm);

/** The next lane that is not less, mm. */
export const toLaneUp = (mm: number): number => roundMm(Math.ceil(mm / laneMm - 1e-6) * laneMm);

export const isOnLane = (mm: number): boolean => Math.abs(mm - toLane(mm)) < 1e-3;
