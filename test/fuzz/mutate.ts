// Small, seeded damage to texts, bytes and JSON values: what a broken disk, a careless program or somebody
// with bad intent makes of a sound input. The same seed gives the same damage.

/** 0 up to 1. */
export type Chance = () => number;

export const pickFrom = <T>(list: readonly T[], chance: Chance): T =>
  list[Math.floor(chance() * list.length)] as T;
const below = (limit: number, chance: Chance): number => Math.floor(chance() * limit);

/** Texts that are trouble somewhere: markup, formulas, paths, prototypes, numbers without bounds. */
export const hostileTexts: readonly string[] = [
  '',
  ' ',
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  ']]>',
  '<!--',
  '&#0;',
  '&amp;lt;',
  "'; drop table wires; --",
  '=cmd|" /C calc"!A1',
  '+1+1',
  '@sum(1)',
  'javascript:alert(1)',
  'data:text/html,<script>1</script>',
  'url(http://example.invalid/x)',
  '../../etc/passwd',
  'C:\\windows\\x',
  '//example.invalid/x',
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  '\u0000',
  '\u202egnirts',
  '\ud800',
  '\ufeff',
  'K\u0301\u0301\u0301',
  '\u2028',
  'NaN',
  '-Infinity',
  '1e309',
  '-0',
  '0x1f',
  '1e-320',
  '99999999999999999999',
  '١٢٣',
  '%s%s%n',
  '${7*7}',
  '{{7*7}}',
  '"',
  "'",
  '\\',
  '\t',
  '\r\n',
  ',,,,',
  ';;;;',
  '((((((((((((((((',
  'V1-'.repeat(40),
  'a'.repeat(3000)
];

const hostileValues: readonly unknown[] = [
  null,
  true,
  false,
  0,
  -1,
  1e308,
  -1e308,
  5e-324,
  0.1,
  2 ** 53,
  '',
  [],
  {},
  [[]],
  [null],
  { id: 'x' },
  { '': '' },
  ...hostileTexts
];

/** One place of a text changed: a piece taken out, put in, doubled, swapped or cut off. */
const mutateTextOnce = (text: string, words: readonly string[], chance: Chance): string => {
  const at = below(text.length + 1, chance);
  const length = 1 + below(pickFrom([1, 3, 12, 80], chance), chance);
  const before = text.slice(0, at);
  const behind = text.slice(at);
  switch (below(7, chance)) {
    case 0:
      return before + behind.slice(length);
    case 1:
      return before + pickFrom(words, chance) + behind;
    case 2:
      return before + pickFrom(words, chance) + behind.slice(length);
    case 3:
      return before + behind.slice(0, length) + behind;
    case 4:
      return before + String.fromCharCode(below(0x250, chance)) + behind.slice(1);
    case 5: {
      const lines = text.split('\n');
      const [line] = lines.splice(below(lines.length, chance), 1);
      lines.splice(
        below(lines.length + 1, chance),
        0,
        line ?? '',
        ...(chance() < 0.5 ? [line ?? ''] : [])
      );
      return lines.join('\n');
    }
    default:
      return chance() < 0.3 ? before : before + behind.slice(1);
  }
};

/** A text with one place changed, or up to `most`. */
export const mutateText = (
  text: string,
  words: readonly string[],
  chance: Chance,
  most = 6
): string => {
  let changed = text;
  for (let turns = 1 + below(most, chance); turns > 0; turns--)
    changed = mutateTextOnce(changed, words, chance);
  return changed;
};

const interestingBytes = [0, 1, 0x7f, 0x80, 0xff, 0x22, 0x3c, 0x50, 0x4b];

const mutateBytesOnce = (bytes: Uint8Array, chance: Chance): Uint8Array => {
  const at = below(bytes.length + 1, chance);
  const length = 1 + below(pickFrom([1, 4, 40], chance), chance);
  const join = (...pieces: Uint8Array[]): Uint8Array =>
    Uint8Array.from(pieces.flatMap((piece) => [...piece]));
  switch (below(6, chance)) {
    case 0: {
      const changed = bytes.slice();
      if (at < changed.length) changed[at] = (changed[at] ?? 0) ^ (1 << below(8, chance));
      return changed;
    }
    case 1: {
      const changed = bytes.slice();
      const value = pickFrom(interestingBytes, chance);
      for (let place = at; place < Math.min(changed.length, at + length); place++)
        changed[place] = value;
      return changed;
    }
    case 2:
      return join(bytes.subarray(0, at), bytes.subarray(at + length));
    case 3:
      return join(bytes.subarray(0, at + length), bytes.subarray(at));
    case 4:
      return join(
        bytes.subarray(0, at),
        Uint8Array.from({ length }, () => below(256, chance)),
        bytes.subarray(at)
      );
    default:
      return chance() < 0.3
        ? bytes.slice(0, at)
        : join(bytes.subarray(0, at), bytes.subarray(at + 1));
  }
};

/** Bytes with one to six places changed. */
export const mutateBytes = (bytes: Uint8Array, chance: Chance): Uint8Array => {
  let changed = bytes;
  for (let turns = 1 + below(6, chance); turns > 0; turns--)
    changed = mutateBytesOnce(changed, chance);
  return changed;
};

type Container = Record<string, unknown> | unknown[];
const isContainer = (value: unknown): value is Container =>
  typeof value === 'object' && value !== null;

/** Every container of a value, with itself first. */
const containersOf = (value: unknown): Container[] =>
  isContainer(value) ? [value, ...Object.values(value).flatMap(containersOf)] : [];

const put = (container: Container, key: string, value: unknown): void => {
  // As JSON.parse would put it: a key of its own, whatever it is called.
  Object.defineProperty(container, key, {
    value,
    enumerable: true,
    configurable: true,
    writable: true
  });
};

const mutateJsonOnce = (value: unknown, chance: Chance): unknown => {
  const container = pickFrom(containersOf(value), chance);
  if (container === undefined) return pickFrom(hostileValues, chance);
  const keys = Object.keys(container);
  const key = keys.length === 0 ? 'x' : pickFrom(keys, chance);
  const held = (container as Record<string, unknown>)[key];
  switch (below(6, chance)) {
    case 0:
      put(container, key, pickFrom(hostileValues, chance));
      return value;
    case 1:
      if (Array.isArray(container)) container.splice(below(keys.length, chance), 1);
      else Reflect.deleteProperty(container, key);
      return value;
    case 2:
      put(container, pickFrom([...hostileTexts, 'id', 'order', 'kind', 'x'], chance), held);
      return value;
    case 3: {
      // Another element's value under this key: ids that are not theirs, references that lead in a ring.
      const other = pickFrom(containersOf(value), chance);
      put(container, key, structuredClone(isContainer(other) ? other : held));
      return value;
    }
    case 4:
      if (typeof held === 'number')
        put(container, key, held * pickFrom([-1, 0, 1e6, 1e-6], chance));
      else if (typeof held === 'string') put(container, key, held + pickFrom(hostileTexts, chance));
      else put(container, key, [held]);
      return value;
    default:
      if (typeof held === 'string') put(container, key, pickFrom(hostileTexts, chance));
      else put(container, `${key} of a later version`, held);
      return value;
  }
};

/** A copy of a JSON value with one to four places changed. */
export const mutateJson = (value: unknown, chance: Chance): unknown => {
  let changed: unknown = structuredClone(value);
  for (let turns = 1 + below(4, chance); turns > 0; turns--)
    changed = mutateJsonOnce(changed, chance);
  return changed;
};
