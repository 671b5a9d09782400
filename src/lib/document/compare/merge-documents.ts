// A club member's copy taken in: what only one of the two changed since the revision that both came from is
// taken; what both changed, each in another way, is a clash that a person decides.
import { collections, sections, type ElementName, type SectionName } from '../edit.ts';
import { elementInWords } from '../edit-name.ts';
import { isRecord, isSameJson, type JsonRecord } from '../plain-json.ts';
import type { Id } from '../primitives.ts';
import { hashOfDocument } from '../revision.ts';
import { documentSchema, type ChassisDocument } from '../schema.ts';
import { isLeaf, pathKey, type Path } from './leaves.ts';
import { leaveOut, leftOutOf } from './share-copy.ts';
import { pathInWords, valueInWords } from './value-words.ts';

export interface Clash {
  /** Stable: by it the choice is told. */
  readonly key: string;
  readonly kind: ElementName | SectionName;
  readonly id: Id;
  /** "wire 12: gauge", or the element alone where one side removed it. */
  readonly what: string;
  readonly mine: string;
  readonly theirs: string;
}
export type Choice = 'mine' | 'theirs';

export interface Merge {
  readonly document: ChassisDocument;
  readonly clashes: readonly Clash[];
  /** Choices made for what would not hold together are left as mine; what that was, in words. */
  readonly problem: string | null;
}

const nothing = Symbol('nothing');
const valueOf = (record: unknown, key: string): unknown =>
  isRecord(record) && Object.hasOwn(record, key) ? record[key] : undefined;

interface Place {
  readonly kind: ElementName | SectionName;
  readonly id: Id;
  readonly name: string;
}

class Merger {
  readonly clashes: Clash[] = [];
  readonly #choices: ReadonlyMap<string, Choice>;
  readonly #documents: readonly [mine: ChassisDocument, theirs: ChassisDocument];

  constructor(
    choices: ReadonlyMap<string, Choice>,
    documents: readonly [ChassisDocument, ChassisDocument]
  ) {
    this.#choices = choices;
    this.#documents = documents;
  }

  #clash(place: Place, path: Path, mine: unknown, theirs: unknown): unknown {
    const key = [place.kind, place.id, pathKey(path)].join('\u0000');
    const [mineIn, theirsIn] = this.#documents;
    const isWhole = path.length === 0;
    const say = (value: unknown, document: ChassisDocument): string =>
      isWhole
        ? value === undefined
          ? 'removed'
          : 'kept, with changes'
        : valueInWords(path, value, document);
    const field = isWhole
      ? ''
      : `: ${pathInWords(path, isRecord(mine) ? mine : this.#elementOf(place))}`;
    this.clashes.push({
      key,
      kind: place.kind,
      id: place.id,
      what: `${place.name}${field}`,
      mine: say(mine, mineIn),
      theirs: say(theirs, theirsIn)
    });
    return this.#choices.get(key) === 'theirs' ? theirs : mine;
  }

  #elementOf({ kind, id }: Place): unknown {
    const [mine] = this.#documents;
    return kind in collections
      ? (mine[collections[kind as ElementName]] as JsonRecord)[id]
      : mine[kind as SectionName];
  }

  /** What comes of a value; undefined is none. */
  value(place: Place, path: Path, base: unknown, mine: unknown, theirs: unknown): unknown {
    if (isSameJson(mine, theirs)) return mine;
    if (isSameJson(base, theirs)) return mine;
    if (isSameJson(base, mine)) return theirs;
    const key = path.at(-1) ?? '';
    // Where somebody put an element in the row is nothing to ask anybody about.
    if (key === 'order') return mine;
    if (isRecord(mine) && isRecord(theirs) && !isLeaf(key, mine) && !isLeaf(key, theirs))
      return this.record(place, path, base, mine, theirs);
    return this.#clash(place, path, mine, theirs);
  }

  record(
    place: Place,
    path: Path,
    base: unknown,
    mine: JsonRecord,
    theirs: JsonRecord
  ): JsonRecord {
    const merged: JsonRecord = {};
    for (const key of new Set([...Object.keys(mine), ...Object.keys(theirs)])) {
      const value = this.value(
        place,
        [...path, key],
        valueOf(base, key),
        valueOf(mine, key),
        valueOf(theirs, key)
      );
      if (value !== undefined) merged[key] = value;
    }
    return merged;
  }
}

