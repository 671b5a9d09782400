// The order of elements is a fractional key on each of them: a new one fits between any two
// without touching the others, so that two people's edits can be merged.
import { generateNKeysBetween } from 'fractional-indexing';

export interface Ordered {
  readonly id: string;
  readonly order: string;
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Order keys compare by character code (not by language); equal keys by id. */
export const compareByOrder = (a: Ordered, b: Ordered): number =>
  compareText(a.order, b.order) || compareText(a.id, b.id);

/** A new list of the elements, of a list or of a document's record, in their order. */
export const sortByOrder = <T extends Ordered>(
  elements: Readonly<Record<string, T>> | readonly T[]
): T[] => Object.values<T>(elements).sort(compareByOrder);

/** A key written by hand need not be one that the library knows; any text still has room after it. */
const betweenAnyTexts = (before: string, after: string | null): string => {
  for (let zeros = ''; zeros.length < 8; zeros += '0') {
    const candidate = `${before}${zeros}V`;
    if (after === null || candidate < after) return candidate;
  }
  return `${before}V`;
};

const isRising = (before: string | null, keys: readonly string[], after: string | null): boolean =>
  keys.every((key, index) => key > (keys[index - 1] ?? before ?? '')) &&
  (after === null || keys.every((key) => key < after));

/** `count` keys in rising order between two keys; null stands for the start or the end of the list.
 *  Keys that are equal or the wrong way round, as merging can leave them, leave no room: the new
 *  ones then come right after `before`. */
export const ordersBetween = (
  before: string | null,
  after: string | null,
  count: number
): string[] => {
  const limit = before !== null && after !== null && before >= after ? null : after;
  try {
    const keys = generateNKeysBetween(before, limit, count);
    if (isRising(before, keys, limit)) return keys;
  } catch {
    // Not keys of the library's kind.
  }
  const keys: string[] = [];
  while (keys.length < count) keys.push(betweenAnyTexts(keys.at(-1) ?? before ?? '', limit));
  return keys;
};

/** One key between two keys; see `ordersBetween`. */
export const orderBetween = (before: string | null, after: string | null): string =>
  ordersBetween(before, after, 1)[0] ?? betweenAnyTexts(before ?? '', after);

/** The key that puts a new element at `index` of a list that is sorted already. Of elements with
 *  equal keys, the new one comes after all of them. */
export const orderAt = (sorted: readonly Ordered[], index: number): string => {
  const before = sorted[index - 1]?.order ?? null;
  const after = sorted.slice(index).find((element) => before === null || element.order > before);
  return orderBetween(before, after?.order ?? null);
};

/** The key that puts a new element last. */
export const orderAtEnd = (
  elements: Readonly<Record<string, Ordered>> | readonly Ordered[]
): string => {
  let last: string | null = null;
  for (const { order } of Object.values<Ordered>(elements)) {
    if (last === null || order > last) last = order;
  }
  return orderBetween(last, null);
};
