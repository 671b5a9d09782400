// What must hold of every edit on every document: the result passes the schema, the patches lead there and
// back, the edit means the same after it has been written down, and the given document is not changed.
import {
  applyEdit,
  applyPatches,
  documentSchema,
  type ChassisDocument,
  type Edit,
  type EditApplied,
  type Patch
} from '#document/index.ts';
import { expect } from 'vitest';

/** Any attempt to change the value throws from now on. */
export const deepFreeze = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(deepFreeze);
  }
  return value;
};

const throughJson = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

/** Applies the edit and asserts all that must hold; gives what was applied, for what the test itself
 *  wants to see. Fails where the edit is refused. */
export const checkEdit = (document: ChassisDocument, edit: Edit): EditApplied => {
  const before = JSON.stringify(document);
  const result = applyEdit(deepFreeze(document), deepFreeze(edit));
  if (!result.ok) throw new Error(`the edit was refused: ${result.problem}`);
  expect(JSON.stringify(document)).toBe(before);

  const parsed = documentSchema.safeParse(result.document);
  expect(parsed.error?.issues ?? []).toEqual([]);
  expect(applyPatches(document, result.patches)).toEqual(result.document);
  expect(applyPatches(result.document, result.inverse)).toEqual(document);

  const patches = throughJson(result.patches as Patch[]);
  const inverse = throughJson(result.inverse as Patch[]);
  expect(applyPatches(document, patches)).toEqual(result.document);
  expect(applyPatches(result.document, inverse)).toEqual(document);

  const again = applyEdit(document, throughJson(edit));
  expect(again).toEqual(result);
  expect(result.name).not.toBe('');
  return result;
};
