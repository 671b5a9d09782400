// The registry of bench sums: what the command line, the calculator and "why?" choose from.
import { roundSignificant } from '#quantity/index.ts';
import { ampacitySum, bundleShareSum, bundleSum } from './bench/bundle-sums.ts';
import { airGapSum, boardSpacingSum, creepageSum } from './bench/clearance-sums.ts';
import { voltageDropSum, wireResistance, wireSize } from './bench/conductor-sums.ts';
import { anodeResistorSum, dischargeSum } from './bench/energy-sums.ts';
import { insulationClassSum, stressSum } from './bench/insulation-sums.ts';
import { coaxLineSum, mismatchSum, twinLineSum } from './bench/line-sums.ts';
import { readInputs } from './bench/read-inputs.ts';
import { couplingSum, trebleCorner } from './bench/signal-sums.ts';
import type { Sum, SumValue } from './bench/sum.ts';
import { bendRadiusSum, fusing, postWrapSum } from './bench/workmanship-sums.ts';
import { SumError } from './sum-error.ts';

export const sums: readonly Sum[] = [
  wireSize,
  wireResistance,
  voltageDropSum,
  stressSum,
  insulationClassSum,
  ampacitySum,
  bundleShareSum,
  bundleSum,
  coaxLineSum,
  twinLineSum,
  mismatchSum,
  airGapSum,
  creepageSum,
  boardSpacingSum,
  dischargeSum,
  anodeResistorSum,
  trebleCorner,
  couplingSum,
  fusing,
  postWrapSum,
  bendRadiusSum
];

/** What a sum answers, as it goes into JSON. */
export interface SumResult {
  readonly id: string;
  /** In the units that the sum names, fallbacks filled in. */
  readonly inputs: Readonly<Record<string, SumValue>>;
  /** To 12 digits. A result that has no value is left out, and the basis says why. */
  readonly results: Readonly<Record<string, { readonly value: number; readonly unit: string }>>;
  readonly formula: string;
  readonly basis: string;
  readonly source: string;
}

export const findSum = (id: string): Sum | undefined => sums.find((sum) => sum.id === id);

/** Runs a sum on inputs as people write them: `22awg`, `10ft`, `4.5kV`, `100uF`.
 *  Errors: SumError for an unknown sum or input, a missing or unreadable one, one out of range.
 *  Example:  runSum("stress", { dc: "285V", ac: "6.3" }).results.stress.value // 293.90955
 */
export function runSum(id: string, texts: Readonly<Record<string, string>>): SumResult {
  const sum = findSum(id);
  if (!sum) throw unknownSum(id);
  return toResult(sum, readInputs(sum.inputs, texts));
}

/** Runs a sum on numbers, in the units that it names. Errors: SumError.
 *  Example:  runSumOn("wire-size", { awg: 36 }).results.diameter.value // 0.127
 */
export function runSumOn(id: string, values: Readonly<Record<string, unknown>>): SumResult {
  const sum = findSum(id);
  if (!sum) throw unknownSum(id);
  return toResult(sum, values);
}

function toResult(sum: Sum, values: Readonly<Record<string, unknown>>): SumResult {
  const { inputs, outcome } = sum.run(values);
  const results: Record<string, { value: number; unit: string }> = {};
  for (const [name, value] of Object.entries(outcome.results)) {
    if (value === null) continue;
    results[name] = { value: roundSignificant(value, 12), unit: sum.results[name] ?? '' };
  }
  const { id, formula, source } = sum;
  return { id, inputs, results, formula, basis: outcome.basis ?? sum.basis, source };
}

const unknownSum = (id: string): SumError =>
  new SumError({
    problem: 'unknown sum',
    input: 'id',
    value: id,
    limit: sums.map((sum) => sum.id).join(', '),
    wayOut: 'Use one of the ids listed.'
  });
