// The inputs of a bench sum: a zod schema for what a program gives, and beside it what a reader of
// typed text needs to know: kind of amount, unit of a bare number, limits in words.
import * as z from 'zod';
import type { AmountKind, Dimension } from '#quantity/index.ts';
import { formatLimits, type Limits } from '../guard.ts';

// Zod can compile parsers with `new Function`; the content security policy forbids that.
z.config({ jitless: true });

/** How the text of an input is read. */
export type InputReading =
  | {
      readonly as: 'amount';
      readonly dimension: Dimension;
      readonly limits: Limits;
      /** What a typed voltage may say of itself: 6.3VAC is refused where dc is asked for. */
      readonly kinds?: readonly AmountKind[];
    }
  | { readonly as: 'choice'; readonly choices: readonly string[] }
  /** Amounts in a row: "1.2, 1.2, 1.6", or "0.635 x 0.635". */
  | {
      readonly as: 'lengths';
      readonly separator: ',' | 'x';
      readonly limits: Limits;
      readonly count?: number;
    };

export interface InputAbout {
  readonly reading: InputReading;
  /** Of a bare number; empty where there is none. */
  readonly unit: string;
  /** For people: "current in the wire". */
  readonly words: string;
  /** As somebody would type it. */
  readonly example: string;
}

export const inputRegistry = z.registry<InputAbout>();

interface AmountSpec extends Limits {
  readonly unit: string;
  readonly words: string;
  readonly example: string;
  readonly fallback?: number;
  readonly kinds?: readonly AmountKind[];
}

/** A number with its unit and limits. With a fallback it may be left out. */
export function amount(dimension: Dimension, spec: AmountSpec) {
  const { words, example, fallback, kinds, ...limits } = spec;
  const { min = -Infinity, max = Infinity, above, whole, unit } = limits;
  const bounded = above ? z.number().gt(min).max(max) : z.number().min(min).max(max);
  const number = whole ? bounded.int() : bounded;
  const reading = { as: 'amount', dimension, limits, ...(kinds ? { kinds } : {}) } as const;
  const about = { reading, unit, words, example };
  const schema = fallback === undefined ? number : number.default(fallback);
  return schema.register(inputRegistry, about);
}

interface ChoiceSpec<Choice extends string> {
  readonly words: string;
  readonly fallback?: NoInfer<Choice>;
}

/** One of a few words. With a fallback it may be left out. */
export function choice<const Choice extends string>(
  choices: readonly Choice[],
  { words, fallback }: ChoiceSpec<Choice>
) {
  const one = z.enum(choices);
  const about: InputAbout = {
    reading: { as: 'choice', choices },
    unit: '',
    words,
    example: choices[0] ?? ''
  };
  const schema = fallback === undefined ? one : z._default(one, fallback);
  return schema.register(inputRegistry, about);
}

interface LengthsSpec extends Limits {
  readonly separator: ',' | 'x';
  readonly words: string;
  readonly example: string;
  readonly count?: number;
}

/** Lengths in a row, in mm. */
export function lengths(spec: LengthsSpec) {
  const { separator, words, example, count, ...limits } = spec;
  const { min = 0, max = 1000 } = limits;
  const each = z.number().gt(min).max(max);
  const list = count === undefined ? z.array(each).min(1) : z.array(each).length(count);
  const reading = { as: 'lengths', separator, limits, ...(count ? { count } : {}) } as const;
  return list.register(inputRegistry, { reading, unit: 'mm', words, example });
}

/** What an input accepts, in words. */
export function formatAccepted({ reading, unit }: InputAbout): string {
  if (reading.as === 'choice') return reading.choices.join(', ');
  if (reading.as === 'amount') return formatLimits(reading.limits);
  const each = formatLimits({ ...reading.limits, unit });
  return reading.count === undefined
    ? `one or more, each ${each}`
    : `${reading.count}, each ${each}`;
}
