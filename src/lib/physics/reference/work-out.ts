// What the project's own sums make of a reference row.
import { parseQuantity } from '#quantity/index.ts';
import { findSum, runSum } from '../sums.ts';
import { referenceFunctions, type ReferenceFunction } from './reference-functions.ts';
import type { ReferenceRow } from './reference-row.ts';

/** The function that a row names with `fn:`; undefined where it names a sum. Throws an Error for a
 *  function that there is not. */
export function findReferenceFunction(target: string): ReferenceFunction | undefined {
  if (!target.startsWith('fn:')) return undefined;
  const found = referenceFunctions[target.slice(3)];
  if (!found) throw new Error(`there is no function ${target}`);
  return found;
}

/** The figure that the row's sum or function gives for its inputs, in the unit of `referenceUnit`.
 *  Throws an Error for a target or result that there is not, and whatever the sum throws. */
export function ourValue({ target, inputs, output }: ReferenceRow): number {
  const found = findReferenceFunction(target);
  if (!found) {
    const result = runSum(target, inputs).results[output];
    if (!result) throw new Error(`${target} has no result ${output} for these inputs`);
    return result.value;
  }
  const values = new Map<string, number>();
  for (const [name, dimension] of Object.entries(found.inputs)) {
    const parsed = parseQuantity(inputs[name] ?? '', dimension);
    if (!parsed.ok) throw new Error(`${target} ${name}: ${parsed.problem}`);
    values.set(name, parsed.value);
  }
  return found.run((name) => {
    const value = values.get(name);
    if (value === undefined) throw new Error(`${target} has no input ${name}`);
    return value;
  });
}

/** The unit of a row's figures; empty where there is none. */
export const referenceUnit = ({ target, output }: ReferenceRow): string =>
  findReferenceFunction(target)?.unit ?? findSum(target)?.results[output] ?? '';
