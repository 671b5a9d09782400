// Where a wire ends, as people write it: "V3-5", "V3 (6CG7) pin 5", "T1 red", "chassis at TS2", "?".
import {
  findReferenceLetter,
  findTubeType,
  parseColour,
  partKindOf,
  type ReferredKind
} from '#handbook/index.ts';
import {
  findNamedGround,
  isUnknownEnd,
  isUnnamedGround,
  lettersWithoutNumber,
  partNouns,
  tellsAWay,
  type NamedGround
} from './end-words.ts';

export type EndReading =
  | { readonly kind: 'unknown'; readonly text: string }
  /** A point of the metal; without a name it is one of its own. */
  | {
      readonly kind: 'ground';
      readonly name: string | null;
      /** On the metal of a unit that stands apart from the chassis. */
      readonly isApart: boolean;
      readonly text: string;
    }
  | {
      readonly kind: 'terminal';
      readonly reference: string;
      readonly partKind: ReferredKind;
      /** Null where the part is named and its terminal is not. */
      readonly terminal: string | null;
      /** A tube type that was written beside it. */
      readonly type: string | null;
      /** Words in brackets: what the part does. */
      readonly does: string | null;
      /** A question mark stands behind it. */
      readonly isUncertain: boolean;
      /** It is said to be on the metal: "lug 3 (ground)". */
      readonly isGrounded: boolean;
      /** There are words besides the name, as "plate" in "pin 5 (plate)". */
      readonly hasMore: boolean;
      readonly text: string;
    };

interface Rest {
  readonly terminal: string | null;
  readonly type: string | null;
  readonly does: string | null;
  readonly isUncertain: boolean;
  readonly isGrounded: boolean;
  readonly hasMore: boolean;
}

const longestEnd = 120;
const groundAt = (name: string | null, text: string, isApart = false): EndReading => ({
  kind: 'ground',
  name,
  isApart,
  text
});
const unknown = (text: string): EndReading => ({ kind: 'unknown', text });

/** A text that has the look of a tube type, known to the handbook or not: "6CG7", "12AX7A". */
export const looksLikeTubeType = (text: string): boolean =>
  /^\d{1,2}[A-Za-z]{1,3}\d{1,2}[A-Za-z]{0,3}$/.test(text.trim());

const isTubeType = (text: string): boolean =>
  looksLikeTubeType(text) || (text.trim().length > 1 && findTubeType(text) !== null);

/** Reads what one cell, or a part's and a terminal's cell together, say of an end. Never fails:
 *  what names no part is `unknown` with its text. */
export const readEnd = (written: string): EndReading => {
  const text = written
    .slice(0, 400)
    .replace(/\s+/g, ' ')
    .replace(/\[/g, '(')
    .replace(/\]/g, ')')
    .trim();
  if (text === '' || isUnknownEnd(text) || /^\?+ /.test(text)) return unknown(text);
  if (text.length > longestEnd) return unknown(text);
  if (isUnnamedGround(text)) return groundAt(null, text);
  const named = findNamedGround(text);
  if (named) return readNamedGround(named, text);
  return (
    readReference(text) ??
    readReversed(text) ??
    readTypeAsReference(text) ??
    readName(text) ??
    unknown(text)
  );
};

const readNamedGround = ({ word, number, place }: NamedGround, text: string): EndReading => {
  const isApart = word === 'metal';
  if (number !== null || place === null) return groundAt(`${word} ${number}`, text, isApart);
  // "chassis at G3": G3 is the lug itself. "chassis at TS6-3": a lug of TS6 that is on the metal.
  const at = readReference(place);
  if (at?.kind === 'ground') return { ...at, isApart, text };
  if (at?.kind === 'terminal' && /^\d/.test(at.terminal ?? ''))
    return { ...at, isGrounded: true, text };
  return groundAt(`${word} at ${place}`, text, isApart);
};

