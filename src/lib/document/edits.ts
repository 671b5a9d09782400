// Edits that are made in many places, each by a function that says what it does.
import type { Edit, ElementName, Fields } from './edit.ts';
import type { Id, Point, TerminalRef } from './primitives.ts';
import type { Policy } from './policy-schema.ts';
import type { Proof } from './proof-schema.ts';
import type { Identity } from './schema.ts';
import type { Found, Planned, Wire, WireEnd } from './wire-schema.ts';
import type { ElementOf } from './working-copy.ts';

/** Fields to change: null takes one away, what is not named stays. */
export type Changes<T> = {
  readonly [K in keyof T]?:
    | (NonNullable<T[K]> extends readonly unknown[]
        ? NonNullable<T[K]>
        : NonNullable<T[K]> extends object
          ? Changes<NonNullable<T[K]>>
          : NonNullable<T[K]>)
    | null;
};

export const addElement = <K extends ElementName>(kind: K, element: ElementOf[K]): Edit => ({
  kind: `add-${kind}`,
  args: { element: element as ElementOf[K] & Fields }
});

export const changeElement = <K extends ElementName>(
  kind: K,
  id: Id,
  fields: Changes<ElementOf[K]>
): Edit => ({ kind: `change-${kind}`, args: { id, fields: fields as Fields } });

export const removeElement = (kind: ElementName, id: Id): Edit => ({
  kind: `remove-${kind}`,
  args: { id }
});

export const setWireFields = (id: Id, fields: Changes<Wire>): Edit =>
  changeElement('wire', id, fields);

export const setFound = (id: Id, found: Changes<Found>): Edit => setWireFields(id, { found });

export const setPlanned = (id: Id, planned: Changes<Planned>): Edit =>
  setWireFields(id, { planned });

/** Puts one end of a wire on a terminal. What was written down for the end stays. */
export const connectEnd = (
  id: Id,
  end: 'from' | 'to',
  at: TerminalRef,
  known: WireEnd['known']
): Edit => setWireFields(id, { [end]: { at, known } });

/** Takes one end of a wire off its terminal. What was written down for the end stays.
 *  @param as what to write down, where there is something to say */
export const looseEnd = (id: Id, end: 'from' | 'to', as?: string): Edit =>
  setWireFields(id, { [end]: { at: null, known: 'unknown', ...(as === undefined ? {} : { as }) } });

/** Puts a part somewhere on the pictorial sheet, by hand. */
export const movePart = (id: Id, { x, y }: Point): Edit =>
  changeElement('part', id, { place: { x, y, by: 'hand' } });

export const setIdentity = (fields: Changes<Identity>): Edit => ({
  kind: 'change-identity',
  args: { fields: fields as Fields }
});

/** null goes back to the default. */
export const setPolicy = (fields: Changes<Policy>): Edit => ({
  kind: 'change-policy',
  args: { fields: fields as Fields }
});

/** What was measured; null takes a reading away. */
export const setProof = (fields: Changes<Proof>): Edit => ({
  kind: 'change-proof',
  args: { fields: fields as Fields }
});

/** All of them or none, as one step of undo called `name`. */
export const doMany = (name: string, edits: readonly Edit[]): Edit => ({
  kind: 'do-many',
  args: { name, edits }
});
