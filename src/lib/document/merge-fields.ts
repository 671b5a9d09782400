// How the fields of an edit enter an element, as RFC 7396 (JSON Merge Patch) has it: objects are merged key
// by key, null takes a key away, anything else takes the place of what was there.
import type { Fields } from './edit.ts';
import { isRecord, isSameJson, type JsonRecord } from './plain-json.ts';

const withoutNulls = (value: unknown): unknown => {
  if (!isRecord(value)) return value;
  const kept: JsonRecord = {};
  for (const [key, item] of Object.entries(value)) {
    if (item !== null) kept[key] = withoutNulls(item);
  }
  return kept;
};

/** Merges `fields` into `target` in place. What is equal already is left alone. */
export const mergeFields = (target: JsonRecord, fields: Fields): void => {
  for (const [key, value] of Object.entries(fields)) {
    const old = Object.hasOwn(target, key) ? target[key] : undefined;
    if (value === null) Reflect.deleteProperty(target, key);
    else if (isRecord(value) && isRecord(old)) mergeFields(old, value);
    else if (!isSameJson(old, value)) target[key] = withoutNulls(value);
  }
};

/** One set of fields that does what two do one after the other, or undefined where no set can: null
 *  in the first and an object in the second takes the old object away, and merging would not. */
export const joinFields = (first: Fields, second: Fields): Fields | undefined => {
  const joined: Record<string, unknown> = { ...first };
  for (const [key, value] of Object.entries(second)) {
    const old = Object.hasOwn(first, key) ? first[key] : undefined;
    if (isRecord(value) && isRecord(old)) {
      const inner = joinFields(old, value);
      if (inner === undefined) return undefined;
      joined[key] = inner;
    } else if (isRecord(value) && old !== undefined) return undefined;
    else joined[key] = value;
  }
  return joined;
};
