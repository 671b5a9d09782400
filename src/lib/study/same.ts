// What is the same as before is given again as the very same object: whatever comes later in the
// study can then tell at a glance that it need not look again.

import { overlay } from './overlay-map.ts';

/** True where two lists hold the very same items in the same order. */
export const sameItems = <Item>(a: readonly Item[], b: readonly Item[]): boolean => {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let n = 0; n < a.length; n++) if (a[n] !== b[n]) return false;
  return true;
};

/** The old list where the new one holds the same items. */
export const keepItems = <Item>(
  before: readonly Item[] | undefined,
  now: readonly Item[]
): readonly Item[] => (before && sameItems(before, now) ? before : now);

/** True for two plain objects whose fields are equal, one level deep. */
export function sameFields(a: object, b: object): boolean {
  const names = Object.keys(a);
  if (names.length !== Object.keys(b).length) return false;
  const fieldsA = a as Readonly<Record<string, unknown>>;
  const fieldsB = b as Readonly<Record<string, unknown>>;
  return names.every((name) => Object.hasOwn(fieldsB, name) && fieldsA[name] === fieldsB[name]);
}

/** The old object where the new one has equal fields. */
export const keepFields = <T extends object>(before: T | null | undefined, now: T): T =>
  before && sameFields(before, now) ? before : now;

/** The old set where the new one has the same members. */
export const keepSet = <Item>(
  before: ReadonlySet<Item> | undefined,
  now: ReadonlySet<Item>
): ReadonlySet<Item> =>
  before && before.size === now.size && [...now].every((item) => before.has(item)) ? before : now;

/** The old map where the new one has the same entries in the same order. */
export function keepMap<Key, Value>(
  before: ReadonlyMap<Key, Value> | undefined,
  now: ReadonlyMap<Key, Value>
): ReadonlyMap<Key, Value> {
  if (before?.size !== now.size) return now;
  const old = before.entries();
  for (const [key, value] of now) {
    const next = old.next().value;
    if (!next || next[0] !== key || next[1] !== value) return now;
  }
  return before;
}

/** What a patch changed, by the patched map: whoever compares the two need not go through them. */
const patches = new WeakMap<object, Patch>();

interface Patch {
  /** Weak, or every map would hold on to all those before it. */
  readonly of: WeakRef<object>;
  readonly keys: readonly unknown[];
}

/** A map with some of its entries made again: the old map where none of them came out otherwise.
 *  @param make undefined takes the entry away */
export function patchMap<Key, Value>(
  before: ReadonlyMap<Key, Value> | undefined,
  touched: Iterable<Key>,
  make: (key: Key, was: Value | undefined) => Value | undefined
): ReadonlyMap<Key, Value> {
  const changed: Key[] = [];
  const made: (Value | undefined)[] = [];
  let isOverlay = true;
  for (const key of touched) {
    const was = before?.get(key);
    const now = make(key, was);
    if (now === was) continue;
    changed.push(key);
    made.push(now);
    if (was === undefined || now === undefined || now === null) isOverlay = false;
  }
  if (before && changed.length === 0) return before;
  const patched = (before && isOverlay ? overlay(before, changed, made) : undefined) ?? copy();
  if (before) patches.set(patched, { of: new WeakRef(before), keys: changed });
  return patched;

  function copy(): ReadonlyMap<Key, Value> {
    const all = new Map(before);
    changed.forEach((key, n) => {
      const value = made[n];
      if (value === undefined) all.delete(key);
      else all.set(key, value);
    });
    return all;
  }
}

/** Keys whose values are not what they were, and those that are new. */
export function changedKeys<Key, Value>(
  before: ReadonlyMap<Key, Value> | undefined,
  now: ReadonlyMap<Key, Value>
): ReadonlySet<Key> {
  const changed = new Set<Key>();
  if (before === now) return changed;
  const patched = before && (patchBetween(before, now) ?? patchBetween(now, before));
  if (patched) {
    for (const key of patched) if (now.has(key as Key)) changed.add(key as Key);
    return changed;
  }
  for (const [key, value] of now) if (before?.get(key) !== value) changed.add(key);
  return changed;
}

/** The keys by which one map was patched out of another; undefined where it was not. */
function patchBetween(before: object, now: object): readonly unknown[] | undefined {
  const patch = patches.get(now);
  return patch?.of.deref() === before ? patch.keys : undefined;
}
