// One input of a bench sum by itself, for a form that says at each field what was understood.
import type * as z from 'zod';
import { readInput } from './read-inputs.ts';
import { aboutInput, inputError, type SumValue } from './sum.ts';

/** The value of a text in the unit that the input names, within its limits.
 *  Throws SumError for a text that cannot be read or a value that is not accepted. */
export function readOneInput(inputs: z.ZodObject, name: string, text: string): SumValue {
  const value = readInput(name, text, aboutInput(inputs, name));
  const checked = (inputs.shape[name] as z.ZodType<SumValue>).safeParse(value);
  if (!checked.success) throw inputError(inputs, name, value);
  return checked.data;
}

/** What is taken where nothing is given; undefined where the sum cannot do without. */
export function fallbackOf(inputs: z.ZodObject, name: string): SumValue | undefined {
  const blank = (inputs.shape[name] as z.ZodType<SumValue>).safeParse(undefined);
  return blank.success ? blank.data : undefined;
}
