// Another state in place of the one in the hand, as one step of undo: going back to what was kept earlier.
import type { History } from './history.ts';
import type { Patch } from './patch.ts';
import type { ChassisDocument } from './schema.ts';
import { shareStructure } from './share-structure.ts';

const patchesTo = (before: ChassisDocument, after: ChassisDocument): Patch[] => {
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]) as Set<string>;
  const valueIn = (document: ChassisDocument, key: string): unknown =>
    (document as Readonly<Record<string, unknown>>)[key];
  return [...keys].flatMap((key): Patch[] => {
    const value = valueIn(after, key);
    if (valueIn(before, key) === value) return [];
    if (!Object.hasOwn(after, key)) return [{ op: 'remove', path: [key] }];
    return [{ op: Object.hasOwn(before, key) ? 'replace' : 'add', path: [key], value }];
  });
};

/** The history and document with `wanted` in place of `document`; both as they are where nothing differs.
 *  @param wanted a state of the same document, of the same version of the format
 *  @param name of the step, for the list of undo
 *  @param time in milliseconds, from a clock that does not run backwards */
export const replaceDocument = (
  document: ChassisDocument,
  history: History,
  wanted: ChassisDocument,
  name: string,
  time: number
): { readonly document: ChassisDocument; readonly history: History } => {
  const after = shareStructure(document, wanted);
  const patches = patchesTo(document, after);
  if (patches.length === 0) return { document, history };
  const step = {
    name,
    edit: { kind: 'do-many', args: { name, edits: [] } } as const,
    patches,
    inverse: patchesTo(after, document),
    mergeKey: null,
    time
  };
  return { document: after, history: { past: [...history.past, step], future: [] } };
};
