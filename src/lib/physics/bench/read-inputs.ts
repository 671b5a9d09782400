// Reads the inputs of a bench sum as people write them, and says which one is wrong and why.
import type * as z from 'zod';
import { inUnit, parseQuantity } from '#quantity/index.ts';
import { SumError } from '../sum-error.ts';
import { formatAccepted, type InputAbout } from './input.ts';
import { aboutInput, inputError, type SumValue } from './sum.ts';

/** The values of a sum's inputs, in the units that it names. Inputs not given are left out, blank ones too.
 *  Throws SumError for a name that the sum does not have and for text that cannot be read. */
export function readInputs(
  inputs: z.ZodObject,
  texts: Readonly<Record<string, string>>
): Record<string, SumValue> {
  const values: Record<string, SumValue> = {};
  for (const [name, text] of Object.entries(texts)) {
    if (!Object.hasOwn(inputs.shape, name)) throw unknownInput(inputs, name, text);
    if (text.trim() !== '') values[name] = readInput(name, text, aboutInput(inputs, name));
  }
  for (const [name, schema] of Object.entries(inputs.shape)) {
    const mayBeMissing = (schema as z.ZodType).safeParse(undefined).success;
    if (values[name] === undefined && !mayBeMissing) throw inputError(inputs, name, undefined);
  }
  return values;
}

/** The value of one text, not yet held against its limits. Throws SumError for one that cannot be read. */
export function readInput(name: string, text: string, about: InputAbout): SumValue {
  const { reading } = about;
  if (reading.as === 'choice') return readChoice(name, text, about, reading.choices);
  if (reading.as === 'amount') {
    const parsed = parseQuantity(text, reading.dimension, { defaultUnit: about.unit });
    if (!parsed.ok) throw unreadable(name, text, about, parsed.problem);
    const { kind } = parsed;
    if (kind !== undefined && reading.kinds && !reading.kinds.includes(kind)) {
      const wanted = reading.kinds.join(' or ');
      throw unreadable(name, text, about, `this says ${kind}, but ${name} takes ${wanted}`);
    }
    return inUnit(parsed.value, reading.dimension, about.unit);
  }
  const parts = splitList(text, reading.separator);
  const [only] = parts;
  if (reading.separator === 'x' && only !== undefined && parts.length === 1) parts.push(only);
  return parts.map((part) => {
    const parsed = parseQuantity(part, 'length', { defaultUnit: 'mm' });
    if (!parsed.ok) throw unreadable(name, text, about, parsed.problem);
    return parsed.value;
  });
}

function readChoice(
  name: string,
  text: string,
  about: InputAbout,
  choices: readonly string[]
): string {
  const wanted = text.trim().toLowerCase();
  const found = choices.find((word) => word.toLowerCase() === wanted);
  if (found === undefined) throw unreadable(name, text, about, `"${text}" is none of the choices`);
  return found;
}

/** By semicolons where there are any, for then a comma is a decimal sign; a unit at the end counts
 *  for all: "1.2, 1.6 mm". */
function splitList(text: string, separator: ',' | 'x'): string[] {
  const mark = separator === 'x' ? /[x×*]/i : text.includes(';') ? ';' : ',';
  const parts = text.split(mark).map((part) => part.trim());
  const unit = /[a-z"']+\.?$/i.exec(parts.at(-1) ?? '')?.[0] ?? '';
  const lengths = parts.map((part) => (/[\d.]$/.test(part) ? part + unit : part));
  return separator === 'x' ? lengths : lengths.flatMap(repeated);
}

/** "7x1.6mm" is seven times 1.6 mm. */
function repeated(part: string): string[] {
  const [, count = '1', length = part] = /^(\d{1,3}) ?[x×*] ?(\S.*)$/.exec(part) ?? [];
  return new Array<string>(Number(count)).fill(length);
}

const unreadable = (name: string, text: string, about: InputAbout, why: string): SumError =>
  new SumError({
    problem: 'unreadable',
    input: name,
    value: text,
    limit: formatAccepted(about),
    wayOut: `${sentence(why)}. Write it as ${name}=${about.example}.`
  });

const unknownInput = (inputs: z.ZodObject, name: string, text: string): SumError =>
  new SumError({
    problem: 'unknown input',
    input: name,
    value: text,
    limit: Object.keys(inputs.shape).join(', '),
    wayOut: 'Use one of the names listed.'
  });

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
