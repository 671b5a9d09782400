// Photos: where the picture is kept, how it came to be true to scale, and how it lies on the sheet.
// The picture itself is not in the document: it is kept beside it, by its hash.
import * as z from 'zod';
import {
  idSchema,
  lengthMmSchema,
  mmSchema,
  orderSchema,
  shortTextSchema,
  terminalRefSchema,
  textSchema
} from './primitives.ts';

const pixelSchema = z.number().min(-100_000).max(100_000);
/** A place in a picture, pixels from its upper left corner. */
export const pixelPointSchema = z.looseObject({ x: pixelSchema, y: pixelSchema });
export type PixelPoint = z.infer<typeof pixelPointSchema>;

/** A picture as a file: what it is called wherever it is kept is its hash. */
export const pictureSchema = z.looseObject({
  /** SHA-256 of the file's bytes. */
  hash: z.string().regex(/^[0-9a-f]{64}$/, 'the hash of a picture is 64 of 0-9 and a-f'),
  type: z.enum(['image/jpeg', 'image/png', 'image/webp']),
  /** Pixels. */
  width: z.number().int().min(1).max(20_000),
  height: z.number().int().min(1).max(20_000)
});
export type Picture = z.infer<typeof pictureSchema>;

/** How a photo came to be true to scale. Without it nothing may be measured on the photo. */
export const photoScaleSchema = z.discriminatedUnion('by', [
  /** Two places and how far apart they are: for a photo taken square on. */
  z.looseObject({
    by: z.literal('two points'),
    a: pixelPointSchema,
    b: pixelPointSchema,
    mm: lengthMmSchema
  }),
  /** The corners of a rectangle of known sides, in turn from the upper left: the eight numbers from
   *  which the straightened picture can be made again at any time. */
  z.looseObject({
    by: z.literal('rectangle'),
    corners: z.tuple([pixelPointSchema, pixelPointSchema, pixelPointSchema, pixelPointSchema]),
    widthMm: lengthMmSchema,
    heightMm: lengthMmSchema
  })
]);
export type PhotoScale = z.infer<typeof photoScaleSchema>;

export const photoSchema = z.looseObject({
  id: idSchema,
  order: orderSchema,
  unit: idSchema,
  name: shortTextSchema,
  picture: pictureSchema,
  /** From which side it was taken. */
  face: z.enum(['below', 'above']),
  /** What a photo of one spot shows. Without it the photo is an underlay of its unit. */
  of: z
    .union([
      terminalRefSchema,
      z.looseObject({ part: idSchema }),
      z.looseObject({ wire: idSchema })
    ])
    .optional(),
  scale: photoScaleSchema.optional(),
  /** Where the upper left corner of the (straightened) picture lies in its unit, and its turn, degrees. */
  place: z
    .looseObject({ x: mmSchema, y: mmSchema, rotation: z.number().min(-360).max(360).optional() })
    .optional(),
  /** 0 is not to be seen, 1 covers. */
  opacity: z.number().min(0).max(1).optional(),
  hidden: z.boolean().optional(),
  /** Cannot be moved or scaled by a slip of the hand. */
  locked: z.boolean().optional(),
  notes: textSchema.optional()
});
export type Photo = z.infer<typeof photoSchema>;
