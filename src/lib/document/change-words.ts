// What changed from one state of a document to another, in words: for the list of earlier states.
import { collections, type ElementName, type Fields } from './edit.ts';
import { elementInWords, fieldsInWords } from './edit-name.ts';
import { isRecord, isSameJson, type JsonRecord } from './plain-json.ts';

const plurals: Readonly<Record<ElementName, string>> = {
  unit: 'units',
  part: 'parts',
  wire: 'wires',
  cable: 'cables',
  support: 'supports',
  photo: 'photos',
  pattern: 'patterns',
  callout: 'callouts',
  stock: 'shelf items'
};
/** With more of a kind than this only the count is told. */
const mostNames = 4;

const recordIn = (value: unknown, key: string): JsonRecord => {
  const inner = isRecord(value) ? value[key] : undefined;
  return isRecord(inner) ? inner : {};
};

/** The keys whose values differ, with what stands there now. */
const changedFields = (before: JsonRecord, after: JsonRecord): Fields => {
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
  return Object.fromEntries(
    [...keys].filter((key) => !isSameJson(before[key], after[key])).map((key) => [key, after[key]])
  );
};

/** Records of fields one level down are told by what differs in them, as an edit is. */
const changeOf = (before: JsonRecord, after: JsonRecord): Fields =>
  Object.fromEntries(
    Object.entries(changedFields(before, after)).map(([key, value]) => {
      const former = before[key];
      return [key, isRecord(value) && isRecord(former) ? changedFields(former, value) : value];
    })
  );

const listed = (kind: ElementName, elements: readonly unknown[]): string => {
  const [first] = elements;
  if (elements.length === 1) return elementInWords(kind, isRecord(first) ? first : undefined);
  const count = `${elements.length} ${plurals[kind]}`;
  if (elements.length > mostNames) return count;
  const names = elements.map((element) =>
    elementInWords(kind, isRecord(element) ? element : undefined).replace(`${kind} `, '')
  );
  return `${count} (${names.join(', ')})`;
};

const changedOne = (kind: ElementName, before: unknown, after: unknown): string => {
  if (!isRecord(before) || !isRecord(after)) return `${listed(kind, [after])} changed`;
  const words = fieldsInWords(kind, changeOf(before, after)).filter((word) => word !== 'order');
  const told = words.length > 3 ? `${words.length} fields` : words.join(', ');
  return `${listed(kind, [after])} changed${told === '' ? '' : `: ${told}`}`;
};

const wordsOfKind = (kind: ElementName, before: JsonRecord, after: JsonRecord): string[] => {
  const added = Object.keys(after).filter((id) => !Object.hasOwn(before, id));
  const removed = Object.keys(before).filter((id) => !Object.hasOwn(after, id));
  const changed = Object.keys(after).filter(
    (id) => Object.hasOwn(before, id) && !isSameJson(before[id], after[id])
  );
  const of = (ids: readonly string[], record: JsonRecord) => ids.map((id) => record[id]);
  const [only = ''] = changed;
  return [
    ...(added.length > 0 ? [`${listed(kind, of(added, after))} added`] : []),
    ...(removed.length > 0 ? [`${listed(kind, of(removed, before))} removed`] : []),
    ...(changed.length === 1 ? [changedOne(kind, before[only], after[only])] : []),
    ...(changed.length > 1 ? [`${listed(kind, of(changed, after))} changed`] : [])
  ];
};

const whoseSection = { identity: "the set's", policy: "the rules'", proof: "the tests'" } as const;

/** What is different in `after`, a phrase each: "wire 12 changed: colour", "3 wires (4, 5, 6) added". Both are
 *  documents as JSON holds them; neither has to be valid, so that states of an older version are told too. */
export const changeInWords = (before: unknown, after: unknown): string[] => {
  const words: string[] = [];
  for (const [section, whose] of Object.entries(whoseSection)) {
    const fields = changeOf(recordIn(before, section), recordIn(after, section));
    const names = fieldsInWords('section', fields);
    if (names.length > 0) words.push(`${whose} ${names.join(', ')} changed`);
  }
  for (const [kind, name] of Object.entries(collections) as [ElementName, string][]) {
    words.push(...wordsOfKind(kind, recordIn(before, name), recordIn(after, name)));
  }
  return words;
};
