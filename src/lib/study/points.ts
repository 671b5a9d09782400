// Points: terminals, and the metal of each unit, joined where no wire is needed for it. A lug with the
// leads soldered to it is one point, and so are a plug's pin and the jack's, and all on one metal.
import type { ChassisDocument, Element, Id, Part, Unit, Wire } from '#document/index.ts';
import { isKnownElement } from '#document/part-schema.ts';
import { findElement } from '#document/references.ts';
import { DisjointSets } from './disjoint-sets.ts';
import type { PartsIndex } from './index-parts.ts';
import { keyOfRef, terminalKey } from './terminal-key.ts';

export interface Points {
  readonly keys: readonly string[];
  /** By number of a terminal, then of the metals: the number that stands for the point. */
  readonly rootOf: Int32Array;
  /** The metal of the main chassis, shared by every unit that is bonded to it. */
  readonly chassis: number;
  /** The metal of units that stand apart, by unit. */
  readonly metalApart: ReadonlyMap<Id, number>;
  readonly source: { readonly parts: PartsIndex; readonly units: ChassisDocument['units'] };
}

/** True for a terminal that sits on its unit's metal, where the unit has any. */
export const isOnMetal = (part: Part, grounded: boolean | undefined): boolean =>
  grounded === true || part.kind === 'ground lug';

/** True where a wire makes its two ends one net. A resistance cord drops volts along its length
 *  and a twisted-wire capacitor passes no direct current. */
export const joinsItsEnds = (wire: Wire): boolean =>
  wire.isPart !== 'resistance cord' && wire.isPart !== 'twisted-wire capacitor';

/** The point of a unit's metal; undefined for a unit without metal, or a missing one. */
export const metalPointOf = (
  { chassis, metalApart, rootOf, source }: Points,
  unit: Id
): number | undefined => {
  const metal = findElement(source.units, unit)?.metal;
  const point = metal === 'bonded' ? chassis : metalApart.get(unit);
  return point === undefined ? undefined : rootOf[point];
};

export function joinPoints(
  parts: PartsIndex,
  units: ChassisDocument['units'],
  before?: Points
): Points {
  if (before?.source.parts === parts && before.source.units === units) return before;
  const metals = numberMetals(units, parts.terminals.length);
  const sets = new DisjointSets(metals.size);
  joinParts(parts, metals, sets, ({ closed }) => closed);
  const rootOf = Int32Array.from({ length: metals.size }, (_, point) => sets.rootOf(point));
  const { chassis, apart: metalApart } = metals;
  const made = { keys: parts.keys, rootOf, chassis, metalApart, source: { parts, units } };
  return before && isSame(before, made, units)
    ? { ...made, rootOf: before.rootOf, metalApart: before.metalApart }
    : made;
}

/** The metal of units as points after those of the terminals. */
export interface Metals {
  readonly chassis: number;
  readonly apart: ReadonlyMap<Id, number>;
  /** How many points there are with them. */
  readonly size: number;
  /** The point of a unit's metal; undefined for a unit without metal, or a missing one. */
  readonly of: (unit: Id) => number | undefined;
}

export function numberMetals(units: ChassisDocument['units'], terminals: number): Metals {
  const own = Object.values(units).filter(({ metal }) => metal === 'apart');
  const apart = new Map(own.map(({ id }, n) => [id, terminals + 1 + n]));
  return {
    chassis: terminals,
    apart,
    size: terminals + 1 + own.length,
    of: (unit) => (findElement(units, unit)?.metal === 'bonded' ? terminals : apart.get(unit))
  };
}

/** Joins all that needs no wire: leads on terminals, the metal, mated plugs, and links as `isClosed` has it. */
export function joinParts(
  index: Pick<PartsIndex, 'parts' | 'partById' | 'terminalByKey' | 'entriesOf'>,
  metals: Metals,
  sets: DisjointSets,
  isClosed: (link: Link) => boolean
): void {
  for (const part of index.parts) joinWithin(part, index, sets, metals.of, isClosed);
}

type Link = Extract<Element, { kind: 'link' }>;

/** The same points with the same metals: what is built on them need not be built again. */
function isSame(before: Points, now: Points, units: ChassisDocument['units']): boolean {
  if (before.keys !== now.keys || before.rootOf.length !== now.rootOf.length) return false;
  if (![...now.metalApart].every(([unit, point]) => before.metalApart.get(unit) === point)) {
    return false;
  }
  const metalWas = (id: Id): Unit['metal'] | undefined =>
    findElement(before.source.units, id)?.metal;
  if (before.source.units !== units) {
    const all = Object.values(units);
    if (all.length !== Object.keys(before.source.units).length) return false;
    if (!all.every(({ id, metal }) => metalWas(id) === metal)) return false;
  }
  return now.rootOf.every((root, point) => before.rootOf[point] === root);
}

function joinWithin(
  part: Part,
  index: Pick<PartsIndex, 'partById' | 'terminalByKey' | 'entriesOf'>,
  sets: DisjointSets,
  metalOf: (unit: Id) => number | undefined,
  isClosed: (link: Link) => boolean
): void {
  const numberOf = (key: string) => index.terminalByKey.get(key)?.number;
  const join = (a: number | undefined, b: number | undefined) => {
    if (a !== undefined && b !== undefined) sets.join(a, b);
  };
  const entries = index.entriesOf.get(part) ?? [];
  for (const { number, terminal } of entries) {
    if (terminal.on) join(number, numberOf(keyOfRef(terminal.on)));
    if (isOnMetal(part, terminal.grounded)) join(number, metalOf(part.unit));
  }
  for (const element of Object.values(part.elements ?? {})) {
    if (!isKnownElement(element) || element.kind !== 'link' || !isClosed(element)) continue;
    const to =
      element.to === undefined ? metalOf(part.unit) : numberOf(terminalKey(part.id, element.to));
    join(numberOf(terminalKey(part.id, element.from)), to);
  }
  const mate = part.mates === undefined ? undefined : index.partById.get(part.mates);
  if (!mate) return;
  const nameOf = (name: string) => name.trim().toLowerCase();
  const byName = new Map(
    (index.entriesOf.get(mate) ?? []).map(({ terminal, number }) => [nameOf(terminal.name), number])
  );
  for (const { terminal, number } of entries) join(number, byName.get(nameOf(terminal.name)));
}