/** "V3", "TS-2", "T 1": letters and a number. */
const readReference = (text: string): EndReading | null => {
  const match =
    /^([A-Za-z]{1,6})( |-)?(\d{1,4})(?:([A-Za-z])(?![A-Za-z0-9]))?(?![A-Za-oq-z0-9])/.exec(text);
  if (!match) return null;
  const [all, lettersWritten = '', joiner, number = '', section = ''] = match;
  const letters = lettersWritten.toUpperCase();
  const row = findReferenceLetter(`${letters}${number}`);
  if (joiner !== undefined && (!row || row.kind === 'other' || lettersWithoutNumber.has(letters)))
    return null;
  if (!row && letters.length > 3) return null;
  const partKind = row?.kind ?? 'other';
  const rest = readRest(text.slice(all.length), partKind);
  if (!rest) return null;
  // V4A and V4B are halves of one tube: its pins are told apart by their numbers.
  const isHalf = partKind === 'tube' && section !== '';
  const stem = `${letters}${number}`;
  if (partKind === 'capacitor' && section !== '' && rest.terminal === null) {
    // "C1A" alone is the lug of section A of a can.
    return {
      kind: 'terminal',
      reference: stem,
      partKind,
      ...rest,
      terminal: section.toUpperCase(),
      text
    };
  }
  const reference = `${stem}${isHalf ? '' : section.toUpperCase()}`;
  if (partKind === 'ground lug') return groundAt(reference, text);
  return { kind: 'terminal', reference, partKind, ...rest, text };
};

