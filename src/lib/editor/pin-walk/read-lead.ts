// A lead in one line, for those who have keys under their hands: "blue ts3-2", "red/yel", "bare to G3",
// "resistor 47k v2-4", "cap 0.05 MFD not yet". Colour or part first, the far end after it.
import { parseColour } from '#handbook/index.ts';
import { readBands } from '#handbook/resistor-bands.ts';
import { parseQuantity } from '#quantity/index.ts';
import type { EndNames, EndReading } from '../schedule/end-text.ts';
import type { LeadPartKind, NotedLead } from './noted-lead.ts';

export type LeadReading =
  | {
      readonly ok: true;
      readonly lead: NotedLead;
      /** Null: nothing was said of the far end. */
      readonly far: EndReading | null;
      /** What it was read as, for the person to check. */
      readonly understood: string;
    }
  | { readonly ok: false; readonly why: string };

type ReadsEnds = Pick<EndNames, 'read'>;

const partWords: Readonly<Record<string, LeadPartKind>> = {
  resistor: 'resistor',
  res: 'resistor',
  capacitor: 'capacitor',
  cap: 'capacitor',
  condenser: 'capacitor',
  coil: 'coil',
  choke: 'coil',
  rectifier: 'rectifier',
  diode: 'rectifier',
  lamp: 'lamp',
  fuse: 'fuse',
  part: 'other'
};
/** One letter stands for a part only where a value follows it: "r 47k". */
const partLetters: Readonly<Record<string, LeadPartKind>> = { r: 'resistor', c: 'capacitor' };

const constructions: readonly (readonly [RegExp, string])[] = [
  [/^(?:bare|bus)(?: (?:bus|wire))?$/, 'bare bus'],
  [/^sleeved(?: bus)?$/, 'sleeved bus'],
  [/^braid$/, 'braid'],
  [/^shield$/, 'shield'],
  [/^coax$/, 'coax'],
  [/^twin(?: lead)?$/, 'twin lead']
];

const notYet = /^(?:\?|not yet|later|not found|unknown)$/i;
const withoutTo = (words: readonly string[]): string =>
  words
    .join(' ')
    .replace(/^(?:to|->|→|–|-)\s*/i, '')
    .trim();

const readFar = (words: readonly string[], ends: ReadsEnds): EndReading | null => {
  const text = withoutTo(words);
  if (text === '' || notYet.test(text)) return null;
  const reading = ends.read(text);
  return reading.kind === 'open' ? null : reading;
};

const farWords = (far: EndReading | null): string => {
  if (far === null || far.kind === 'open') return 'other end not yet';
  return far.kind === 'terminal' ? `to ${far.label}` : `"${far.text}" as written: ${far.why}`;
};

/** How many words at the start are a value of that part, and the value as it was written. */
const takeValue = (
  words: readonly string[],
  partKind: LeadPartKind
): { readonly value: string; readonly count: number } | null => {
  if (partKind !== 'resistor' && partKind !== 'capacitor') return null;
  for (let count = Math.min(5, words.length); count > 0; count--) {
    const value = words.slice(0, count).join(' ');
    if (partKind === 'resistor') {
      const bands = readBands(value);
      if (bands !== null) return { value: bands.text, count };
    }
    if (!/^[\d.]/.test(value)) continue;
    const dimension = partKind === 'resistor' ? 'resistance' : 'capacitance';
    if (parseQuantity(value, dimension).ok) return { value, count };
  }
  return null;
};

const readPart = (words: readonly string[], ends: ReadsEnds): LeadReading | null => {
  const first = (words[0] ?? '').toLowerCase();
  const rest = words.slice(1);
  const letter = partLetters[first];
  const partKind =
    partWords[first] ??
    (letter !== undefined && takeValue(rest, letter) !== null ? letter : undefined);
  if (partKind === undefined) return null;
  const taken = takeValue(rest, partKind);
  const far = readFar(rest.slice(taken?.count ?? 0), ends);
  const name = [partKind === 'other' ? 'part' : partKind, taken?.value ?? ''].join(' ').trim();
  return {
    ok: true,
    lead: { kind: 'part', partKind, ...(taken === null ? {} : { value: taken.value }) },
    far,
    understood: `${name}, ${farWords(far)}`
  };
};

/** The conductor that the first words name, and how many of them do. */
const takeConductor = (
  words: readonly string[]
): { readonly lead: NotedLead; readonly name: string; readonly count: number } | null => {
  for (let count = Math.min(5, words.length); count > 0; count--) {
    const text = words.slice(0, count).join(' ').toLowerCase();
    const made = constructions.find(([pattern]) => pattern.test(text));
    if (made !== undefined) {
      return { lead: { kind: 'wire', construction: made[1] }, name: made[1], count };
    }
    const parsed = parseColour(text);
    if (parsed === null) continue;
    const { colour, tracer, shade } = parsed;
    const shaded = shade === null ? colour : `${shade} ${colour}`;
    return {
      lead: { kind: 'wire', colour: shaded, ...(tracer === null ? {} : { tracer }) },
      name: tracer === null ? shaded : `${shaded} with a ${tracer} tracer`,
      count
    };
  }
  return null;
};

/** Reads a line. What names neither a colour, a part nor a terminal is refused with the way out. */
export const readLead = (text: string, ends: ReadsEnds): LeadReading => {
  const words = text
    .trim()
    .split(/[\s,]+/)
    .filter((word) => word !== '');
  if (words.length === 0) return { ok: false, why: 'nothing written: for example blue ts3-2' };
  const part = readPart(words, ends);
  if (part !== null) return part;
  const taken = takeConductor(words);
  const far = readFar(words.slice(taken?.count ?? 0), ends);
  if (taken !== null) {
    return { ok: true, lead: taken.lead, far, understood: `${taken.name}, ${farWords(far)}` };
  }
  if (far?.kind === 'terminal' || (far === null && notYet.test(withoutTo(words)))) {
    return {
      ok: true,
      lead: { kind: 'wire' },
      far,
      understood: `colour not told, ${farWords(far)}`
    };
  }
  return {
    ok: false,
    why: `"${text.trim()}" begins with no colour, part or terminal: write, for example, blue/white ts3-2`
  };
};
