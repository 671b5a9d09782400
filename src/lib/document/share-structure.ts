// A document that was read again says the same as the one in the hand in most of its places. Whoever asks
// "has this changed?" by identity (the study, the drawing, undo) is then asked again only where it has.
import { isRecord, isSameJson } from './plain-json.ts';
import type { ChassisDocument } from './schema.ts';

/** Document, record of elements, element, field. */
const levels = 4;

const share = (before: unknown, after: unknown, level: number): unknown => {
  if (isSameJson(before, after)) return before;
  if (level === 0 || !isRecord(before) || !isRecord(after)) return after;
  return Object.fromEntries(
    Object.entries(after).map(([key, value]) => [
      key,
      Object.hasOwn(before, key) ? share(before[key], value, level - 1) : value
    ])
  );
};

/** `after`, made of the objects of `before` wherever both say the same. */
export const shareStructure = (before: ChassisDocument, after: ChassisDocument): ChassisDocument =>
  share(before, after, levels) as ChassisDocument;
