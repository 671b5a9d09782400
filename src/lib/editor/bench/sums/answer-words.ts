// The lines of an answer, and what is said in its place while there is none.
import type { Sum } from '#physics/index.ts';
import { formatResult } from './format-result.ts';
import { refusalWords } from './read-field.ts';
import { resultLabel, resultWords, spokenName } from './sum-words.ts';
import type { Answer, SheetReading } from './work-sum.ts';

export interface AnswerLine {
  readonly name: string;
  readonly label: string;
  readonly words: string;
  /** Null where the sum has no figure for it, as its basis says. */
  readonly main: string | null;
  readonly also: string;
}

/** One line for each result of the sum, in its order; empty where it is not answered. */
export function buildAnswerLines(sum: Sum, answer: Answer): readonly AnswerLine[] {
  if (answer.state !== 'found') return [];
  return Object.keys(sum.results).map((name) => {
    const found = answer.result.results[name];
    const text = found && formatResult(found.value, found.unit);
    return {
      name,
      label: resultLabel(name),
      words: resultWords[sum.id]?.[name] ?? '',
      main: text?.main ?? null,
      also: text?.also ?? ''
    };
  });
}

/** Why there is no answer, and what would bring one; empty where there is one. */
export function whyNoAnswer(sum: Sum, reading: SheetReading, answer: Answer): string {
  if (answer.state === 'found') return '';
  if (answer.state === 'working') return 'Working it out…';
  if (answer.state === 'refused') {
    const isField = Object.hasOwn(sum.inputs.shape, answer.error.input);
    const place = spokenName(answer.error.input);
    return isField
      ? `No answer: ${place} has to be put right.`
      : `No answer. ${sentence(place)}: ${refusalWords(answer.error)}`;
  }
  const parts = [
    reading.refused.length > 0 ? `${named(reading.refused, 'and')} to put right` : '',
    reading.needed.length > 0 ? `${named(reading.needed, 'and')} still needed` : '',
    reading.needsOneOf.length > 0 ? `at least one of ${named(reading.needsOneOf, 'or')} needed` : ''
  ].filter(Boolean);
  return `No answer yet: ${parts.join('; ')}.`;
}

/** "Lower bound: ac and pulse are blank and count as nought." */
export const lowerBoundWords = ({ countedAsNone }: SheetReading): string => {
  const [only, ...others] = countedAsNone;
  if (only === undefined) return '';
  const verb = others.length > 0 ? 'are blank and count' : 'is blank and counts';
  return `A lower bound: ${named(countedAsNone, 'and')} ${verb} as nought. Type 0 where there is none.`;
};

/** The whole answer as one would say it. */
export function spokenAnswer(lines: readonly AnswerLine[], isAtLeast: boolean): string {
  const bound = isAtLeast ? 'at least ' : '';
  return lines
    .map(({ label, main }) => `${label} ${main === null ? 'no figure' : bound + main}`)
    .join(', ');
}

const named = (names: readonly string[], joint: 'and' | 'or'): string => {
  const spoken = names.map(spokenName);
  const last = spoken.pop() ?? '';
  return spoken.length === 0 ? last : `${spoken.join(', ')} ${joint} ${last}`;
};

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
