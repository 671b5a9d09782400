// Words in a list that stand for fixed choices of the document: state, construction, origin, way.
import type { Wire, WireState } from '#document/index.ts';
import { constructions } from '#document/index.ts';

const states: readonly (readonly [RegExp, WireState])[] = [
  [/^(?:found|original|in place|as found|untouched|open|to ?do|no)$/i, 'found'],
  [/^(?:tagged|labell?ed|marked)$/i, 'tagged'],
  [/^(?:removed|out|pulled|cut out|taken out)$/i, 'removed'],
  [/^(?:fitted|installed|replaced|in|new|soldered|done)$/i, 'fitted'],
  [/^(?:checked|tested|verified|ok|ohmed out|buzzed out)$/i, 'checked']
];

/** The state of work that a word means, or null. */
export const findState = (text: string): WireState | null =>
  states.find(([pattern]) => pattern.test(text.trim()))?.[1] ?? null;

const constructionWords: readonly (readonly [RegExp, (typeof constructions)[number]])[] = [
  [/co-?ax|\brg[\s-]?\d/i, 'coax'],
  [/twin[\s-]?lead|300[\s-]?ohm/i, 'twin lead'],
  [/braid/i, 'braid'],
  [/\b(?:shield|screen of|drain)\b/i, 'shield'],
  [/(?:sleeved|spaghetti).*(?:bus|bare|wire)|bus.*(?:sleev|spaghetti)|^sleeved$/i, 'sleeved bus'],
  [/\bbare\b|\bbus ?(?:bar|wire)?\b/i, 'bare bus'],
  [/\bjumper\b/i, 'jumper'],
  [/\bpig-?tail\b/i, 'pigtail'],
  [/\b(?:component|resistor|capacitor|cap) leads?\b/i, 'component lead'],
  [/hook-?up|insulated wire|^wire$|^solid$|^stranded$/i, 'hook-up wire']
];

/** The construction that words speak of, or null. */
export const findConstruction = (text: string): (typeof constructions)[number] | null =>
  constructions.find((name) => name === text.trim().toLowerCase()) ??
  constructionWords.find(([pattern]) => pattern.test(text.slice(0, 200)))?.[1] ??
  null;

const origins: readonly (readonly [RegExp, NonNullable<Wire['origin']>])[] = [
  [/^(?:original|orig\.?|factory|stock|oem)$/i, 'original'],
  [/^(?:earlier repair|repair|repaired|old repair|previous repair)$/i, 'earlier repair'],
  [/^(?:modification|modified|mod\.?|added)$/i, 'modification']
];

/** Where a wire comes from, or null. */
export const findOrigin = (text: string): NonNullable<Wire['origin']> | null =>
  origins.find(([pattern]) => pattern.test(text.trim()))?.[1] ?? null;

const ways: readonly (readonly [RegExp, NonNullable<Wire['planned']['way']>])[] = [
  [/^(?:new wire|new|replace|rewire|renew)$/i, 'new wire'],
  [/^re-?sleeve$/i, 're-sleeve'],
  [/^splice(?: in)?$/i, 'splice in'],
  [/^(?:keep|leave|ok|reuse|re-use|as is)$/i, 'keep']
];

/** How a wire is to be renewed, or null. */
export const findWay = (text: string): NonNullable<Wire['planned']['way']> | null =>
  ways.find(([pattern]) => pattern.test(text.trim()))?.[1] ?? null;

/** The marks of a critical lead that words speak of; empty where they speak of none. */
export const readCritical = (text: string): NonNullable<Wire['critical']> => ({
  ...(/length/i.test(text) ? { keepLength: true } : {}),
  ...(/place|position|route/i.test(text) ? { keepPlace: true } : {}),
  ...(/short/i.test(text) ? { keepShort: true } : {})
});
