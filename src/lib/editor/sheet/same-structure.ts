// Whether two states of a document have one layout: the same units, parts and cables, and the same
// wires between the same terminals. What a wire carries, its colour or its state moves nothing; nor does
// where a part stands to scale, or where a hand has placed it in the diagram.
import { hashOfText, type ChassisDocument, type Wire, type WireEnd } from '#document/index.ts';

// An end that was found is drawn at its terminal whatever else is known of it; one that was not
// is drawn with the words that were written down for it.
const isSameEnd = (a: WireEnd, b: WireEnd): boolean =>
  a === b ||
  (a.at?.part === b.at?.part &&
    a.at?.terminal === b.at?.terminal &&
    (a.at !== undefined || a.as === b.as));

const isSameWire = (a: Wire, b: Wire): boolean =>
  a === b ||
  (isSameEnd(a.from, b.from) &&
    isSameEnd(a.to, b.to) &&
    a.cable === b.cable &&
    a.conductor === b.conductor &&
    a.construction === b.construction &&
    a.isPart === b.isPart &&
    a.order === b.order);

const isSameButPlaces = <T extends object>(a: T, b: T): boolean => {
  if (a === b) return true;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)] as (keyof T)[]);
  for (const place of ['place', 'diagramPlace']) keys.delete(place as keyof T);
  return [...keys].every((key) => a[key] === b[key]);
};

const areSame = <T>(
  a: Readonly<Record<string, T>>,
  b: Readonly<Record<string, T>>,
  isSame: (one: T, two: T) => boolean
): boolean => {
  if (a === b) return true;
  const ids = Object.keys(a);
  return (
    ids.length === Object.keys(b).length &&
    ids.every((id) => {
      const [before, after] = [a[id], b[id]];
      return before !== undefined && after !== undefined && isSame(before, after);
    })
  );
};

/** True where a drawing that was laid out for `a` holds for `b`. Records that no edit touched are the
 *  same objects, so this looks closely at a few wires only. */
export const hasSameStructure = (a: ChassisDocument, b: ChassisDocument): boolean => {
  if (a === b) return true;
  if (a.id !== b.id || a.cables !== b.cables) return false;
  return (
    areSame(a.units, b.units, isSameButPlaces) &&
    areSame(a.parts, b.parts, isSameButPlaces) &&
    areSame(a.wires, b.wires, isSameWire)
  );
};

const endKey = ({ at, as }: WireEnd): unknown => at ?? as ?? null;

const withoutPlaces = (things: Readonly<Record<string, object>>): Record<string, object> =>
  Object.fromEntries(
    Object.entries(things).map(([id, thing]) => [
      id,
      { ...thing, place: undefined, diagramPlace: undefined }
    ])
  );

/** A text that is the same for two documents wherever `hasSameStructure` holds between them, on any visit. */
export const structureKey = (document: ChassisDocument): string => {
  const { id, cables } = document;
  const [units, parts] = [document.units, document.parts].map(withoutPlaces);
  const wires = Object.values(document.wires)
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map((wire) => [
      wire.id,
      endKey(wire.from),
      endKey(wire.to),
      wire.cable,
      wire.conductor,
      wire.construction,
      wire.isPart,
      wire.order
    ]);
  return hashOfText(JSON.stringify([id, units, parts, cables, wires], inKeyOrder));
};

/** Undoing a removal adds a key at the end: the order of keys says nothing. */
const inKeyOrder = (_key: string, value: unknown): unknown =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
    : value;
