// A bench sum: a registered object that the command line, the calculator and "why?" use, with its
// inputs, its results and their units, formula, basis and source.
import type * as z from 'zod';
import { SumError } from '../sum-error.ts';
import { formatAccepted, inputRegistry, type InputAbout } from './input.ts';

export type SumValue = number | string | readonly number[];

/** What a sum found: null where a result has no value, as the basis then says. */
export interface SumOutcome<Name extends string = string> {
  readonly results: Readonly<Record<Name, number | null>>;
  /** Where it depends on the inputs. */
  readonly basis?: string;
}

export interface Sum {
  readonly id: string;
  readonly title: string;
  /** A zod schema of the values that `run` takes, in the units that the inputs name. */
  readonly inputs: z.ZodObject;
  /** Units by result; empty where there is none. */
  readonly results: Readonly<Record<string, string>>;
  readonly formula: string;
  readonly basis: string;
  readonly source: string;
  /** Checks the values against the schema and runs; throws SumError. */
  readonly run: (values: Readonly<Record<string, unknown>>) => {
    readonly inputs: Readonly<Record<string, SumValue>>;
    readonly outcome: SumOutcome;
  };
}

interface SumParts<Shape extends z.ZodRawShape, Name extends string> {
  readonly id: string;
  readonly title: string;
  readonly inputs: z.ZodObject<Shape>;
  readonly results: Readonly<Record<Name, string>>;
  readonly formula: string;
  readonly basis: string;
  readonly source: string;
  readonly find: (inputs: z.infer<z.ZodObject<Shape>>) => SumOutcome<Name>;
}

/** A sum from its parts: what comes in is checked before `find` sees it, what goes out is finite. */
export function defineSum<Shape extends z.ZodRawShape, Name extends string>(
  parts: SumParts<Shape, Name>
): Sum {
  const { find, ...about } = parts;
  return {
    ...about,
    run: (values) => {
      const checked = parts.inputs.safeParse(values);
      if (!checked.success) throw toSumError(parts.inputs, checked.error, values);
      const outcome = find(checked.data);
      for (const [name, value] of Object.entries<number | null>(outcome.results)) {
        if (value !== null && !Number.isFinite(value)) throw notFinite(name);
      }
      return { inputs: checked.data as Record<string, SumValue>, outcome };
    }
  };
}

/** What the reader of text knows of an input of a sum. */
export function aboutInput(inputs: z.ZodObject, name: string): InputAbout {
  const schema = inputs.shape[name];
  const about = schema && inputRegistry.get(schema as z.ZodType);
  if (!about) throw new RangeError(`the input ${name} is not registered`);
  return about;
}

function toSumError(
  inputs: z.ZodObject,
  error: z.ZodError,
  values: Readonly<Record<string, unknown>>
): SumError {
  const name = String(error.issues[0]?.path[0] ?? Object.keys(inputs.shape)[0] ?? '');
  return inputError(inputs, name, values[name]);
}

/** The error for an input that is missing or not accepted. */
export function inputError(inputs: z.ZodObject, name: string, value: unknown): SumError {
  const about = aboutInput(inputs, name);
  const isMissing = value === undefined;
  return new SumError({
    problem: isMissing ? 'missing' : Number.isNaN(value) ? 'not a number' : 'out of range',
    input: name,
    value: isMissing ? '' : `${shown(value)}${about.unit === '' ? '' : ` ${about.unit}`}`,
    limit: formatAccepted(about),
    wayOut: wayOutOf(about) ?? `Give it as ${name}=${about.example}.`
  });
}

const wayOutOf = ({ reading }: InputAbout): string | undefined =>
  reading.as === 'amount' ? reading.limits.wayOut : undefined;

/** A value as it can be shown: what is neither number, text nor a list of them is named by its kind. */
const shown = (value: unknown): string =>
  Array.isArray(value)
    ? value.map(shown).join(', ')
    : typeof value === 'object'
      ? 'an object'
      : String(value);

const notFinite = (name: string): SumError =>
  new SumError({
    problem: 'out of range',
    input: name,
    value: '',
    limit: 'results that a number can hold',
    wayOut: 'The inputs together are too large or too small: check their units.'
  });
