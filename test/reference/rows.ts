// Reads the reference rows and works each of them out: by the bench sum that it names, or by one of
// the functions below where no sum shows the figure by itself.
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import {
  ampacity,
  bundleShare,
  coaxLine,
  ohmPerMetre,
  onderdonkAmpsOf,
  preeceAmpsOf,
  runSum,
  sleeveOver,
  temperatureFactor,
  tinnedFactor,
  touchLimit,
  wireDiameterMm
} from '#physics/index.ts';
import { parseQuantity, type Dimension } from '#quantity/index.ts';

export type ReferenceMark = 'verified' | 'derived' | 'memory';

export interface ReferenceRow {
  /** Key of a source in the README beside the rows. */
  readonly source: string;
  /** Counts within the source. */
  readonly row: number;
  /** The id of a bench sum, or `fn:` and the name of a function. */
  readonly target: string;
  readonly inputs: Readonly<Record<string, string>>;
  readonly output: string;
  readonly expected: number;
  readonly tolerance: string;
  readonly mark: ReferenceMark;
  /** Whether the code holds the very table that the figure is from. */
  readonly inCode: boolean;
  readonly note: string;
}

const marks: readonly ReferenceMark[] = ['verified', 'derived', 'memory'];

export function readReferenceRows(file: URL): ReferenceRow[] {
  const parsed = Papa.parse<Record<string, string>>(readFileSync(file, 'utf8'), {
    header: true,
    skipEmptyLines: true
  });
  if (parsed.errors[0]) throw new Error(`${file.pathname}: ${parsed.errors[0].message}`);
  return parsed.data.map((cells) => {
    const cell = (name: string): string => {
      const text = cells[name];
      if (text === undefined) throw new Error(`${file.pathname}: no column ${name}`);
      return text;
    };
    const mark = marks.find((word) => word === cell('mark'));
    if (!mark) throw new Error(`${cell('source')} row ${cell('row')}: unknown mark`);
    return {
      source: cell('source'),
      row: Number(cell('row')),
      target: cell('target'),
      inputs: toInputs(cell('inputs')),
      output: cell('output'),
      expected: Number(cell('expected')),
      tolerance: cell('tolerance'),
      mark,
      inCode: cell('in_code') === 'yes',
      note: cell('note')
    };
  });
}

const toInputs = (text: string): Record<string, string> =>
  Object.fromEntries(text.split(';').map((pair) => pair.split('=').map((part) => part.trim())));

/** What the project makes of a row. */
export function ourValue({ target, inputs, output }: ReferenceRow): number {
  if (!target.startsWith('fn:')) {
    const result = runSum(target, inputs).results[output];
    if (!result) throw new Error(`${target} has no result ${output} for these inputs`);
    return result.value;
  }
  const found = functions[target.slice(3)];
  if (!found) throw new Error(`there is no function ${target}`);
  const values: Record<string, number> = {};
  for (const [name, dimension] of Object.entries(found.inputs)) {
    const parsed = parseQuantity(inputs[name] ?? '', dimension);
    if (!parsed.ok) throw new Error(`${target} ${name}: ${parsed.problem}`);
    values[name] = parsed.value;
  }
  return found.run((name) => values[name]!);
}

interface ReferenceFunction {
  readonly inputs: Readonly<Record<string, Dimension>>;
  readonly run: (input: (name: string) => number) => number;
}

const mmPerMil = 0.0254;
const metresPer1000Ft = 304.8;

const functions: Readonly<Record<string, ReferenceFunction>> = {
  diameterMil: {
    inputs: { awg: 'gauge' },
    run: (input) => wireDiameterMm(input('awg')) / mmPerMil
  },
  temperatureFactor: {
    inputs: { temperature: 'temperature' },
    run: (input) => temperatureFactor(input('temperature'))
  },
  tinnedFactor: { inputs: { diameter: 'length' }, run: (input) => tinnedFactor(input('diameter')) },
  strandedOhmPer1000Ft: {
    inputs: { strands: 'number', strand: 'gauge' },
    run: (input) => {
      const stranding = { strands: input('strands'), strandAwg: input('strand') };
      return ohmPerMetre({ awg: stranding.strandAwg, stranding }) * metresPer1000Ft;
    }
  },
  coaxPfPerFt: {
    inputs: { outer: 'length', inner: 'length', er: 'number' },
    run: (input) => {
      const sizes = { outerMm: input('outer'), innerMm: input('inner'), er: input('er') };
      return coaxLine(sizes).capacitancePfPerM * 0.3048;
    }
  },
  preeceAmpsOf: { inputs: { diameter: 'length' }, run: (input) => preeceAmpsOf(input('diameter')) },
  onderdonkAmpsOf: {
    inputs: { circular_mils: 'number', seconds: 'time' },
    run: (input) =>
      onderdonkAmpsOf({ circularMils: input('circular_mils'), seconds: input('seconds') })
  },
  bundleShare: { inputs: { wires: 'number' }, run: (input) => bundleShare(input('wires')) },
  /** The table's own bundled figure, which the sum undoes. */
  bundledTableAmps: {
    inputs: { awg: 'gauge', rating: 'temperature', ambient: 'temperature' },
    run: (input) => {
      const { singleA } = ampacity({
        awg: input('awg'),
        ratingC: input('rating'),
        ambientC: input('ambient')
      });
      return singleA * 0.615;
    }
  },
  sleeveOver: { inputs: { outside: 'length' }, run: (input) => sleeveOver(input('outside')) ?? 0 },
  isOverTouchLimit: {
    inputs: { capacitance: 'capacitance', volts: 'voltage' },
    run: (input) => (touchLimit(input('capacitance'), input('volts')).isOver ? 1 : 0)
  }
};

/** The least and the most that a row accepts.
 *  `exact`: 9 digits; `0.2%`: of the expected; `0.001`: either side; `0..+2%`: from and to. */
export function acceptedRange(expected: number, tolerance: string): readonly [number, number] {
  const share = (text: string): number => Number(text.replace('%', '')) / 100;
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
