// Points: terminals, and the metal of each unit, joined where no wire is needed for it. A lug with the
// leads soldered to it is one point, and so are a plug's pin and the jack's, and all on one metal.
import type { ChassisDocument, Id, Part, Unit, Wire } from '#document/index.ts';
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
  const chassis = parts.terminals.length;
  const apart = Object.values(units).filter(({ metal }) => metal === 'apart');
  const metalApart = new Map(apart.map(({ id }, n) => [id, chassis + 1 + n]));
  const size = chassis + 1 + apart.length;
  const sets = new DisjointSets(size);
  const metalOf = (unit: Id): number | undefined =>
    findElement(units, unit)?.metal === 'bonded' ? chassis : metalApart.get(unit);
  for (const part of parts.parts) joinWithin(part, parts, sets, metalOf);
  const rootOf = Int32Array.from({ length: size }, (_, point) => sets.rootOf(point));
  const made = { keys: parts.keys, rootOf, chassis, metalApart, source: { parts, units } };
  return before && isSame(before, made, units)
    ? { ...made, rootOf: before.rootOf, metalApart: before.metalApart }
    : made;
}

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
  index: PartsIndex,
  sets: DisjointSets,
  metalOf: (unit: Id) => number | undefined
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
    if (!isKnownElement(element) || element.kind !== 'link' || !element.closed) continue;
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
