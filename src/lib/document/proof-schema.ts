// What was measured when the work was proved: readings as they were typed, and what has to stand beside
// them for a reading to mean anything, such as line volts and meter.
//
// The key came after documents of this version were written. It is optional, and a program that does not
// know it keeps it as it keeps every unknown key, so that the version stays.
import * as z from 'zod';
import { daySchema, shortTextSchema, textSchema } from './primitives.ts';

/** One reading of a test sheet. */
export const readingSchema = z.looseObject({
  /** As it was typed: "287 V". It is judged anew each time it is shown. */
  typed: shortTextSchema,
  /** Its row in words, should the row leave the sheet: "V3-5 to C4-1". */
  where: shortTextSchema.optional(),
  on: daySchema.optional(),
  notes: textSchema.optional()
});
export type Reading = z.infer<typeof readingSchema>;

export const proofSchema = z.looseObject({
  /** By the row's stable name, which begins with that of its sheet. */
  readings: z.record(z.string().min(1).max(400), readingSchema).optional(),
  /** What is written down beside the readings, by sheet and then by what it is: "line volts". */
  records: z
    .record(z.string().min(1).max(60), z.record(z.string().min(1).max(200), shortTextSchema))
    .optional()
});
export type Proof = z.infer<typeof proofSchema>;
