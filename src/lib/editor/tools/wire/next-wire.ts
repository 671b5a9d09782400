// The wire that a press is about to make: its number in the run, and what is set for all wires of it.
import {
  orderAtEnd,
  type ChassisDocument,
  type Found,
  type MakeId,
  type Wire,
  type WireEnd
} from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { readColour, readGauge, type CellReading } from '../../schedule/read-cell.ts';

/** The prefix with the number after the highest that follows it: "H4" after "H3" and "H2b". */
export const nextNumberOf = ({ wires }: Pick<ChassisDocument, 'wires'>, prefix: string): string => {
  let highest = 0;
  const start = prefix.toLowerCase();
  for (const { number } of Object.values(wires)) {
    if (!number.toLowerCase().startsWith(start)) continue;
    const digits = /^\d{1,6}/.exec(number.slice(prefix.length))?.[0];
    if (digits !== undefined) highest = Math.max(highest, Number(digits));
  }
  return `${prefix}${highest + 1}`;
};

/** The wire that was recorded last, or null. */
export const lastWire = ({ wires }: Pick<ChassisDocument, 'wires'>): Wire | null =>
  sortByOrder(wires).at(-1) ?? null;

export type FoundReading =
  { readonly ok: true; readonly found: Found } | { readonly ok: false; readonly why: string };

/** Gauge and colour as they are typed; empty is not known. */
export const readFound = (gauge: string, colour: string): FoundReading => {
  const found: Found = {};
  const readings: readonly CellReading[] = [readGauge(gauge), readColour(colour)];
  for (const reading of readings) {
    if (!reading.ok) return reading;
    for (const [key, value] of Object.entries(reading.fields.found ?? {})) {
      if (value !== null) Object.assign(found, { [key]: value });
    }
  }
  return { ok: true, found };
};

export interface WirePlan {
  readonly from: WireEnd;
  readonly to: WireEnd;
  readonly prefix: string;
  readonly found: Found;
  /** Ids of the supports that it was led through, in order. */
  readonly supports: readonly string[];
}

/** The wire as it would be added to the document. */
export const planWire = (document: ChassisDocument, plan: WirePlan, makeId: MakeId): Wire => ({
  id: makeId('wire'),
  order: orderAtEnd(document.wires),
  number: nextNumberOf(document, plan.prefix),
  from: plan.from,
  to: plan.to,
  construction: 'hook-up wire',
  carries: {},
  found: plan.found,
  planned: {},
  ...(plan.supports.length === 0
    ? {}
    : { route: { supports: [...plan.supports], by: 'hand' as const } }),
  state: 'found'
});
