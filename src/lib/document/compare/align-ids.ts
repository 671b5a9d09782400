// Two documents of one chassis may have been begun apart, from a list each: the same wire then has another id.
// What has a number or a reference of its own on both sides is taken for the same thing.
import { collections, type ElementName } from '../edit.ts';
import { isRecord, type JsonRecord } from '../plain-json.ts';
import type { ChassisDocument } from '../schema.ts';

const recordOf = (document: ChassisDocument, kind: ElementName): JsonRecord =>
  document[collections[kind]] as JsonRecord;

const labelOf = (element: unknown): string => {
  if (!isRecord(element)) return '';
  const label = element['number'] ?? element['reference'] ?? element['name'];
  return typeof label === 'string' ? label : '';
};

/** Labels that one element alone bears, to its id. */
const byLabel = (record: JsonRecord, without: ReadonlySet<string>): Map<string, string> => {
  const found = new Map<string, string>();
  const twice = new Set<string>();
  for (const [id, element] of Object.entries(record)) {
    const label = labelOf(element);
    if (label === '') continue;
    if (found.has(label)) twice.add(label);
    found.set(label, id);
  }
  for (const [label, id] of found) if (twice.has(label) || without.has(id)) found.delete(label);
  return found;
};

const pairIds = (before: JsonRecord, after: JsonRecord, ids: Map<string, string>): void => {
  const both = new Set(Object.keys(before).filter((id) => Object.hasOwn(after, id)));
  const left = byLabel(before, both);
  for (const [label, id] of byLabel(after, both)) {
    const known = left.get(label);
    if (known !== undefined) ids.set(id, known);
  }
};

const renamed = (value: unknown, ids: ReadonlyMap<string, string>): unknown => {
  if (typeof value === 'string') return ids.get(value) ?? value;
  if (Array.isArray(value)) return value.map((item: unknown) => renamed(item, ids));
  if (!isRecord(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, item]) => [ids.get(key) ?? key, renamed(item, ids)])
  );
};

/** `after` with the ids of `before` wherever both mean the same thing by its label; as it is where the ids are
 *  the same already. */
export const alignIds = (before: ChassisDocument, after: ChassisDocument): ChassisDocument => {
  const ids = new Map<string, string>();
  for (const kind of Object.keys(collections) as ElementName[])
    pairIds(recordOf(before, kind), recordOf(after, kind), ids);
  for (const [id, part] of Object.entries(after.parts)) {
    const known = before.parts[ids.get(id) ?? id];
    if (known) pairIds(known.terminals, part.terminals, ids);
  }
  return ids.size === 0 ? after : (renamed(after, ids) as ChassisDocument);
};
