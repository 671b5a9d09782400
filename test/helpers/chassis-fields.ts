// How given names and fields turn into what a document stores.
import type { Part, Terminal } from '#document/index.ts';
import { findTubeType } from '#handbook/tube-types.ts';
import { generateKeyBetween } from 'fractional-indexing';
import type { ElementSpec, TerminalSpec } from './chassis-options.ts';
import { circleOffsets, socketOffsets, type Spot } from './chassis-places.ts';

type Loose<T> = { [K in keyof T]?: T[K] | undefined };

/** The given fields without those that are undefined. */
export const present = <T extends object>(fields: Loose<T>): T =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as T;

export const point = (spot: Spot) => ({ x: spot[0], y: spot[1] });

/** `prefix` and the letters and digits of `name`, made unique among the ids that are taken. */
export const idFrom = (prefix: string, name: string, taken: object): string => {
  const stem = name.toLowerCase().replaceAll(/[^0-9a-z]/g, '') || '0';
  for (let turn = 0; ; turn++) {
    const tail = turn === 0 ? '' : `x${turn}`;
    const id = prefix + stem.slice(0, 23 - tail.length) + tail;
    if (!(id in taken)) return id;
  }
};

/** Elements with ids, their ends given by the names of the terminals. */
export const elementsOf = (
  reference: string,
  terminals: Readonly<Record<string, Terminal>>,
  specs: readonly ElementSpec[]
): NonNullable<Part['elements']> => {
  const idOf = (name: string): string => {
    const match = Object.values(terminals).find((terminal) => terminal.name === name);
    if (!match) throw new Error(`${reference} has no terminal "${name}"`);
    return match.id;
  };
  const elements: Record<string, unknown> = {};
  let order: string | null = null;
  for (const { from, to, ...rest } of specs) {
    const id = idFrom('e', `${rest.kind}${from}`, elements);
    order = generateKeyBetween(order, null);
    const ends = { from: idOf(from), ...(to === undefined ? {} : { to: idOf(to) }) };
    elements[id] = { ...rest, ...ends, id, order };
  }
  return elements as NonNullable<Part['elements']>;
};

/** The terminals of a tube's socket, and its cap where it has one. */
export const tubeTerminalsOf = (
  typeName: string,
  more: {
    pins?: number | undefined;
    grounded?: readonly string[] | undefined;
    cap?: { name: string; offset?: Spot } | undefined;
  }
): TerminalSpec[] => {
  const type = findTubeType(typeName);
  const spots = type ? socketOffsets(type.base) : circleOffsets(more.pins ?? 9, 20);
  const pins = spots.map((offset, index) => {
    const name = String(index + 1);
    const grounded = more.grounded?.includes(name) === true ? true : undefined;
    return present<TerminalSpec>({ name, offset, ending: 'tube pin', grounded });
  });
  const { name = 'cap', offset = [0, 0] } = more.cap ?? {};
  return type?.topCap ? [...pins, { name, offset, ending: 'cap' }] : pins;
};
