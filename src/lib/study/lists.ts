// Things gathered under a key.

export type Lists<Key, Item> = Map<Key, Item[]>;

/** The list under a key, made where there is none yet. */
export function listAt<Key, Item>(lists: Lists<Key, Item>, key: Key): Item[] {
  const known = lists.get(key);
  if (known) return known;
  const made: Item[] = [];
  lists.set(key, made);
  return made;
}
