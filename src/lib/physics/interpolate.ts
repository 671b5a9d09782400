// Reading published tables: between two rows along a straight line where the source allows that,
// else the next row up. Never past either end.
import { roundSignificant } from '#quantity/index.ts';
import { SumError } from './sum-error.ts';

export type TableRow = readonly [at: number, value: number];

/** The value on the straight line between the rows around `at`; SumError outside the table. */
export function interpolate(
  input: string,
  rows: readonly TableRow[],
  at: number,
  unit: string
): number {
  const x = roundSignificant(at, 12);
  const upper = rows.findIndex(([row]) => row >= x);
  const above = rows[upper];
  const below = rows[upper === 0 ? 0 : upper - 1];
  if (!above || !below || (upper === 0 && above[0] > x)) throw outsideTable(input, rows, at, unit);
  if (above[0] === x || above[0] === below[0]) return above[1];
  return below[1] + ((above[1] - below[1]) * (x - below[0])) / (above[0] - below[0]);
}

/** The first row at or above `at`; SumError past the last one. */
export function nextRowUp<Row extends readonly [number, ...unknown[]]>(
  input: string,
  rows: readonly Row[],
  at: number,
  unit: string
): Row {
  const x = roundSignificant(at);
  const row = rows.find(([step]) => step >= x);
  if (!row) throw outsideTable(input, rows, at, unit);
  return row;
}

function outsideTable(
  input: string,
  rows: readonly (readonly [number, ...unknown[]])[],
  at: number,
  unit: string
): SumError {
  return new SumError({
    problem: 'outside the table',
    input,
    value: `${at} ${unit}`,
    limit: `${rows[0]?.[0]} to ${rows.at(-1)?.[0]} ${unit}`,
    wayOut: 'The published table ends there and nothing is guessed beyond it.'
  });
}
