// Wires, cables and supports: what runs between terminals, how it was found and what will replace it.
import * as z from 'zod';
import {
  ampsSchema,
  awgSchema,
  celsiusSchema,
  daySchema,
  idSchema,
  lengthMmSchema,
  mmSchema,
  orderSchema,
  placedBySchema,
  pointSchema,
  positiveVoltsSchema,
  shortTextSchema,
  terminalRefSchema,
  textSchema,
  voltsSchema
} from './primitives.ts';

export const knowledgeSchema = z.enum(['seen', 'metered', 'inferred', 'unknown']);

/** One end of a wire. Without `at` nobody has found it yet; `as` keeps what was written down. */
export const wireEndSchema = z.looseObject({
  at: terminalRefSchema.optional(),
  known: knowledgeSchema,
  as: shortTextSchema.optional(),
  /** How the conductor ends: "wrap", "hook", "lap", "clip", "plug pin", "cap". */
  termination: shortTextSchema.optional(),
  stripMm: lengthMmSchema.optional(),
  sleeve: shortTextSchema.optional()
});
export type WireEnd = z.infer<typeof wireEndSchema>;

/** What a rating counts for: a dc rating says nothing of a recurring pulse. */
export const ratingKinds = ['any', 'dc', 'ac', 'pulse'] as const;

/** A conductor with its insulation, found or planned. */
export const conductorFields = {
  awg: awgSchema.optional(),
  stranding: z.enum(['solid', 'stranded']).optional(),
  plating: z.enum(['bare', 'tinned']).optional(),
  colour: shortTextSchema.optional(),
  tracer: shortTextSchema.optional(),
  insulation: shortTextSchema.optional(),
  /** A handbook row, such as "UL 1015". */
  style: shortTextSchema.optional(),
  ratingV: positiveVoltsSchema.optional(),
  ratingKind: z.enum(ratingKinds).optional(),
  ratingC: celsiusSchema.optional(),
  diameterMm: lengthMmSchema.optional()
};

export const foundSchema = z.looseObject({
  ...conductorFields,
  condition: shortTextSchema.optional(),
  notes: textSchema.optional()
});
export type Found = z.infer<typeof foundSchema>;

/** What can be done about a wire. */
export const wireWays = ['new wire', 're-sleeve', 'splice in', 'keep'] as const;
export type WireWay = (typeof wireWays)[number];

export const plannedSchema = z.looseObject({
  ...conductorFields,
  way: z.enum(wireWays).optional(),
  /** The piece of the shelf that it is to be cut from, where a person chose one. */
  stock: idSchema.optional(),
  /** Of a piece that is spliced in, with both laps. */
  pieceMm: lengthMmSchema.optional(),
  notes: textSchema.optional()
});
export type Planned = z.infer<typeof plannedSchema>;

/** What a wire carries, as somebody declared it; what is solved is derived and not stored. */
export const carriesSchema = z.looseObject({
  dcV: voltsSchema.optional(),
  acV: positiveVoltsSchema.optional(),
  pulseV: positiveVoltsSchema.optional(),
  amps: ampsSchema.optional()
});
export type Carries = z.infer<typeof carriesSchema>;

/** The kinds of conductor. Open in the document, these are the ones that the rules know. */
export const constructions = [
  'hook-up wire',
  'sleeved bus',
  'bare bus',
  'jumper',
  'braid',
  'shield',
  'pigtail',
  'component lead',
  'coax',
  'twin lead'
] as const;

export const wireStates = ['found', 'tagged', 'removed', 'fitted', 'checked'] as const;
export type WireState = (typeof wireStates)[number];

/** When a state was reached at the bench, and what there was to say. */
export const wireStepSchema = z.looseObject({
  on: daySchema.optional(),
  note: textSchema.optional()
});
export type WireStep = z.infer<typeof wireStepSchema>;

export const wireSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  /** What stands on the tag; empty when nobody has numbered it. */
  number: shortTextSchema,
  from: wireEndSchema,
  to: wireEndSchema,
  construction: z.string().min(1).max(60),
  function: shortTextSchema.optional(),
  cable: idSchema.optional(),
  /** In a cable: which of its conductors this is. */
  conductor: shortTextSchema.optional(),
  carries: carriesSchema,
  origin: z.enum(['original', 'earlier repair', 'modification']).optional(),
  found: foundSchema,
  serviceData: plannedSchema.optional(),
  planned: plannedSchema,
  /** Supports in order from the first end to the second. */
  route: z.looseObject({ supports: z.array(idSchema).max(200), by: placedBySchema }).optional(),
  /** Length that the drawn plane does not show: up through the deck, out to the yoke. */
  outsideMm: lengthMmSchema.optional(),
  /** What a tape along the old wire read, lug to lug. */
  tapedMm: lengthMmSchema.optional(),
  critical: z
    .looseObject({
      keepLength: z.boolean().optional(),
      keepPlace: z.boolean().optional(),
      keepShort: z.boolean().optional()
    })
    .optional(),
  dress: textSchema.optional(),
  /** The wire is itself a part and hook-up wire must not take its place. */
  isPart: z
    .enum(['resistance cord', 'fuse link', 'filament loop', 'twisted-wire capacitor', 'other'])
    .optional(),
  state: z.enum(wireStates),
  /** By state, where somebody wrote it down at the bench. */
  work: z
    .looseObject({
      found: wireStepSchema.optional(),
      tagged: wireStepSchema.optional(),
      removed: wireStepSchema.optional(),
      fitted: wireStepSchema.optional(),
      checked: wireStepSchema.optional()
    })
    .optional(),
  notes: textSchema.optional(),
  /** For the owner alone: stays out of what is shared. */
  privateNotes: textSchema.optional()
});
export type Wire = z.infer<typeof wireSchema>;

export const cableKinds = [
  'coax',
  'twin lead',
  'shielded pair',
  'shielded wire',
  'multi-conductor'
] as const;

export const cableSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  name: shortTextSchema,
  kind: z.string().min(1).max(60),
  /** How many, the shield not counted. A shield is a wire of the cable, so its ends say where it is grounded. */
  conductors: z.number().int().min(1).max(1000).optional(),
  /** What sits on its ends: "phono plug", "lugs". */
  fittings: z
    .looseObject({ from: shortTextSchema.optional(), to: shortTextSchema.optional() })
    .optional(),
  /** Line data, for coax and twin lead. */
  impedanceOhm: z.number().min(0).max(10_000).optional(),
  velocity: z.number().min(0).max(1).optional(),
  ratingV: positiveVoltsSchema.optional(),
  jacket: shortTextSchema.optional(),
  diameterMm: lengthMmSchema.optional(),
  /** What the cable carries: decides whether a shield wants one ground or two. */
  signal: z.enum(['audio', 'video', 'radio frequency', 'supply', 'deflection', 'other']).optional(),
  notes: textSchema.optional()
});
export type Cable = z.infer<typeof cableSchema>;

export const supportSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  unit: idSchema,
  name: shortTextSchema,
  kind: z.enum(['clamp', 'tie', 'grommet', 'hole', 'corner']),
  place: pointSchema,
  heightMm: mmSchema.optional(),
  /** Inside diameter of a hole, grommet or clamp. */
  boreMm: lengthMmSchema.optional()
});
export type Support = z.infer<typeof supportSchema>;
