// One field of a sum while somebody types in it: what was understood, or what is wrong, what would
// be accepted and the way out. Nothing is ever taken from a text that cannot be read for certain.
import {
  aboutInput,
  fallbackOf,
  readOneInput,
  SumError,
  wireDiameterMm,
  type InputAbout,
  type Sum,
  type SumErrorParts,
  type SumValue
} from '#physics/index.ts';
import { formatAwg, formatMm, formatNumber, parseQuantity } from '#quantity/index.ts';

export type FieldReading =
  /** Blank, and the sum cannot do without. */
  | { readonly state: 'needed' }
  /** Blank, and something is taken in its place. */
  | { readonly state: 'taken'; readonly words: string }
  | { readonly state: 'understood'; readonly words: string }
  | { readonly state: 'refused'; readonly words: string };

/** What the text in a field of the sum means. Never throws for what is typed. */
export function readField({ inputs }: Sum, name: string, text: string): FieldReading {
  const about = aboutInput(inputs, name);
  if (text.trim() === '') {
    const fallback = fallbackOf(inputs, name);
    if (fallback === undefined) return { state: 'needed' };
    return { state: 'taken', words: understoodWords(about, fallback) };
  }
  try {
    const value = readOneInput(inputs, name, text);
    return { state: 'understood', words: understoodWords(about, value, text) };
  } catch (error) {
    if (error instanceof SumError) return { state: 'refused', words: refusalWords(error) };
    throw error;
  }
}

/** A refusal for people at a field: there the name of the input is not written in front of its value. */
export function refusalWords({ problem, input, limit, wayOut, value }: SumErrorParts): string {
  const plain = wayOut.replaceAll(`${input}=`, '');
  if (problem !== 'unreadable') {
    const given = value === '' ? '' : `: ${value}`;
    return `${sentence(problem)}${given}. Accepted: ${limit}. ${plain}`;
  }
  const [why = '', ...rest] = plain.split(/(?<=\.) (?=Write it as )/);
  return [why, `Accepted: ${limit}.`, ...rest].join(' ');
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A value as it was understood, in the unit that the sum names. */
export function understoodWords(about: InputAbout, value: SumValue, text = ''): string {
  const { reading, unit } = about;
  if (typeof value === 'string') return value;
  if (reading.as === 'lengths') return lengthsWords(value as readonly number[], reading.separator);
  const number = value as number;
  if (reading.as !== 'amount') return formatNumber(number);
  if (reading.dimension === 'gauge')
    return `${formatAwg(number)}, ${formatMm(wireDiameterMm(number))} bare`;
  if (reading.dimension === 'length') return `${formatNumber(number)} ${unit}`;
  const said = text === '' ? `${number} ${unit}` : text;
  const parsed = parseQuantity(said, reading.dimension, { defaultUnit: unit });
  return parsed.ok ? parsed.understood : `${formatNumber(number)} ${unit}`;
}

/** "7 × 1.6 mm, 2.4 mm: 8 in all", or "1.14 × 1.14 mm" for two sides of one thing. */
function lengthsWords(lengths: readonly number[], separator: ',' | 'x'): string {
  if (separator === 'x') return `${lengths.map((length) => formatNumber(length)).join(' × ')} mm`;
  const runs: { length: number; count: number }[] = [];
  for (const length of lengths) {
    const last = runs.at(-1);
    if (last?.length === length) last.count += 1;
    else runs.push({ length, count: 1 });
  }
  const words = runs.map(({ length, count }) =>
    count === 1 ? formatMm(length) : `${count} × ${formatMm(length)}`
  );
  const all = lengths.length === 1 ? 'one' : `${lengths.length} in all`;
  return `${words.join(', ')}: ${all}`;
}
