// What lies beside the chassis: parts kept as patterns, notes with a leader, wire on the shelf.
import * as z from 'zod';
import { elementSchema, terminalSchema } from './part-schema.ts';
import {
  idSchema,
  lengthMmSchema,
  orderSchema,
  pointSchema,
  positiveVoltsSchema,
  recordOf,
  shortTextSchema,
  textSchema
} from './primitives.ts';
import { conductorFields } from './wire-schema.ts';

/** A part kept to be placed again: its kind, its terminals and what is between them. */
export const patternSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  name: shortTextSchema,
  kind: z.string().min(1).max(60),
  type: shortTextSchema.optional(),
  value: shortTextSchema.optional(),
  terminals: recordOf(terminalSchema),
  elements: recordOf(elementSchema).optional(),
  notes: textSchema.optional()
});
export type Pattern = z.infer<typeof patternSchema>;

/** Words on the drawing with a leader to a place. */
export const calloutSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  text: textSchema,
  /** What the leader points to. */
  of: z.looseObject({ kind: z.enum(['part', 'wire', 'support', 'unit']), id: idSchema }).optional(),
  /** In the drawing to scale: a unit, the place that the leader points to and where the words stand. */
  unit: idSchema.optional(),
  tip: pointSchema.optional(),
  place: pointSchema.optional(),
  /** Where the words stand in the diagram, from the upper left corner of what the leader points to. */
  diagramPlace: pointSchema.optional()
});
export type Callout = z.infer<typeof calloutSchema>;

/** Wire on hand: a spool, an offcut or a length taken out of another set. */
export const stockSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  name: shortTextSchema,
  kind: z.enum(['spool', 'offcut', 'salvage']),
  ...conductorFields,
  /** What it is rated for, by kind of voltage; a kind that is not given is not known. */
  ratings: z
    .looseObject({
      dcV: positiveVoltsSchema.optional(),
      acRmsV: positiveVoltsSchema.optional(),
      pulseV: positiveVoltsSchema.optional()
    })
    .optional(),
  construction: z.string().min(1).max(60).optional(),
  /** On hand. */
  lengthMm: lengthMmSchema,
  /** For a metre, in whatever money the shelf is kept. */
  pricePerMetre: z.number().min(0).max(1_000_000).optional(),
  /** The wire of this chassis that it was before it was taken out. */
  outOf: idSchema.optional(),
  /** Where it lies. */
  where: shortTextSchema.optional(),
  notes: textSchema.optional()
});
export type Stock = z.infer<typeof stockSchema>;