/** "pin 5 of V3", "red lead on T1": the terminal before its part. */
const readReversed = (text: string): EndReading | null => {
  const match = /^(.{1,40}?),? (?:of|on|at) ([A-Za-z]{1,6}[ -]?\d.*)$/i.exec(text);
  const pin =
    match ?? /^((?:pin|lug|term(?:inal)?)\.? ?#?\d{1,2}),? ([A-Za-z]{1,6}[ -]?\d.*)$/i.exec(text);
  const terminal = pin?.[1] ?? '';
  if (!pin || tellsAWay(terminal) || terminal.split(' ').length > 3) return null;
  const part = readReference(pin[2] ?? '');
  if (part?.kind !== 'terminal' || part.terminal !== null) return null;
  const joined = readReference(`${pin[2]} ${terminal}`);
  return joined?.kind === 'terminal' ? { ...joined, text } : null;
};

/** "6CG7 pin 5": a tube that is known by its type alone. */
const readTypeAsReference = (text: string): EndReading | null => {
  const match = /^(\d{1,2}[A-Za-z]{1,3}\d{1,2}[A-Za-z]{0,3})(?![A-Za-z0-9])/.exec(text);
  const written = match?.[1];
  if (written === undefined || !findTubeType(written)) return null;
  const rest = readRest(text.slice(written.length), 'tube');
  if (!rest) return null;
  const type = written.toUpperCase();
  // "6SN7 (2nd)" is told from the other 6SN7 by the bracket.
  const reference = rest.does === null ? type : `${type} (${rest.does})`;
  return { kind: 'terminal', reference, partKind: 'tube', ...rest, type, does: null, text };
};

/** "tuner", "yoke red", "volume control lug 2". */
const readName = (text: string): EndReading | null => {
  if (text.split(' ').length > 7 || tellsAWay(text) || !/[A-Za-z]{2}|[A-Za-z][+-]/.test(text))
    return null;
  const { name, after } = splitName(text);
  // A sentence is no name, unless it holds the noun of a part.
  if (name.split(' ').length > 4 && name.search(partNouns) < 0) return null;
  const partKind = partKindOf(name);
  const rest = readRest(after, partKind);
  if (!rest || name === '') return null;
  return { kind: 'terminal', reference: name, partKind, ...rest, text };
};

const terminalWords =
  /^(.{1,60}?)[\s,:-]+((?:pin|lug|term|terminal|post|tab|contact|lead)s?\b\.?.*)$/i;

/** Where the part's name ends and its terminal begins. */
const splitName = (text: string): { readonly name: string; readonly after: string } => {
  const cut = (at: number) => ({ name: text.slice(0, at).trim(), after: text.slice(at) });
  const letters = /^([A-Za-z]{2,6})(?=[\s\-:./(])/.exec(text)?.[1];
  if (letters !== undefined && lettersWithoutNumber.has(letters.toUpperCase()))
    return cut(letters.length);
  const nouns = [...text.matchAll(partNouns)];
  const last = nouns.at(-1);
  const marked = terminalWords.exec(text);
  if (last) {
    const end = last.index + last[0].length;
    const digits = /^ ?\d{1,2}(?=$|[\s\-:/(])/.exec(text.slice(end));
    // "speaker 2 red" numbers the speaker; "yoke 3" alone is a terminal.
    if (digits && text.length > end + digits[0].length) return cut(end + digits[0].length);
    return cut(end);
  }
  if (marked) return cut((marked[1] ?? '').length);
  const bracket = /^([^()]{1,60}?) ?\(/.exec(text);
  if (bracket) return cut((bracket[1] ?? '').length);
  const numbered = /^(.*?[A-Za-z+])[-:/](\d{1,3}[A-Za-z]?)$/.exec(text);
  if (numbered) return cut((numbered[1] ?? '').length);
  const query = /^(.*?[A-Za-z]) (\?\d{1,3})$/.exec(text);
  if (query) return cut((query[1] ?? '').length);
  const words = text.split(' ');
  const lastWord = words.at(-1) ?? '';
  if (words.length > 1 && lastWord.length > 2 && parseColour(lastWord)) {
    return cut(text.length - lastWord.length);
  }
  return cut(text.length);
};

/** What follows the part: brackets, the word "pin" or "lug", and the terminal. Null where it goes
 *  on with another part, so that the whole names no single end. */
const readRest = (written: string, partKind: ReferredKind): Rest | null => {
  const { text: bare, type, does } = takeBrackets(written.trim(), partKind);
  const behind = /^(.*?\S)\s*\(([^()]*)\)$/.exec(bare);
  const hasMore = behind !== null;
  const text = behind ? (behind[1] ?? '') : bare;
  const isGrounded = isUnnamedGround((behind?.[2] ?? '').trim());
  const told = { type, does, isGrounded, hasMore };
  if (/^[+-]$/.test(text)) return { terminal: text, isUncertain: false, ...told };
  if (namesAnotherPart(text, partKind)) return null;
  const named = text.replace(/^[\s\-–:.,/#_=]+/, '').replace(terminalWord, '');
  const isUncertain = /[^?\s]\s*\?+$/.test(named) || (behind?.[2] ?? '').includes('?');
  const terminal = nameOf(isUncertain ? named.replace(/\s*\?+$/, '') : named, partKind);
  return { terminal, isUncertain, ...told };
};

const terminalWord =
  /^(?:pins?|lugs?|term(?:inal)?s?|posts?|tags?|contacts?|tabs?|prongs?|leads?|p(?=\d))(?![A-Za-z])[\s.#:-]*/i;

/** Brackets right behind the part: its type, what it does, or else its terminal. A tube's type also
 *  stands there without brackets. */
const takeBrackets = (
  written: string,
  partKind: ReferredKind
): { readonly text: string; readonly type: string | null; readonly does: string | null } => {
  let text = written;
  let type: string | null = null;
  let does: string | null = null;
  for (let turn = 0; turn < 3; turn += 1) {
    const bracket = /^\(([^()]*)\)\s*(.*)$/.exec(text);
    if (!bracket) break;
    const [, inside = '', after = ''] = bracket;
    if (isTubeType(inside)) type = inside.trim().toUpperCase();
    else if (after !== '') does = inside.trim();
    else return { text: inside, type, does };
    text = after;
  }
  const bare = /^(\d{1,2}[A-Za-z]{1,3}\d{1,2}[A-Za-z]{0,3})(?=$|[\s,:;-])(.*)$/.exec(text);
  if (bare && type === null && partKind === 'tube' && findTubeType(bare[1] ?? '')) {
    type = (bare[1] ?? '').toUpperCase();
    text = (bare[2] ?? '').trim();
  }
  return { text, type, does };
};

// "V3-V4" and "V3-5, TS2-1" are no single end; "T1 S1" is a terminal of a transformer.
const namesAnotherPart = (text: string, partKind: ReferredKind): boolean =>
  (partKind !== 'transformer' && /^[\s\-/]*(?:V|TS|R|C|L|T)\d{1,3}(?![A-Za-z])/i.test(text)) ||
  /(?:[&,;+]|\band|\bto)\s*[A-Za-z]{1,3}\d{1,3}/i.test(text);

/** A terminal's name in the one way that it is kept: "5", "red/yellow", "cap". */
const nameOf = (written: string, partKind: ReferredKind): string | null => {
  const text = written.trim().slice(0, 60);
  if (text === '' || isUnknownEnd(text)) return null;
  if (/^0*\d{1,3}$/.test(text)) return String(Number(text));
  if (
    /^(?:(?:top|plate|grid|anode|tube)[\s-]?)?cap$|^t\.?c\.?$/i.test(text) &&
    /tube/.test(partKind)
  )
    return 'cap';
  const bare = text.replace(/ (?:lead|wire|lug|tab|pin|terminal)$/i, '');
  if (bare.length > 2) {
    const colour = parseColour(bare);
    if (colour && colour.shade === null) {
      return colour.tracer === null ? colour.colour : `${colour.colour}/${colour.tracer}`;
    }
  }
  return bare;
};
