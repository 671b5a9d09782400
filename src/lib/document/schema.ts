// The chassis document: one schema is the truth for types, JSON Schema and error texts.
// Stored in SI units (mm on the drawing). Unknown keys and kinds survive a round trip.
import * as z from 'zod';
import { partSchema, unitSchema } from './part-schema.ts';
import { photoSchema } from './photo-schema.ts';
import { policySchema } from './policy-schema.ts';
import { idSchema, recordOf, shortTextSchema, textSchema } from './primitives.ts';
import { proofSchema } from './proof-schema.ts';
import { calloutSchema, patternSchema, stockSchema } from './shelf-schema.ts';
import { cableSchema, supportSchema, wireSchema } from './wire-schema.ts';

export const documentFormat = 'underchassis';
export const documentVersion = 2;

export const identitySchema = z.looseObject({
  /** What the set is called on screen and on paper. */
  title: shortTextSchema,
  set: shortTextSchema.optional(),
  chassis: shortTextSchema.optional(),
  run: shortTextSchema.optional(),
  tubes: textSchema.optional(),
  dataReference: shortTextSchema.optional(),
  tracedBy: shortTextSchema.optional(),
  setsChecked: z.number().int().min(0).max(100_000).optional(),
  licence: shortTextSchema.optional(),
  notes: textSchema.optional(),
  /** For the owner alone: stays out of what is shared. */
  privateNotes: textSchema.optional()
});
export type Identity = z.infer<typeof identitySchema>;

/** The document's root before the references between its elements are looked at. */
export const documentSchema = z.looseObject({
  format: z.literal(documentFormat),
  version: z.literal(documentVersion),
  id: idSchema,
  /** Hashes of the saved revisions that this one came from, oldest first. */
  lineage: z
    .array(z.string().regex(/^[0-9a-f]{16,64}$/, 'a revision is 16 to 64 of 0-9 and a-f'))
    .max(10_000),
  identity: identitySchema,
  policy: policySchema.partial(),
  units: recordOf(unitSchema),
  parts: recordOf(partSchema),
  wires: recordOf(wireSchema),
  cables: recordOf(cableSchema),
  supports: recordOf(supportSchema),
  photos: recordOf(photoSchema),
  patterns: recordOf(patternSchema),
  callouts: recordOf(calloutSchema),
  shelf: recordOf(stockSchema),
  proof: proofSchema.optional()
});
export type ChassisDocument = z.infer<typeof documentSchema>;
