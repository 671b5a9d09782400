// One figure from outside the project that a sum is held against: what goes in, what a source says
// comes out, and how far off the sum may be. The tests and the page that shows them read rows alike.

/** `verified`: printed in the source. `derived`: worked out by hand or with another tool from
 *  figures printed there. `memory`: known, not held against a page. */
export const referenceMarks = ['verified', 'derived', 'memory'] as const;
export type ReferenceMark = (typeof referenceMarks)[number];

export interface ReferenceRow {
  /** Key of a source. */
  readonly source: string;
  /** Counts within the source. */
  readonly row: number;
  /** The id of a bench sum, or `fn:` and the name of a reference function. */
  readonly target: string;
  /** As people write them. */
  readonly inputs: Readonly<Record<string, string>>;
  readonly output: string;
  readonly expected: number;
  /** See `acceptedRange`. */
  readonly tolerance: string;
  readonly mark: ReferenceMark;
  /** Whether the code holds the very table that the figure is from. */
  readonly inCode: boolean;
  readonly note: string;
}

/** A row from its cells by column name. Throws an Error that names the row for a missing column, an
 *  unknown mark or a figure that is no number. */
export function toReferenceRow(cells: Readonly<Record<string, string>>): ReferenceRow {
  const place = `${cells['source'] ?? 'no source'} row ${cells['row'] ?? '?'}`;
  const cell = (name: string): string => {
    const text = cells[name];
    if (text === undefined) throw new Error(`${place}: no column ${name}`);
    return text;
  };
  const number = (name: string): number => {
    const value = Number(cell(name));
    if (!Number.isFinite(value) || cell(name).trim() === '')
      throw new Error(`${place}: ${name} "${cell(name)}" is no number`);
    return value;
  };
  const mark = referenceMarks.find((word) => word === cell('mark'));
  if (!mark) throw new Error(`${place}: unknown mark "${cell('mark')}"`);
  return {
    source: cell('source'),
    row: number('row'),
    target: cell('target'),
    inputs: toInputs(cell('inputs')),
    output: cell('output'),
    expected: number('expected'),
    tolerance: cell('tolerance'),
    mark,
    inCode: cell('in_code') === 'yes',
    note: cell('note')
  };
}

const toInputs = (text: string): Record<string, string> =>
  Object.fromEntries(text.split(';').map((pair) => pair.split('=').map((part) => part.trim())));

/** The least and the most that a row accepts.
 *  `exact`: 9 digits; `0.2%`: of the expected; `0.001`: either side; `0..+2%`: from and to. Throws
 *  an Error for a tolerance of no such form. */
export function acceptedRange(expected: number, tolerance: string): readonly [number, number] {
  const size = Math.abs(expected);
  const rounding = 1e-9 * size;
  const range = /^([-+]?[\d.]+%?)\.\.([-+]?[\d.]+%)$/.exec(tolerance);
  if (range) {
    const [, least = '', most = ''] = range;
    return [expected + share(least) * size - rounding, expected + share(most) * size + rounding];
  }
  const either =
    tolerance === 'exact'
      ? rounding
      : tolerance.endsWith('%')
        ? share(tolerance) * size
        : Number(tolerance);
  if (!Number.isFinite(either) || tolerance === '') throw new Error(`tolerance "${tolerance}"?`);
  return [expected - either, expected + either];
}

const share = (text: string): number => Number(text.replace('%', '')) / 100;
