// A map with a few values put over those of another, which is shared and not copied. Which keys there are,
// and their order, is for the map below to say.

class OverlayMap<Key, Value> implements ReadonlyMap<Key, Value> {
  readonly below: ReadonlyMap<Key, Value>;
  readonly above: ReadonlyMap<Key, Value>;

  constructor(below: ReadonlyMap<Key, Value>, above: ReadonlyMap<Key, Value>) {
    this.below = below;
    this.above = above;
  }

  get size(): number {
    return this.below.size;
  }

  get(key: Key): Value | undefined {
    return this.above.get(key) ?? this.below.get(key);
  }

  has(key: Key): boolean {
    return this.below.has(key);
  }

  forEach(visit: (value: Value, key: Key, map: ReadonlyMap<Key, Value>) => void): void {
    for (const [key, value] of this.below) visit(this.above.get(key) ?? value, key, this);
  }

  *entries(): Generator<[Key, Value], undefined> {
    for (const [key, value] of this.below) yield [key, this.above.get(key) ?? value];
    return undefined;
  }

  keys(): MapIterator<Key> {
    return this.below.keys();
  }

  *values(): Generator<Value, undefined> {
    for (const [key, value] of this.below) yield this.above.get(key) ?? value;
    return undefined;
  }

  [Symbol.iterator](): Generator<[Key, Value], undefined> {
    return this.entries();
  }
}

/** More than that share of the keys is copied: reading is then quicker. */
const mostAbove = 1 / 16;

/** The map with other values under some of its keys; undefined where those are so many that a copy serves
 *  better. Overlays do not pile up: one over another is one over what that one lies on.
 *  @param keys keys of the map, each once
 *  @param values in the order of the keys, none of them undefined */
export function overlay<Key, Value>(
  map: ReadonlyMap<Key, Value>,
  keys: readonly Key[],
  values: readonly (Value | undefined)[]
): ReadonlyMap<Key, Value> | undefined {
  const [below, old] = map instanceof OverlayMap ? layersOf<Key, Value>(map) : [map, undefined];
  const most = below.size * mostAbove;
  if (keys.length + (old?.size ?? 0) > most) return undefined;
  const above = new Map(old);
  keys.forEach((key, n) => {
    const value = values[n];
    if (value !== undefined) above.set(key, value);
  });
  return new OverlayMap(below, above);
}

const layersOf = <Key, Value>(
  map: OverlayMap<Key, Value>
): readonly [ReadonlyMap<Key, Value>, ReadonlyMap<Key, Value>] => [map.below, map.above];
