// Patches are what an edit did to a document, and undid again, as plain data.
import { apply } from 'mutative';
import type { ChassisDocument } from './schema.ts';

export interface Patch {
  readonly op: 'add' | 'remove' | 'replace';
  readonly path: readonly (string | number)[];
  readonly value?: unknown;
}

/** The document with the patches applied, in order. Throws where they were made for another document. */
export const applyPatches = (
  document: ChassisDocument,
  patches: readonly Patch[]
): ChassisDocument =>
  apply(
    document,
    patches.map(({ path, ...patch }) => ({ ...patch, path: [...path] }))
  );
