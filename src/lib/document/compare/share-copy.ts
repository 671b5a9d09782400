// A copy for others: what is nobody's business but the owner's stays out unless it is asked for. The copy says
// what was left out, so that merging it back does not take it for removed.
import { hashOfDocument, withRevision } from '../revision.ts';
import type { ChassisDocument } from '../schema.ts';

/** What may be left out of a shared copy. */
export const privateThings = ['shelf', 'prices', 'private notes'] as const;
export type PrivateThing = (typeof privateThings)[number];

/** Under this key a copy says what it is without. */
const withoutKey = 'sharedWithout';

const without = <T extends object>(value: T, key: string): T => {
  if (!Object.hasOwn(value, key)) return value;
  return Object.fromEntries(Object.entries(value).filter(([name]) => name !== key)) as T;
};

const mapRecord = <T>(
  record: Readonly<Record<string, T>>,
  change: (value: T) => T
): Record<string, T> =>
  Object.fromEntries(Object.entries(record).map(([id, value]) => [id, change(value)]));

/** The document without the things named. */
export const leaveOut = (
  document: ChassisDocument,
  things: ReadonlySet<PrivateThing>
): ChassisDocument => {
  let copy = document;
  if (things.has('shelf'))
    copy = {
      ...copy,
      shelf: {},
      wires: mapRecord(copy.wires, (wire) => ({ ...wire, planned: without(wire.planned, 'stock') }))
    };
  // A shelf that goes along may go without what it cost.
  if (things.has('prices'))
    copy = { ...copy, shelf: mapRecord(copy.shelf, (stock) => without(stock, 'pricePerMetre')) };
  if (things.has('private notes'))
    copy = {
      ...copy,
      identity: without(copy.identity, 'privateNotes'),
      wires: mapRecord(copy.wires, (wire) => without(wire, 'privateNotes')),
      parts: mapRecord(copy.parts, (part) => without(part, 'privateNotes')),
      units: mapRecord(copy.units, (unit) => without(unit, 'privateNotes')),
      shelf: mapRecord(copy.shelf, (stock) => without(stock, 'privateNotes'))
    };
  return copy;
};

/** A copy to be given away, with the document as the last of its lineage.
 *  @param withThings what goes along although it is private; nothing where left out */
export const buildShareCopy = (
  document: ChassisDocument,
  withThings: ReadonlySet<PrivateThing> = new Set()
): ChassisDocument => {
  const left = privateThings.filter((thing) => !withThings.has(thing));
  const copy = leaveOut(document, new Set(left));
  const marked: ChassisDocument = { ...copy, [withoutKey]: left };
  return withRevision(marked, hashOfDocument(document));
};

/** What a copy says that it is without; nothing for a document that was never shared. */
export const leftOutOf = (document: ChassisDocument): ReadonlySet<PrivateThing> => {
  const said: unknown = document[withoutKey];
  const list: readonly unknown[] = Array.isArray(said) ? said : [];
  return new Set(privateThings.filter((thing) => list.includes(thing)));
};
