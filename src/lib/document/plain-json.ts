// Values that come from outside, held to what JSON can say: an edit or a file then means the same
// before and after it has been written down, and no key reaches an object's prototype.

/** Keys that are refused anywhere in a document or an edit. */
export const isDangerousKey = (key: string): boolean =>
  key === '__proto__' || key === 'constructor' || key === 'prototype';

/** Levels of objects and lists within each other; a document needs seven. */
export const depthLimit = 32;

export type JsonRecord = Record<string, unknown>;

/** True for an object that is neither a list nor an instance of a class. */
export const isRecord = (value: unknown): value is JsonRecord => {
  if (typeof value !== 'object' || value === null) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
};

/** A value is not JSON. `message` says what and where. */
export class NotJson extends Error {
  override name = 'NotJson';
}

/** A deep copy as JSON would bring it back: keys without a value are left out, -0 becomes 0.
 *  Throws `NotJson` on a dangerous key, a number that is not finite, anything that JSON has no
 *  word for, and below `depthLimit` levels. */
export const copyJson = (value: unknown, path: readonly string[] = []): unknown => {
  const fail = (what: string): never => {
    throw new NotJson(`${path.join('.') || 'the value'} ${what}`);
  };
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value;
  if (typeof value === 'number') {
    return Number.isFinite(value) ? value + 0 : fail(`is ${value}, which is no amount`);
  }
  if (path.length > depthLimit) fail(`lies deeper than ${depthLimit} levels`);
  if (Array.isArray(value)) {
    return value.map((item: unknown, index) => copyJson(item, [...path, String(index)]));
  }
  if (!isRecord(value)) return fail(`is a ${typeof value}, which a document cannot hold`);
  const copy: JsonRecord = {};
  for (const [key, item] of Object.entries(value)) {
    if (isDangerousKey(key)) fail(`has the key "${key}", which is refused everywhere`);
    if (item !== undefined) copy[key] = copyJson(item, [...path, key]);
  }
  return copy;
};

/** True where two JSON values say the same, whatever the order of their keys. */
export const isSameJson = (a: unknown, b: unknown): boolean => {
  if (a === b) return true;
  if (Array.isArray(a) && Array.isArray(b)) {
    return a.length === b.length && a.every((item, index) => isSameJson(item, b[index]));
  }
  if (!isRecord(a) || !isRecord(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && isSameJson(a[key], b[key]))
  );
};