/** What both documents say alike: stands for the common revision where none is at hand, so that every
 *  difference is asked about, and what only one of them has is kept. */
export const sharedPart = (mine: ChassisDocument, theirs: ChassisDocument): ChassisDocument => {
  const shared = (a: unknown, b: unknown): unknown => {
    if (isSameJson(a, b)) return a;
    if (!isRecord(a) || !isRecord(b)) return nothing;
    return Object.fromEntries(
      Object.entries(a).flatMap(([key, value]) => {
        if (!Object.hasOwn(b, key)) return [];
        const both = shared(value, b[key]);
        return both === nothing ? [] : [[key, both]];
      })
    );
  };
  return shared(mine, theirs) as ChassisDocument;
};

/** The two copies as one. `document` has mine for every clash that has not been decided for theirs.
 *  @param base the revision that both came from
 *  @param choices by the key of the clash */
export const mergeDocuments = (
  base: ChassisDocument,
  mine: ChassisDocument,
  theirs: ChassisDocument,
  choices: ReadonlyMap<string, Choice> = new Map()
): Merge => {
  // What the copy was given without is not what its owner took away.
  const from = leaveOut(base, leftOutOf(theirs));
  const merger = new Merger(choices, [mine, theirs]);
  const merged: JsonRecord = { ...mine };
  for (const section of sections) {
    const name = { identity: 'the set', policy: 'the rules', proof: 'what was measured' }[section];
    const place = { kind: section, id: section, name } as const;
    const value = merger.value(place, [], from[section], mine[section], theirs[section]);
    if (value === undefined) Reflect.deleteProperty(merged, section);
    else merged[section] = value;
  }
  for (const [kind, collection] of Object.entries(collections) as [
    ElementName,
    keyof ChassisDocument
  ][]) {
    const [was, own, other] = [from, mine, theirs].map(
      (document) => document[collection] as JsonRecord
    );
    const elements: JsonRecord = {};
    for (const id of new Set([...Object.keys(own ?? {}), ...Object.keys(other ?? {})])) {
      const element = valueOf(own, id) ?? valueOf(other, id);
      const place = {
        kind,
        id,
        name: elementInWords(kind, isRecord(element) ? element : undefined)
      };
      const value = merger.value(place, [], valueOf(was, id), valueOf(own, id), valueOf(other, id));
      if (value !== undefined) elements[id] = value;
    }
    merged[collection] = elements;
  }
  const lineage = [...mine.lineage];
  for (const hash of [...theirs.lineage, hashOfDocument(theirs)])
    if (!lineage.includes(hash)) lineage.push(hash);
  const parsed = documentSchema.safeParse({ ...merged, lineage: lineage.slice(-10_000) });
  if (parsed.success) return { document: parsed.data, clashes: merger.clashes, problem: null };
  const [issue] = parsed.error.issues;
  const place = issue?.path.join(' ') ?? 'the document';
  return {
    document: mine,
    clashes: merger.clashes,
    problem: `the two do not fit together at ${place}: choose the other side there`
  };
};

/** Which of some earlier states both copies came from: the latest in the other's lineage. Null where none is.
 *  @param states hashes of the states at hand */
export const findCommonRevision = (
  theirs: ChassisDocument,
  states: readonly string[]
): string | null => {
  const known = new Set(states);
  return theirs.lineage.toReversed().find((hash) => known.has(hash)) ?? null;
};
