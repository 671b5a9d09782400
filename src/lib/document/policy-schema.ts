// The rules of thumb that a restorer may change: margins, the class ladder, slack, defaults.
// A document stores only what differs from the defaults below.
import * as z from 'zod';
import { awgSchema, celsiusSchema, lengthMmSchema, positiveVoltsSchema } from './primitives.ts';

export const policySchema = z.looseObject({
  /** Insulation classes that wire is bought in, smallest first, volts. */
  ladderV: z
    .array(positiveVoltsSchema)
    .min(1)
    .max(60)
    .refine(
      (steps) => steps.every((step, index) => index === 0 || step > (steps[index - 1] ?? 0)),
      'the class ladder must rise from step to step'
    ),
  /** Rating over stress that is required, and that is preferred. */
  marginRequired: z.number().min(1).max(10),
  marginPreferred: z.number().min(1).max(10),
  /** Nothing on a supply rail below this class. */
  supplyFloorV: positiveVoltsSchema,
  /** Nothing on the line side below this class: plug, cord, fuse, switch, primary. */
  lineFloorV: positiveVoltsSchema,
  /** Line voltage may stand this share above nominal. */
  highLine: z.number().min(0).max(0.5),
  ambientC: celsiusSchema,
  hotZoneC: celsiusSchema,
  /** Heater volts may lie between these shares of the rating. */
  heaterLow: z.number().min(-0.5).max(0),
  heaterHigh: z.number().min(0).max(0.5),
  /** Slack added to a measured path, as a share and as a length. */
  slackShare: z.number().min(0).max(1),
  slackMm: lengthMmSchema,
  /** Cut lengths are rounded up to a multiple of this. */
  roundUpMm: z.number().min(0.1).max(100),
  /** Which published currents a wire is held against; they differ by four to one. */
  ampacityBasis: z.enum(['cabinet', 'space', '700 cmil']),
  defaultAwg: awgSchema,
  heaterBranchAwg: awgSchema
});
export type Policy = z.infer<typeof policySchema>;

/** Common practice, no source, except where a rule names one. */
export const defaultPolicy: Policy = {
  ladderV: [300, 600, 1000, 3000, 5000, 10_000, 15_000, 20_000, 25_000, 30_000, 40_000],
  marginRequired: 1.25,
  marginPreferred: 1.5,
  supplyFloorV: 600,
  lineFloorV: 600,
  highLine: 0.1,
  ambientC: 50,
  hotZoneC: 85,
  heaterLow: -0.05,
  heaterHigh: 0.05,
  slackShare: 0.05,
  slackMm: 10,
  roundUpMm: 5,
  ampacityBasis: 'cabinet',
  defaultAwg: 22,
  heaterBranchAwg: 20
};
