// A new chassis from what is known before the first wire: its name, its units, its tubes. Nothing is said
// of where anything stands: that is measured later, or never.
import {
  buildEmptyDocument,
  ordersBetween,
  type ChassisDocument,
  type MakeId,
  type Unit
} from '#document/index.ts';
import { buildOrdered } from '../tools/place/build-parts.ts';
import type { LineUpEntry } from './line-up.ts';

export interface NewChassis {
  readonly title: string;
  /** Names of its units; the first holds what is said of no unit. */
  readonly units: readonly string[];
  readonly lineUp: readonly LineUpEntry[];
  /** The line-up as it was written. */
  readonly tubes: string;
}

/** "Main chassis, tuner": each name once. */
export const readUnitNames = (text: string): readonly string[] => {
  const names = text
    .split(/[,;\n]/)
    .map((name) => name.trim())
    .filter((name) => name !== '');
  const once = new Map(names.map((name) => [name.toLowerCase(), name]));
  return once.size === 0 ? ['Main chassis'] : [...once.values()];
};

export const buildNewChassis = (
  { title, units, lineUp, tubes }: NewChassis,
  makeId: MakeId
): ChassisDocument => {
  const empty = buildEmptyDocument({ title: title.trim() || 'Untitled chassis', makeId });
  const [model] = Object.values(empty.units);
  if (model === undefined) return empty;
  const orders = ordersBetween(null, null, units.length);
  const made = units.map((name, index): Unit => ({
    ...model,
    id: makeId('unit'),
    order: orders[index] ?? 'a0',
    name
  }));
  const parts: ChassisDocument['parts'] = {};
  for (const { unit, orders: ordered } of lineUp) {
    const home = made.find(({ name }) => name === unit) ?? made[0] ?? model;
    for (const part of buildOrdered(ordered, { parts }, { unit: home.id, makeId }))
      parts[part.id] = part;
  }
  const written = tubes.trim();
  return {
    ...empty,
    identity: { ...empty.identity, ...(written === '' ? {} : { tubes: written }) },
    units: Object.fromEntries(made.map((unit) => [unit.id, unit])),
    parts
  };
};
