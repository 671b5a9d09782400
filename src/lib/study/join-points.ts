// Which points of the chassis are connected: terminals, and the metal of each unit, as numbered
// points of a union-find. Two answers: joined without any wire, and joined by wires as well.
import type { ChassisDocument, Id, Part, Wire } from '#document/index.ts';
import { isKnownElement } from '#document/part-schema.ts';
import { findElement } from '#document/references.ts';
import { DisjointSets } from './disjoint-sets.ts';
import { keyOfRef, terminalKey } from './terminal-key.ts';
import type { DocumentIndex } from './types.ts';

export interface JoinedPoints {
  /** Joined by lugs, leads soldered to terminals, plugs in jacks, closed links: no wire. */
  readonly withoutWires: DisjointSets;
  readonly all: DisjointSets;
  /** How many points there are: terminals first, in the index's order, then the metal. */
  readonly points: number;
  /** The point of the main chassis, shared by every unit that is bonded to it. */
  readonly chassisPoint: number;
  /** The point of a unit's metal; undefined for a unit without metal, or a missing one. */
  readonly metalPointOf: (unit: Id) => number | undefined;
}

/** True for a terminal that sits on its unit's metal, where the unit has any. */
export const isOnMetal = (part: Part, grounded: boolean | undefined): boolean =>
  grounded === true || part.kind === 'ground lug';

/** True where a wire makes its two ends one point. A resistance cord drops volts along its length
 *  and a twisted-wire capacitor passes no direct current. */
export const joinsItsEnds = (wire: Wire): boolean =>
  wire.isPart !== 'resistance cord' && wire.isPart !== 'twisted-wire capacitor';

export function joinPoints(document: ChassisDocument, index: DocumentIndex): JoinedPoints {
  const chassisPoint = index.terminals.length;
  const apart = Object.values(document.units).filter((unit) => unit.metal === 'apart');
  const pointOfApart = new Map(apart.map((unit, n) => [unit.id, chassisPoint + 1 + n]));
  const metalPointOf = (unitId: Id): number | undefined => {
    const unit = findElement(document.units, unitId);
    return unit?.metal === 'bonded' ? chassisPoint : pointOfApart.get(unitId);
  };
  const points = chassisPoint + 1 + apart.length;
  const withoutWires = new DisjointSets(points);
  for (const part of index.parts) joinWithinPart(part, index, withoutWires, metalPointOf);
  const all = withoutWires.copy();
  for (const wire of index.wires) {
    const from = index.findAt(wire.from);
    const to = index.findAt(wire.to);
    if (from && to && joinsItsEnds(wire)) all.join(from.number, to.number);
  }
  return { withoutWires, all, points, chassisPoint, metalPointOf };
}

function joinWithinPart(
  part: Part,
  index: DocumentIndex,
  sets: DisjointSets,
  metalPointOf: JoinedPoints['metalPointOf']
): void {
  const numberOf = (key: string) => index.terminalByKey.get(key)?.number;
  const join = (a: number | undefined, b: number | undefined) => {
    if (a !== undefined && b !== undefined) sets.join(a, b);
  };
  const terminals = index.terminalsOf.get(part.id) ?? [];
  for (const terminal of terminals) {
    const own = numberOf(terminalKey(part.id, terminal.id));
    if (terminal.on) join(own, numberOf(keyOfRef(terminal.on)));
    if (isOnMetal(part, terminal.grounded)) join(own, metalPointOf(part.unit));
  }
  for (const element of Object.values(part.elements ?? {})) {
    if (!isKnownElement(element) || element.kind !== 'link' || !element.closed) continue;
    const to =
      element.to === undefined
        ? metalPointOf(part.unit)
        : numberOf(terminalKey(part.id, element.to));
    join(numberOf(terminalKey(part.id, element.from)), to);
  }
  const mate = part.mates === undefined ? undefined : index.partById.get(part.mates);
  if (!mate) return;
  const nameOf = (name: string) => name.trim().toLowerCase();
  const numberByName = new Map(
    (index.terminalsOf.get(mate.id) ?? []).map((terminal) => [
      nameOf(terminal.name),
      numberOf(terminalKey(mate.id, terminal.id))
    ])
  );
  for (const terminal of terminals) {
    join(numberOf(terminalKey(part.id, terminal.id)), numberByName.get(nameOf(terminal.name)));
  }
}
