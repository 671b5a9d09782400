// The four sides of a box, clockwise, and points on the sheet.

/** Clockwise from the top. */
export const sides = ['north', 'east', 'south', 'west'] as const;
export type Side = (typeof sides)[number];

/** Millimetres; x to the right, y down the page. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The way out of a box through a side: a step of 1. */
export const outwardOf: Readonly<Record<Side, Spot>> = {
  north: { x: 0, y: -1 },
  east: { x: 1, y: 0 },
  south: { x: 0, y: 1 },
  west: { x: -1, y: 0 }
};

/** Degrees clockwise from the top. */
export const degreesOf: Readonly<Record<Side, number>> = {
  north: 0,
  east: 90,
  south: 180,
  west: 270
};

export const isUpright = (side: Side): boolean => side === 'north' || side === 'south';

/** Millimetres to four decimals: finer than any printer, and short in a file. */
export const roundMm = (value: number): number => Math.round(value * 1e4) / 1e4 + 0;
