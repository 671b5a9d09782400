// A wire that is added by hand: numbered after the highest, last in the schedule.
import { orderAtEnd, type ChassisDocument, type MakeId, type Wire } from '#document/index.ts';

/** The number after the highest whole number on any tag: "95" after "12", "60b" and "94". */
export const nextNumber = (document: ChassisDocument): string => {
  let highest = 0;
  for (const { number } of Object.values(document.wires)) {
    const leading = /^\d{1,6}/.exec(number)?.[0];
    if (leading !== undefined) highest = Math.max(highest, Number(leading));
  }
  return String(highest + 1);
};

/** A wire of which nothing is known yet. */
export const buildNewWire = (document: ChassisDocument, makeId: MakeId): Wire => ({
  id: makeId('wire'),
  order: orderAtEnd(document.wires),
  number: nextNumber(document),
  from: { known: 'unknown' },
  to: { known: 'unknown' },
  construction: 'hook-up wire',
  carries: {},
  found: {},
  planned: {},
  state: 'found'
});
