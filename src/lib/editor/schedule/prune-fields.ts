// Fields of an edit without those that would change nothing, so that a step of undo is named after
// what it did and not after all that stood in the cell.
import type { Changes } from '#document/edits.ts';
import type { Wire } from '#document/index.ts';

type Plain = Readonly<Record<string, unknown>>;

const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const prune = (fields: Plain, element: Plain): Plain => {
  const kept: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(fields)) {
    const now = element[key];
    if (value === null ? now === undefined : value === now) continue;
    if (isPlain(value) && isPlain(now)) {
      const inner = prune(value, now);
      if (Object.keys(inner).length > 0) kept[key] = inner;
    } else {
      kept[key] = value;
    }
  }
  return kept;
};

/** The fields that differ from the wire; null counts as a key that is not there. */
export const pruneFields = (fields: Changes<Wire>, wire: Wire): Changes<Wire> =>
  prune(fields, wire) as Changes<Wire>;
