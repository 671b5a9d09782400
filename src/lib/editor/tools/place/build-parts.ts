// What was ordered as parts of the document: terminals where such a part usually has them, a tube's
// pins and heater from the handbook, the next free reference.
import {
  orderAtEnd,
  ordersBetween,
  type ChassisDocument,
  type MakeId,
  type Part,
  type Terminal
} from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { offsetsOf } from '#drawing/pictorial/terminal-offsets.ts';
import { buildPart } from '#intake/build-part.ts';
import type { PartDraft } from '#intake/part-drafts.ts';
import { copyPart } from '../duplicate.ts';
import { nextReference } from '../next-reference.ts';
import { isPigtail, type PartOrder } from './read-order.ts';

/** From the socket of a picture tube to its anode button, as the tube lies on its side, mm. Usual for a
 *  tube of 90 degrees; from memory. */
const anodeMm = { x: 34, y: -120 } as const;

const round = (value: number): number => Math.round(value * 100) / 100;

interface Home {
  readonly unit: string;
  readonly makeId: MakeId;
}

const draftOf = ({ sort, type, base }: PartOrder, reference: string): PartDraft => ({
  key: reference,
  reference,
  kind: sort.kind,
  type: type ?? base?.id ?? null,
  does: null,
  firstRow: 0,
  terminals: new Map(),
  bare: 0,
  unitVotes: new Map(),
  isApart: false
});

const tubePart = (order: PartOrder, reference: string, { unit, makeId }: Home): Part => {
  const draft = draftOf(order, reference);
  const place = { unit, order: 'a0', reference };
  const { base } = order;
  const { part } = buildPart(base ? { ...draft, type: base.id } : draft, place, makeId);
  const isPicture = order.sort.kind === 'picture tube';
  const terminals = sortByOrder(part.terminals).map((terminal): Terminal =>
    isPicture && terminal.ending === 'cap' ? { ...terminal, offset: anodeMm } : terminal
  );
  if (isPicture && !terminals.some(({ ending }) => ending === 'cap')) {
    const id = makeId('terminal');
    const last = orderAtEnd(terminals);
    terminals.push({ id, order: last, name: 'anode', ending: 'cap', offset: anodeMm });
  }
  const type = order.type ?? order.base?.name;
  return {
    ...part,
    ...(type === undefined ? {} : { type }),
    terminals: Object.fromEntries(terminals.map((terminal) => [terminal.id, terminal]))
  };
};

const endingOf = ({ sort }: PartOrder, name: string): string =>
  sort.kind === 'transformer' && isPigtail(name) ? 'pigtail' : sort.ending;

const plainPart = (order: PartOrder, reference: string, { unit, makeId }: Home): Part => {
  const { sort, names, grounded, value } = order;
  const keys = ordersBetween(null, null, names.length);
  const terminals = names.map((name, index): Terminal => ({
    id: makeId('terminal'),
    order: keys[index] ?? 'a0',
    name,
    ending: endingOf(order, name),
    ...(sort.grounded === true || grounded.includes(name) ? { grounded: true } : {})
  }));
  return {
    id: makeId('part'),
    order: 'a0',
    unit,
    kind: sort.kind,
    reference,
    ...(value === null ? {} : { value }),
    terminals: Object.fromEntries(terminals.map((terminal) => [terminal.id, terminal]))
  };
};

const patternPart = (order: PartOrder, reference: string, { unit, makeId }: Home): Part | null => {
  const { pattern } = order;
  if (!pattern) return null;
  const { kind, type, value, notes } = pattern;
  return {
    id: makeId('part'),
    order: 'a0',
    unit,
    kind,
    reference,
    ...(type === undefined ? {} : { type }),
    ...(value === undefined ? {} : { value }),
    ...(notes === undefined ? {} : { notes }),
    ...copyPart(pattern, makeId)
  };
};

/** Terminals without a place of their own get the usual one, so that lengths can be reckoned. */
const withOffsets = (part: Part): Part => {
  const listed = sortByOrder(part.terminals);
  const offsets = offsetsOf(part, listed);
  const terminals = listed.map((terminal): Terminal => {
    const at = offsets.get(terminal.id);
    return at ? { ...terminal, offset: { x: round(at.x), y: round(at.y) } } : terminal;
  });
  return { ...part, terminals: Object.fromEntries(terminals.map((one) => [one.id, one])) };
};

/** The parts that were ordered, without a place, each with a reference and an order of its own. */
export const buildOrdered = (
  orders: readonly PartOrder[],
  document: Pick<ChassisDocument, 'parts'>,
  home: Home
): readonly Part[] => {
  const parts = { ...document.parts };
  return orders.map((order) => {
    const reference = order.reference ?? nextReference({ parts }, order.sort.letters);
    const made =
      patternPart(order, reference, home) ??
      (order.sort.takes === 'type' ? tubePart : plainPart)(order, reference, home);
    const does = order.does === null ? {} : { function: order.does };
    const part = withOffsets({ ...made, ...does, order: orderAtEnd(parts) });
    parts[part.id] = part;
    return part;
  });
};
