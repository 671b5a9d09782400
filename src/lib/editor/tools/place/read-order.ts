// What is to be placed, as people write it: "6CG7", "V5 6CG7 horizontal oscillator", "strip 5 ground 3",
// "R12 47k", "plug red blue black", "3 x strip 5". A comma or a new line begins the next part.
import type { Pattern } from '#document/index.ts';
import {
  findReferenceLetter,
  findTubeBase,
  findTubeType,
  parseColour,
  type TubeBase
} from '#handbook/index.ts';
import { partSorts, sortOfKind, type PartSort } from './part-sorts.ts';

export interface PartOrder {
  readonly sort: PartSort;
  readonly pattern: Pattern | null;
  /** As written; null: the next one that is free. */
  readonly reference: string | null;
  readonly type: string | null;
  /** Of a tube that the handbook does not know, or of no type yet. */
  readonly base: TubeBase | null;
  readonly value: string | null;
  readonly does: string | null;
  readonly names: readonly string[];
  /** Names of terminals that are on the metal. */
  readonly grounded: readonly string[];
}

export type OrderReading =
  | { readonly ok: true; readonly orders: readonly PartOrder[] }
  | { readonly ok: false; readonly problem: string };

/** More than this at one press is a slip of the hand. */
const mostParts = 200;
const mostTerminals = 200;

const tubeLike = /^\d{1,2}[a-z]{1,3}\d{1,3}[a-z]{0,4}$/i;

const numbered = (count: number): string[] =>
  Array.from({ length: count }, (_, index) => String(index + 1));

/** Names that are all different: the second "black" is "black 2". */
const eachOnce = (names: readonly string[]): string[] => {
  const seen = new Map<string, number>();
  return names.map((name) => {
    const count = (seen.get(name.toLowerCase()) ?? 0) + 1;
    seen.set(name.toLowerCase(), count);
    return count === 1 ? name : `${name} ${count}`;
  });
};

const blankOrder = (sort: PartSort): PartOrder => ({
  sort,
  pattern: null,
  reference: null,
  type: null,
  base: null,
  value: null,
  does: null,
  names: sort.names ?? numbered(sort.count),
  grounded: []
});

class Problem extends Error {}

const wordsOrNull = (words: readonly string[]): string | null =>
  words.length === 0 ? null : words.join(' ');

/** A tube by its type or base, and what is said of it after that; null where it is none. */
const readTube = (words: readonly string[], sort: PartSort): PartOrder | null => {
  for (const count of [3, 2, 1]) {
    const name = words.slice(0, count).join(' ');
    const type = words.length >= count && count === 1 ? findTubeType(name) : null;
    const base = type === null && words.length >= count ? findTubeBase(name) : null;
    if (type === null && base === null) continue;
    const isPicture = type?.topCap === 'second anode';
    const own = isPicture ? (sortOfKind('picture tube') ?? sort) : sort;
    const does = wordsOrNull(words.slice(count));
    return { ...blankOrder(own), type: type ? name.toUpperCase() : null, base, does, names: [] };
  }
  const [first = '', ...rest] = words;
  if (!tubeLike.test(first)) return null;
  const known = readTube(rest, sort);
  if (known?.base) return { ...known, type: first.toUpperCase() };
  throw new Problem(
    `the handbook has no ${first.toUpperCase()}: write its base as well, as in "${first} noval"`
  );
};

const readTerminals = (words: readonly string[], sort: PartSort): Partial<PartOrder> => {
  const at = words.findIndex((word) => /^(ground|grounded|gnd)$/i.test(word));
  const listed = at < 0 ? words : words.slice(0, at);
  const grounded = at < 0 ? [] : words.slice(at + 1);
  const [first] = listed;
  const isCount = first !== undefined && listed.length === 1 && /^\d{1,4}$/.test(first);
  const count = Number(first);
  if (isCount && (count < 1 || count > mostTerminals)) {
    throw new Problem(`a part can have 1 to ${mostTerminals} terminals`);
  }
  const names = isCount ? numbered(count) : listed.length === 0 ? null : eachOnce(listed);
  const missing = grounded.find((name) => !(names ?? numbered(sort.count)).includes(name));
  if (missing !== undefined) throw new Problem(`there is no terminal ${missing} to ground`);
  return { ...(names === null ? {} : { names }), grounded };
};

