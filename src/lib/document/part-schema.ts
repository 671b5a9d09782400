// Units, parts, their terminals and the electrical elements between terminals.
import * as z from 'zod';
import {
  ampsSchema,
  idSchema,
  lengthMmSchema,
  mmSchema,
  ohmsSchema,
  orderSchema,
  placedBySchema,
  pointSchema,
  positiveVoltsSchema,
  recordOf,
  shortTextSchema,
  terminalRefSchema,
  textSchema,
  voltsSchema
} from './primitives.ts';

/** A separately mounted piece of the set. */
export const unitSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  name: shortTextSchema,
  /** Whether the unit's metal is joined to the main chassis, stands apart from it, or does not exist. */
  metal: z.enum(['bonded', 'apart', 'none']),
  /** The outline to scale, as seen from below. */
  size: z.looseObject({ width: lengthMmSchema, height: lengthMmSchema }).optional(),
  /** Where the unit's corner lies on the pictorial sheet. */
  place: pointSchema.optional(),
  notes: textSchema.optional()
});
export type Unit = z.infer<typeof unitSchema>;

/** How a terminal is made. Open: an ending that a newer version knows survives. */
export const terminalEndings = [
  'solder lug',
  'wrap post',
  'tube pin',
  'plug pin',
  'pigtail',
  'screw',
  'clip',
  'cap',
  'pad',
  'lead'
] as const;

export const terminalSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  /** What people call it: "5", "red", "anode", "A". */
  name: shortTextSchema,
  /** From the part's place, before the part is turned. */
  offset: pointSchema.optional(),
  heightMm: mmSchema.optional(),
  ending: shortTextSchema.optional(),
  /** Joined to another part's terminal with no wire between, as a resistor's lead on a tube pin. */
  on: terminalRefSchema.optional(),
  /** The terminal is joined to the metal of its unit (a strip's foot, a ground lug). */
  grounded: z.boolean().optional(),
  /** Leads counted at the terminal, wires and component leads alike. */
  leadsCounted: z.number().int().min(0).max(100).optional(),
  notes: textSchema.optional()
});
export type Terminal = z.infer<typeof terminalSchema>;

const elementBase = { id: idSchema, order: orderSchema, from: idSchema, to: idSchema.optional() };

/** Electrical elements between terminals of one part; `to` missing means the unit's metal.
 *  Terminals are given by their id. The kinds are open: an unknown kind survives and is left out of the sums. */
export const elementSchemas = {
  source: z.looseObject({
    ...elementBase,
    kind: z.literal('source'),
    current: z.enum(['dc', 'ac']),
    volts: voltsSchema,
    seriesOhms: ohmsSchema.optional(),
    /** What it rises to before the tubes draw, at nominal line. */
    noLoadVolts: voltsSchema.optional()
  }),
  rectifier: z.looseObject({
    ...elementBase,
    kind: z.literal('rectifier'),
    /** Volts lost while the set draws its normal current. */
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
export type Element = z.infer<typeof knownElementSchema>;
export type ElementKind = Element['kind'];

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
export const elementSchema = z.union([knownElementSchema, unknownElementSchema]);
export type AnyElement = z.infer<typeof elementSchema>;

/** True for an element whose kind this version knows. */
export const isKnownElement = (element: AnyElement): element is Element =>
  Object.hasOwn(elementSchemas, element.kind);

/** The kinds of part that this version draws and reckons with. The schema is open to others. */
export const partKinds = [
  'tube',
  'picture tube',
  'transformer',
  'coil',
  'yoke',
  'resistor',
  'control',
  'capacitor',
  'terminal strip',
  'plug',
  'jack',
  'switch',
  'fuse',
  'lamp',
  'speaker',
  'antenna',
  'rectifier',
  'ground lug',
  'splice',
  'board',
  'clip',
  'crystal',
  'other'
] as const;
export type PartKind = (typeof partKinds)[number];

export const partSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  unit: idSchema,
  kind: z.string().min(1).max(60),
  /** The reference designation: "V7", "TS2". */
  reference: shortTextSchema,
  /** A type from the handbook, such as "6CG7". */
  type: shortTextSchema.optional(),
  value: shortTextSchema.optional(),
  /** What it does in words: "horizontal output". */
  function: shortTextSchema.optional(),
  /** The plug or jack that this one mates with: pins of one name are joined. */
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
  notes: textSchema.optional(),
  /** For the owner alone: stays out of what is shared. */
  privateNotes: textSchema.optional()
});
export type Part = z.infer<typeof partSchema>;
