// Wires of which one end is known wait in a list until the other is found. For each, the others that may
// be the same wire: first those of one colour and tracer.
import { parseColour } from '#handbook/index.ts';
import { formatAwg } from '#quantity/index.ts';
import type { Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { isHalfTraced, wireName } from '../core/words.ts';
import { knownEndOf } from './join-wires.ts';
import { colourWords } from './lead-words.ts';
import { otherEnd } from './leads.ts';

export interface HalfTraced {
  readonly wire: Wire;
  /** Where its known end is; null where neither is known. */
  readonly at: string | null;
  /** What was written down for the end that is not found; "" for nothing. */
  readonly written: string;
  readonly colour: string;
}

/** All half-traced wires, in the schedule's order. */
export const listHalfTraced = (study: Study): readonly HalfTraced[] =>
  study.index.wires.filter(isHalfTraced).map((wire) => {
    const known = knownEndOf(wire);
    const open = known === null ? wire.to : wire[otherEnd(known)];
    return {
      wire,
      at: known === null ? null : study.index.labelOf(wire[known]),
      written: open.as ?? '',
      colour: colourWords(wire)
    };
  });

export interface JoinProposal {
  readonly half: HalfTraced;
  /** Nothing speaks against it, and the colours agree. */
  readonly isLikely: boolean;
  /** What speaks for and against it, short: "same colour and tracer", "22 AWG against 18 AWG". */
  readonly words: string;
}

interface Likeness {
  readonly score: number;
  readonly isLikely: boolean;
  readonly words: readonly string[];
}

const canonical = ({ found }: Wire): { colour: string; tracer: string } | null => {
  if (found.colour === undefined || found.colour === '') return null;
  const text = [found.colour, found.tracer ?? ''].filter(Boolean).join('/');
  const parsed = parseColour(text);
  if (parsed !== null) return { colour: parsed.colour, tracer: parsed.tracer ?? '' };
  return { colour: found.colour.toLowerCase(), tracer: (found.tracer ?? '').toLowerCase() };
};

const compareColours = (a: Wire, b: Wire): Likeness => {
  const [one, two] = [canonical(a), canonical(b)];
  if (one === null || two === null) {
    const isBoth =
      one === two && a.construction === b.construction && a.construction === 'bare bus';
    return isBoth
      ? { score: 3, isLikely: true, words: ['both bare'] }
      : { score: 0, isLikely: false, words: ['colour not told'] };
  }
  if (one.colour !== two.colour) {
    return { score: -6, isLikely: false, words: [`${colourWords(a)} against ${colourWords(b)}`] };
  }
  if (one.tracer === two.tracer) {
    const words = one.tracer === '' ? 'same colour' : 'same colour and tracer';
    return { score: one.tracer === '' ? 4 : 6, isLikely: true, words: [words] };
  }
  // A tracer wears off: one that was seen at one end only is no proof against it.
  const isSeenOnce = one.tracer === '' || two.tracer === '';
  const words = isSeenOnce ? 'same colour, a tracer on one only' : 'same colour, other tracer';
  return { score: isSeenOnce ? 1 : -3, isLikely: false, words: [words] };
};

const compareGauges = ({ found: a }: Wire, { found: b }: Wire): Likeness => {
  if (a.awg === undefined || b.awg === undefined) return { score: 0, isLikely: true, words: [] };
  if (a.awg === b.awg) return { score: 2, isLikely: true, words: [`both ${formatAwg(a.awg)}`] };
  // A calliper on old insulation is one gauge out as often as not: common practice, no source.
  const isNear = Math.abs(a.awg - b.awg) <= 2;
  const words = [`${formatAwg(a.awg)} against ${formatAwg(b.awg)}`];
  return { score: isNear ? -1 : -4, isLikely: isNear, words };
};

const compareRest = (a: Wire, b: Wire): Likeness => {
  const words: string[] = [];
  let score = 0;
  if (a.construction !== b.construction) {
    words.push(`${a.construction} against ${b.construction}`);
    score -= 3;
  }
  const [one, two] = [a.found.insulation, b.found.insulation];
  if (one !== undefined && two !== undefined) {
    const isSame = one.toLowerCase() === two.toLowerCase();
    words.push(isSame ? `both ${one}` : `${one} against ${two}`);
    score += isSame ? 1 : -1;
  }
  return { score, isLikely: score >= 0, words };
};

/** The half-traced wires that may be the same as `wire`, the likeliest first. */
export const proposeJoins = (study: Study, wire: Wire): readonly JoinProposal[] => {
  const end = knownEndOf(wire);
  if (end === null) return [];
  const here = study.index.labelOf(wire[end]);
  return listHalfTraced(study)
    .filter(({ wire: other, at }) => other.id !== wire.id && at !== null && at !== here)
    .map((half) => {
      const parts = [compareColours, compareGauges, compareRest].map((compare) =>
        compare(wire, half.wire)
      );
      const score = parts.reduce((sum, part) => sum + part.score, 0);
      const isLikely = parts.every((part) => part.isLikely);
      return { half, isLikely, score, words: parts.flatMap((part) => part.words).join(', ') };
    })
    .sort((a, b) => Number(b.isLikely) - Number(a.isLikely) || b.score - a.score)
    .map(({ half, isLikely, words }) => ({ half, isLikely, words }));
};

/** "wire 12, blue, from V1-3". */
export const halfWords = ({ wire, at, colour, written }: HalfTraced): string =>
  [
    wireName(wire),
    colour,
    at === null ? 'neither end found' : `from ${at}`,
    written === '' ? '' : `written: ${written}`
  ]
    .filter(Boolean)
    .join(', ');
