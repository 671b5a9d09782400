// A drag makes a patch for every move of the mouse, and only the last one counts.
import type { Patch } from './patch.ts';

const isPrefix = (shorter: Patch['path'], longer: Patch['path']): boolean =>
  shorter.length <= longer.length && shorter.every((key, index) => key === longer[index]);

/** Lists count their entries: a patch in one of them depends on those before it. */
const isInList = ({ path }: Patch): boolean =>
  path.some((key) => typeof key === 'number') || path.at(-1) === 'length';

const isScalarReplacement = (patch: Patch): boolean =>
  patch.op === 'replace' && !isInList(patch) && typeof patch.value !== 'object';

/** A drag of many parts: nothing can depend on a patch that puts a number or a text in place. */
const keepLastOfEachPath = (patches: readonly Patch[]): Patch[] => [
  ...new Map(patches.map((patch) => [patch.path.join('\0'), patch])).values()
];

/** Patches with the same effect, without the replacements that a later patch writes over. */
export const compactPatches = (patches: readonly Patch[]): Patch[] => {
  if (patches.every(isScalarReplacement)) return keepLastOfEachPath(patches);
  return patches.filter((patch, index) => {
    if (patch.op !== 'replace' || isInList(patch)) return true;
    for (const later of patches.slice(index + 1)) {
      // The later patch writes over this one, or over what holds it.
      if (isPrefix(later.path, patch.path)) return false;
      // The later patch works inside what this one put there.
      if (isPrefix(patch.path, later.path)) return true;
    }
    return true;
  });
};
