// The small schemas that every element of a chassis document is made of: ids, order keys,
// amounts with their unit in the name, and the place of a thing.
import * as z from 'zod';

// Zod can compile parsers with `new Function`; the content security policy forbids that.
z.config({ jitless: true });

/** An id is a letter (what kind of thing) and nine base-32 characters, for example `w4k2m8x0qa`. */
export const idSchema = z
  .string()
  .regex(/^[a-z][0-9a-z]{1,23}$/, 'an id is a small letter followed by 1 to 23 letters or digits');
export type Id = z.infer<typeof idSchema>;

/** A fractional key: elements are sorted by it, and a new one fits between any two. */
export const orderSchema = z.string().min(1).max(1000);

export const textSchema = z.string().max(20_000);
export const shortTextSchema = z.string().max(400);

/** A day of the calendar, as ISO 8601 has it: "2026-11-26". */
export const daySchema = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/, 'a day is written as year, month and day: 2026-11-26');

const finite = z.number();
export const mmSchema = finite.min(-100_000).max(100_000);
export const lengthMmSchema = finite.min(0).max(1_000_000);
export const voltsSchema = finite.min(-200_000).max(200_000);
export const positiveVoltsSchema = finite.min(0).max(200_000);
export const ampsSchema = finite.min(0).max(10_000);
export const ohmsSchema = finite.min(0).max(1e12);
export const celsiusSchema = finite.min(-273.15).max(1000);
/** American wire gauge; 0 is 1/0, -3 is 4/0. Half sizes do not occur in hook-up wire. */
export const awgSchema = finite.int().min(-3).max(50);

/** A place in millimetres in its unit, as seen from below (the wiring side). */
export const pointSchema = z.looseObject({ x: mmSchema, y: mmSchema });
export type Point = z.infer<typeof pointSchema>;

/** A terminal of a part. Either may have gone missing: that is a finding, not a parse error. */
export const terminalRefSchema = z.looseObject({ part: idSchema, terminal: idSchema });
export type TerminalRef = z.infer<typeof terminalRefSchema>;

/** Elements by their id; an element kept under another key than its own id is refused. */
export const recordOf = <T extends z.ZodType<{ id: string }>>(elementSchema: T) =>
  z.record(idSchema, elementSchema).check(({ value, issues }) => {
    for (const [key, { id }] of Object.entries(value)) {
      if (key === id) continue;
      const message = `is "${id}", but the element is kept under "${key}"; the two must be equal`;
      issues.push({ code: 'custom', path: [key, 'id'], message, input: id });
    }
  });

/** Who placed a thing: what a hand placed is never moved by a layout. */
export const placedBySchema = z.enum(['hand', 'layout']);
