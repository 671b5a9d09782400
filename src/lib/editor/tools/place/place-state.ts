// What is to be placed: the text as it stands in the field, and the parts that it makes.
import type { Part } from '#document/index.ts';
import type { Spot, ToolWorld } from '../tool.ts';
import { buildOrdered } from './build-parts.ts';
import { partSorts } from './part-sorts.ts';
import { readOrders, type PartOrder } from './read-order.ts';

export interface PlaceState {
  readonly text: string;
  readonly at: Spot | null;
  readonly free: boolean;
  readonly rotation: number;
  readonly face: 'below' | 'above';
  /** The terminal that the first lead of a hanging part is on. */
  readonly hung: string | null;
}

/** Nothing under the pointer yet. */
export const resting: PlaceState = {
  text: partSorts[0]?.example ?? '',
  at: null,
  free: false,
  rotation: 0,
  face: 'below',
  hung: null
};

interface Ready {
  readonly orders: readonly PartOrder[];
  readonly problem: string | null;
}

/** A reference that is written twice places nothing twice. */
const takenAlready = (orders: readonly PartOrder[], { study }: ToolWorld): string | null => {
  const named = orders.flatMap(({ reference }) => reference ?? []);
  const twice = named.find((reference, index) => named.indexOf(reference) !== index);
  if (twice !== undefined) return twice;
  const there = study.index.parts.find(
    (part) => part.place !== undefined && named.includes(part.reference.toUpperCase())
  );
  return there?.reference ?? null;
};

/** What the text orders, or why it orders nothing. */
export const readyOf = ({ text }: PlaceState, world: ToolWorld): Ready => {
  const reading = readOrders(text, Object.values(world.study.document.patterns));
  if (!reading.ok) return { orders: [], problem: reading.problem };
  const taken = takenAlready(reading.orders, world);
  if (taken === null) return { orders: reading.orders, problem: null };
  return {
    orders: [],
    problem: `${taken} is placed already: leave the reference out for the next`
  };
};

const waiting = (order: PartOrder, { study }: ToolWorld): Part | undefined =>
  order.reference === null
    ? undefined
    : study.index.parts.find(({ reference }) => reference.toUpperCase() === order.reference);

/** The ordered parts, those first that are in the document and only have no place yet. */
export const partsFor = (orders: readonly PartOrder[], world: ToolWorld, unit: string): Part[] => {
  const fresh = orders.filter((order) => waiting(order, world) === undefined);
  const built = [...buildOrdered(fresh, world.study.document, { unit, makeId: world.makeId })];
  return orders.flatMap((order) => waiting(order, world) ?? built.shift() ?? []);
};

/** Ids for parts that are only shown. */
export const counter = (): ((kind: string) => string) => {
  let count = 0;
  return (kind) => `${kind.charAt(0)}${(count += 1)}`;
};
