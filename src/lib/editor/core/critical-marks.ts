// The ways in which a wire can be critical, and the edit that marks it so.
import { setWireFields } from '#document/edits.ts';
import type { Edit, Wire } from '#document/index.ts';

export const criticalMarks = [
  { key: 'keepLength', words: 'keep its length' },
  { key: 'keepPlace', words: 'keep its place' },
  { key: 'keepShort', words: 'keep it short' }
] as const;
export type CriticalMark = (typeof criticalMarks)[number]['key'];

/** Marks a wire critical in one way, or takes the mark away; with the last mark goes the record. */
export const markCritical = (wire: Wire, mark: CriticalMark, isSet: boolean): Edit => {
  const others = criticalMarks.some(({ key }) => key !== mark && wire.critical?.[key] === true);
  if (!isSet && !others) return setWireFields(wire.id, { critical: null });
  return setWireFields(wire.id, { critical: { [mark]: isSet ? true : null } });
};
