// Whether two states of a document have one layout: the same units, parts and cables, and the same
// wires between the same terminals. What a wire carries, its colour or its state moves nothing.
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

/** True where a drawing that was laid out for `a` holds for `b`. Records that no edit touched are the
 *  same objects, so this looks closely at a few wires only. */
export const hasSameStructure = (a: ChassisDocument, b: ChassisDocument): boolean => {
  if (a === b) return true;
  if (a.id !== b.id || a.units !== b.units || a.parts !== b.parts || a.cables !== b.cables) {
    return false;
  }
  if (a.wires === b.wires) return true;
  const ids = Object.keys(a.wires);
  return (
    ids.length === Object.keys(b.wires).length &&
    ids.every((id) => {
      const [before, after] = [a.wires[id], b.wires[id]];
      return before !== undefined && after !== undefined && isSameWire(before, after);
    })
  );
};

const endKey = ({ at, as }: WireEnd): unknown => at ?? as ?? null;

/** A text that is the same for two documents wherever `hasSameStructure` holds between them, on any visit. */
export const structureKey = (document: ChassisDocument): string => {
  const { id, units, parts, cables } = document;
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