const namedSort = (
  words: readonly string[]
): { readonly sort: PartSort; readonly rest: readonly string[] } | null => {
  const text = words.join(' ').toLowerCase();
  let best: { sort: PartSort; word: string } | null = null;
  for (const sort of partSorts) {
    for (const word of sort.words) {
      const isNamed = text === word || text === `${word}s` || text.startsWith(`${word} `);
      if (isNamed && (best === null || word.length > best.word.length)) best = { sort, word };
    }
  }
  return best && { sort: best.sort, rest: words.slice(best.word.split(' ').length) };
};

const readOne = (words: readonly string[], patterns: readonly Pattern[]): PartOrder => {
  const [first = ''] = words;
  const lettered = findTubeType(first) ? null : findReferenceLetter(first);
  const reference = lettered ? first.toUpperCase() : null;
  const rest = lettered ? words.slice(1) : words;
  const text = rest.join(' ').toLowerCase();
  const pattern = patterns.find(({ name }) => name.toLowerCase() === text);
  if (pattern) {
    const sort = sortOfKind(pattern.kind) ?? sortOfKind('other');
    if (sort) return { ...blankOrder(sort), pattern, reference };
  }
  const [socket] = partSorts;
  const named = namedSort(rest);
  const sort = named?.sort ?? (lettered ? sortOfKind(lettered.kind) : null);
  if (socket && (sort === null || sort.takes === 'type')) {
    const tube = readTube(named?.rest ?? rest, sort ?? socket);
    if (tube) return { ...tube, reference };
  }
  if (!sort) {
    throw new Problem(
      `no part is called "${words.join(' ')}": write a tube such as 6CG7, or "strip 5", "resistor 47k"`
    );
  }
  if (sort.takes === 'type') {
    throw new Problem(
      `which ${sort.name.toLowerCase()}? Write a type or a base: 6CG7, noval, octal`
    );
  }
  const said = named?.rest ?? rest;
  const order = { ...blankOrder(sort), reference };
  if (sort.takes === 'value') return { ...order, value: wordsOrNull(said) };
  return { ...order, ...readTerminals(said, sort) };
};

const timesOf = (words: readonly string[]): { times: number; rest: readonly string[] } => {
  const [first = '', second = ''] = words;
  const joined = /^(\d{1,3})x$/i.exec(first)?.[1];
  if (joined !== undefined) return { times: Number(joined), rest: words.slice(1) };
  const apart = /^\d{1,3}$/.test(first) && /^x$/i.test(second);
  return apart ? { times: Number(first), rest: words.slice(2) } : { times: 1, rest: words };
};

/** The parts that a text asks for, in its order. */
export const readOrders = (text: string, patterns: readonly Pattern[] = []): OrderReading => {
  const orders: PartOrder[] = [];
  try {
    for (const piece of text.slice(0, 8000).split(/[\n,;]/)) {
      const words = piece.split(/\s+/).filter((word) => word !== '');
      const { times, rest } = timesOf(words);
      if (rest.length === 0) continue;
      const order = readOne(rest, patterns);
      for (let n = 0; n < times && orders.length <= mostParts; n += 1) {
        orders.push(n === 0 ? order : { ...order, reference: null });
      }
    }
  } catch (error) {
    if (error instanceof Problem) return { ok: false, problem: error.message };
    throw error;
  }
  if (orders.length > mostParts) {
    return { ok: false, problem: `at most ${mostParts} parts are placed at one press` };
  }
  return { ok: true, orders };
};

/** A terminal of this name is a lead with that colour. */
export const isPigtail = (name: string): boolean => name.length > 2 && parseColour(name) !== null;
