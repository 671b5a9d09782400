// What is the same as before is given again as the very same object: whatever comes later in the
// study can then tell at a glance that it need not look again.

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
