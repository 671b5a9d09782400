// The schema of version 1, frozen: it says what a document of that version may hold, and is never
// changed again, whatever becomes of the newest one.
import * as z from 'zod';

z.config({ jitless: true });

const idSchema = z
  .string()
  .regex(/^[a-z][0-9a-z]{1,23}$/, 'an id is a small letter followed by 1 to 23 letters or digits');

const orderSchema = z.string().min(1).max(1000);

const textSchema = z.string().max(20_000);
const shortTextSchema = z.string().max(400);

const finite = z.number();
const mmSchema = finite.min(-100_000).max(100_000);
const lengthMmSchema = finite.min(0).max(1_000_000);
const voltsSchema = finite.min(-200_000).max(200_000);
const positiveVoltsSchema = finite.min(0).max(200_000);
const ampsSchema = finite.min(0).max(10_000);
const ohmsSchema = finite.min(0).max(1e12);
const celsiusSchema = finite.min(-273.15).max(1000);

const awgSchema = finite.int().min(-3).max(50);

const pointSchema = z.looseObject({ x: mmSchema, y: mmSchema });

const terminalRefSchema = z.looseObject({ part: idSchema, terminal: idSchema });

const recordOf = <T extends z.ZodType<{ id: string }>>(elementSchema: T) =>
  z.record(idSchema, elementSchema).check(({ value, issues }) => {
    for (const [key, { id }] of Object.entries(value)) {
      if (key === id) continue;
      const message = `is "${id}", but the element is kept under "${key}"; the two must be equal`;
      issues.push({ code: 'custom', path: [key, 'id'], message, input: id });
    }
  });

const placedBySchema = z.enum(['hand', 'layout']);

const policySchema = z.looseObject({
  ladderV: z
    .array(positiveVoltsSchema)
    .min(1)
    .max(60)
    .refine(
      (steps) => steps.every((step, index) => index === 0 || step > (steps[index - 1] ?? 0)),
      'the class ladder must rise from step to step'
    ),

  marginRequired: z.number().min(1).max(10),
  marginPreferred: z.number().min(1).max(10),

  supplyFloorV: positiveVoltsSchema,

  highLine: z.number().min(0).max(0.5),
  ambientC: celsiusSchema,
  hotZoneC: celsiusSchema,

  heaterLow: z.number().min(-0.5).max(0),
  heaterHigh: z.number().min(0).max(0.5),

  slackShare: z.number().min(0).max(1),
  slackMm: lengthMmSchema,

  roundUpMm: z.number().min(0.1).max(100),
  defaultAwg: awgSchema,
  heaterBranchAwg: awgSchema
});

const unitSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  name: shortTextSchema,

  metal: z.enum(['bonded', 'apart', 'none']),

  size: z.looseObject({ width: lengthMmSchema, height: lengthMmSchema }).optional(),

  place: pointSchema.optional(),
  notes: textSchema.optional()
});

const terminalSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,

  name: shortTextSchema,

  offset: pointSchema.optional(),
  heightMm: mmSchema.optional(),
  ending: shortTextSchema.optional(),

  on: terminalRefSchema.optional(),

  grounded: z.boolean().optional(),

  leadsCounted: z.number().int().min(0).max(100).optional(),
  notes: textSchema.optional()
});

const elementBase = { id: idSchema, order: orderSchema, from: idSchema, to: idSchema.optional() };

const elementSchemas = {
  source: z.looseObject({
    ...elementBase,
    kind: z.literal('source'),
    current: z.enum(['dc', 'ac']),
    volts: voltsSchema,
    seriesOhms: ohmsSchema.optional(),

    noLoadVolts: voltsSchema.optional()
  }),
  rectifier: z.looseObject({
    ...elementBase,
    kind: z.literal('rectifier'),

    dropV: positiveVoltsSchema.optional()
  }),
  load: z.looseObject({ ...elementBase, kind: z.literal('load'), amps: ampsSchema }),
  resistor: z.looseObject({
    ...elementBase,
    kind: z.literal('resistor'),
    ohms: ohmsSchema,
    watts: z.number().min(0).max(10_000).optional()
  }),
  heater: z.looseObject({
    ...elementBase,
    kind: z.literal('heater'),
    volts: positiveVoltsSchema,
    amps: ampsSchema
  }),
  capacitor: z.looseObject({
    ...elementBase,
    kind: z.literal('capacitor'),
    farads: z.number().min(0).max(10),
    ratedV: positiveVoltsSchema.optional()
  }),
  pulse: z.looseObject({ ...elementBase, kind: z.literal('pulse'), peakV: positiveVoltsSchema }),
  link: z.looseObject({
    ...elementBase,
    kind: z.literal('link'),
    what: z.enum(['joined', 'fuse', 'switch']),
    closed: z.boolean()
  })
} as const;

const knownElementSchema = z.discriminatedUnion('kind', [
  elementSchemas.source,
  elementSchemas.rectifier,
  elementSchemas.load,
  elementSchemas.resistor,
  elementSchemas.heater,
  elementSchemas.capacitor,
  elementSchemas.pulse,
  elementSchemas.link
]);

const unknownElementSchema = z.looseObject({
  ...elementBase,
  kind: z
    .string()
    .max(60)
    .refine((kind) => !Object.hasOwn(elementSchemas, kind), {
      error: 'an element of a known kind must have its fields',
      abort: true
    })
    .meta({ not: { enum: Object.keys(elementSchemas) } })
});
const elementSchema = z.union([knownElementSchema, unknownElementSchema]);

const partSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  unit: idSchema,
  kind: z.string().min(1).max(60),

  reference: shortTextSchema,

  type: shortTextSchema.optional(),
  value: shortTextSchema.optional(),

  function: shortTextSchema.optional(),

  mates: idSchema.optional(),
  place: z
    .looseObject({
      x: mmSchema,
      y: mmSchema,
      rotation: z.number().min(-360).max(360).optional(),
      face: z.enum(['below', 'above']).optional(),
      by: placedBySchema.optional()
    })
    .optional(),
  diagramPlace: z.looseObject({ x: mmSchema, y: mmSchema, by: placedBySchema }).optional(),
  terminals: recordOf(terminalSchema),
  elements: recordOf(elementSchema).optional(),
  notes: textSchema.optional()
});

const knowledgeSchema = z.enum(['seen', 'metered', 'inferred', 'unknown']);

const wireEndSchema = z.looseObject({
  at: terminalRefSchema.optional(),
  known: knowledgeSchema,
  as: shortTextSchema.optional(),

  termination: shortTextSchema.optional(),
  stripMm: lengthMmSchema.optional(),
  sleeve: shortTextSchema.optional()
});

const ratingKinds = ['any', 'dc', 'ac', 'pulse'] as const;

const conductorFields = {
  awg: awgSchema.optional(),
  stranding: z.enum(['solid', 'stranded']).optional(),
  plating: z.enum(['bare', 'tinned']).optional(),
  colour: shortTextSchema.optional(),
  tracer: shortTextSchema.optional(),
  insulation: shortTextSchema.optional(),

  style: shortTextSchema.optional(),
  ratingV: positiveVoltsSchema.optional(),
  ratingKind: z.enum(ratingKinds).optional(),
  ratingC: celsiusSchema.optional(),
  diameterMm: lengthMmSchema.optional()
};

const foundSchema = z.looseObject({
  ...conductorFields,
  condition: shortTextSchema.optional(),
  notes: textSchema.optional()
});

const plannedSchema = z.looseObject({
  ...conductorFields,
  way: z.enum(['new wire', 're-sleeve', 'splice in', 'keep']).optional(),
  notes: textSchema.optional()
});

const carriesSchema = z.looseObject({
  dcV: voltsSchema.optional(),
  acV: positiveVoltsSchema.optional(),
  pulseV: positiveVoltsSchema.optional(),
  amps: ampsSchema.optional()
});

const wireStates = ['found', 'tagged', 'removed', 'fitted', 'checked'] as const;

const wireSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,

  number: shortTextSchema,
  from: wireEndSchema,
  to: wireEndSchema,
  construction: z.string().min(1).max(60),
  function: shortTextSchema.optional(),
  cable: idSchema.optional(),

  conductor: shortTextSchema.optional(),
  carries: carriesSchema,
  origin: z.enum(['original', 'earlier repair', 'modification']).optional(),
  found: foundSchema,
  serviceData: plannedSchema.optional(),
  planned: plannedSchema,

  route: z.looseObject({ supports: z.array(idSchema).max(200), by: placedBySchema }).optional(),

  outsideMm: lengthMmSchema.optional(),

  tapedMm: lengthMmSchema.optional(),
  critical: z
    .looseObject({
      keepLength: z.boolean().optional(),
      keepPlace: z.boolean().optional(),
      keepShort: z.boolean().optional()
    })
    .optional(),
  dress: textSchema.optional(),

  isPart: z
    .enum(['resistance cord', 'fuse link', 'filament loop', 'twisted-wire capacitor', 'other'])
    .optional(),
  state: z.enum(wireStates),
  notes: textSchema.optional()
});

const cableSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  name: shortTextSchema,
  kind: z.string().min(1).max(60),

  conductors: z.number().int().min(1).max(1000).optional(),

  fittings: z
    .looseObject({ from: shortTextSchema.optional(), to: shortTextSchema.optional() })
    .optional(),

  impedanceOhm: z.number().min(0).max(10_000).optional(),
  velocity: z.number().min(0).max(1).optional(),
  ratingV: positiveVoltsSchema.optional(),
  jacket: shortTextSchema.optional(),
  diameterMm: lengthMmSchema.optional(),

  signal: z.enum(['audio', 'video', 'radio frequency', 'supply', 'deflection', 'other']).optional(),
  notes: textSchema.optional()
});

const supportSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  unit: idSchema,
  name: shortTextSchema,
  kind: z.enum(['clamp', 'tie', 'grommet', 'hole', 'corner']),
  place: pointSchema,
  heightMm: mmSchema.optional(),

  boreMm: lengthMmSchema.optional()
});

const identitySchema = z.looseObject({
  title: shortTextSchema,
  set: shortTextSchema.optional(),
  chassis: shortTextSchema.optional(),
  run: shortTextSchema.optional(),
  tubes: textSchema.optional(),
  dataReference: shortTextSchema.optional(),
  tracedBy: shortTextSchema.optional(),
  setsChecked: z.number().int().min(0).max(100_000).optional(),
  licence: shortTextSchema.optional(),
  notes: textSchema.optional()
});

/** Version 1 as it was. */
export const documentSchemaV1 = z.looseObject({
  format: z.literal('underchassis'),
  version: z.literal(1),
  id: idSchema,

  lineage: z
    .array(z.string().regex(/^[0-9a-f]{16,64}$/, 'a revision is 16 to 64 of 0-9 and a-f'))
    .max(10_000),
  identity: identitySchema,
  policy: policySchema.partial(),
  units: recordOf(unitSchema),
  parts: recordOf(partSchema),
  wires: recordOf(wireSchema),
  cables: recordOf(cableSchema),
  supports: recordOf(supportSchema)
});
