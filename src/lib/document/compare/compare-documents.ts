// Two documents side by side: what was added, removed and changed, element by element and field by field.
import { collections, sections, type ElementName, type SectionName } from '../edit.ts';
import { elementInWords } from '../edit-name.ts';
import { isRecord, isSameJson, type JsonRecord } from '../plain-json.ts';
import type { Id } from '../primitives.ts';
import { compareRevisions } from '../revision.ts';
import type { ChassisDocument } from '../schema.ts';
import { alignIds } from './align-ids.ts';
import { leavesOf, pathKey, type Path } from './leaves.ts';
import { distinctWords, pathInWords } from './value-words.ts';

export interface FieldChange {
  readonly path: Path;
  /** "gauge", "second end". */
  readonly field: string;
  readonly before: unknown;
  readonly after: unknown;
  /** "gauge: 20 AWG instead of 22 AWG". */
  readonly words: string;
}

export interface ElementChange {
  readonly kind: ElementName | SectionName;
  /** Of the element; the section's own name for a section. */
  readonly id: Id;
  /** "wire 12", "part V3", "the set". */
  readonly name: string;
  readonly what: 'added' | 'removed' | 'changed';
  /** Empty unless changed. */
  readonly fields: readonly FieldChange[];
}

const sectionNames: Readonly<Record<SectionName, string>> = {
  identity: 'the set',
  policy: 'what the judging goes by',
  proof: 'what was measured'
};

const asRecord = (value: unknown): JsonRecord => (isRecord(value) ? value : {});

/** The fields that differ between two states of one element. */
export const compareFields = (
  before: unknown,
  after: unknown,
  [documentBefore, documentAfter]: readonly [ChassisDocument, ChassisDocument]
): FieldChange[] => {
  const [older, newer] = [new Map<string, unknown>(), new Map<string, unknown>()];
  const paths = new Map<string, Path>();
  for (const [map, value] of [
    [older, before],
    [newer, after]
  ] as const)
    for (const [path, leaf] of leavesOf(asRecord(value))) {
      paths.set(pathKey(path), path);
      map.set(pathKey(path), leaf);
    }
  return [...paths].flatMap(([key, path]): FieldChange[] => {
    const [old, now] = [older.get(key), newer.get(key)];
    if (isSameJson(old, now)) return [];
    const field = pathInWords(path, after ?? before);
    const [is, was] = distinctWords(path, [now, documentAfter], [old, documentBefore]);
    return [{ path, field, before: old, after: now, words: `${field}: ${is} instead of ${was}` }];
  });
};

const compareKind = (
  kind: ElementName,
  documents: readonly [ChassisDocument, ChassisDocument]
): ElementChange[] => {
  const [before, after] = documents.map(
    (document) => document[collections[kind]] as JsonRecord
  ) as [JsonRecord, JsonRecord];
  const ids = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return ids.flatMap((id): ElementChange[] => {
    const [was, is] = [before[id], after[id]];
    const name = elementInWords(kind, asRecord(is ?? was));
    if (was === undefined) return [{ kind, id, name, what: 'added', fields: [] }];
    if (is === undefined) return [{ kind, id, name, what: 'removed', fields: [] }];
    if (was === is) return [];
    const fields = compareFields(was, is, documents);
    return fields.length === 0 ? [] : [{ kind, id, name, what: 'changed', fields }];
  });
};

/** The first is the other's ancestor, and so on, in a sentence. */
export const standingInWords = (before: ChassisDocument, after: ChassisDocument): string =>
  ({
    same: 'Both are the same revision.',
    'first is later': 'The first was made from the second.',
    'second is later': 'The second was made from the first.',
    parted: 'Both were made from an earlier revision, each by itself.',
    unrelated: 'They have no revision in common: like is found by number and reference.'
  })[compareRevisions(before, after)];

const numeric = new Intl.Collator('en', { numeric: true });
const rank = { added: 0, removed: 1, changed: 2 } as const;

/** What is different in `after`: sections first, then wires and parts, then the rest; by what happened and name.
 *  Ids of `after` are those of `before` where both mean the same thing. */
export const compareDocuments = (
  before: ChassisDocument,
  after: ChassisDocument
): readonly ElementChange[] => {
  const documents = [before, alignIds(before, after)] as const;
  const inSections = sections.flatMap((section): ElementChange[] => {
    const fields = compareFields(documents[0][section], documents[1][section], documents);
    const name = sectionNames[section];
    return fields.length === 0
      ? []
      : [{ kind: section, id: section, name, what: 'changed', fields }];
  });
  const kinds = Object.keys(collections) as ElementName[];
  const inOrder: ElementName[] = [
    'wire',
    'part',
    ...kinds.filter((kind) => kind !== 'wire' && kind !== 'part')
  ];
  return [
    ...inSections,
    ...inOrder.flatMap((kind) =>
      compareKind(kind, documents).sort(
        (a, b) => rank[a.what] - rank[b.what] || numeric.compare(a.name, b.name)
      )
    )
  ];
};

/** "wire 12 changed: gauge: 20 AWG instead of 22 AWG; second end: V3-5 instead of V3-4". */
export const changeInOneLine = ({ name, what, fields }: ElementChange): string =>
  what === 'changed'
    ? `${name} changed: ${fields.map(({ words }) => words).join('; ')}`
    : `${name} ${what}`;

/** How many of what: "2 added, 1 removed, 5 changed", or that nothing differs. */
export const countChanges = (changes: readonly ElementChange[]): string => {
  const counts = (['added', 'removed', 'changed'] as const).flatMap((what) => {
    const count = changes.filter((change) => change.what === what).length;
    return count === 0 ? [] : [`${count} ${what}`];
  });
  return counts.length === 0 ? 'nothing differs' : counts.join(', ');
};
