// From groups of points to nets with names, volts and kind.
import type { ChassisDocument, Policy } from '#document/index.ts';
import type { PlacedElement } from './circuit-elements.ts';
import type { FunctionRole, RoleReader } from './function-words.ts';
import type { GroupedNets } from './group-nets.ts';
import { isSupplyNet, nameNet, netsWithDcSource, rolesOfWires } from './net-kind.ts';
import { findPotentials, nothingKnown } from './potentials.ts';
import type { DocumentIndex, Net } from './types.ts';

/** The nets by their number in `grouped`. */
export function buildNets(
  document: ChassisDocument,
  index: DocumentIndex,
  grouped: GroupedNets,
  elements: readonly PlacedElement[],
  rolesOf: RoleReader,
  policy: Policy
): readonly Net[] {
  const { groups } = grouped;
  const potentials = findPotentials(groups, elements, policy);
  const withSource = netsWithDcSource(elements);
  const atHeater = new Set<number>();
  for (const { values, from, to } of elements) {
    if (values.kind === 'heater') atHeater.add(from).add(to);
  }
  const rolesOfNet = groups.map((group) => rolesOfWires(group.wires, rolesOf));
  const supplies = groups.map((group, number) =>
    isSupplyNet(group, rolesOfNet[number], potentials[number], withSource.has(number))
  );
  return groups.map((group, number) => {
    const roles = rolesOfNet[number] ?? new Set<FunctionRole>();
    const { standsWith, ...volts } = potentials[number] ?? nothingKnown;
    const isSupply = supplies[number] === true;
    return {
      id: group.id,
      name: nameNet(document, index, group, isSupply, volts, rolesOf),
      isChassis: group.isChassis,
      isSupply,
      standsOnRail: isSupply || (standsWith !== null && supplies[standsWith] === true),
      terminals: group.terminals,
      wires: group.wires.map((wire) => wire.id),
      ...volts,
      atHeater: atHeater.has(number),
      roles
    };
  });
}
