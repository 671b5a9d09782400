// From groups of points to nets with names, volts and kind. A net that came out as before is the same
// object as before.
import type { ChassisDocument } from '#document/index.ts';
import { isSameAmount, largerAmount } from './amounts.ts';
import type { PlacedElement } from './circuit-elements.ts';
import type { RoleReader } from './function-words.ts';
import type { NetGroup } from './group-nets.ts';
import { isSupplyNet, nameNet, netsWithDcSource, rolesOfWires } from './net-kind.ts';
import type { FiguresOf } from './network/net-figures.ts';
import { agrees } from './network/solve-circuits.ts';
import { nothingKnown, type Potential, type Potentials } from './potentials.ts';
import { keepSet } from './same.ts';
import type { Amount, Net, TerminalEntry } from './types.ts';

export type NetOf = ReadonlyMap<NetGroup, Net>;

export interface NetsInputs {
  readonly document: ChassisDocument;
  readonly groups: readonly NetGroup[];
  readonly potentials: Potentials;
  readonly figures: FiguresOf;
  readonly elements: readonly PlacedElement[];
  readonly rolesOf: RoleReader;
  readonly findEntry: (key: string) => TerminalEntry | undefined;
}

export function buildNets(inputs: NetsInputs, before?: NetOf): NetOf {
  const { groups, potentials, figures, elements } = inputs;
  const withSource = netsWithDcSource(elements);
  const atHeater = new Set<NetGroup>();
  for (const { values, from, to } of elements) {
    if (values.kind === 'heater') atHeater.add(from).add(to);
  }
  const nets = new Map<NetGroup, Net>();
  const supplies = new Set<NetGroup>();
  const drafts = groups.map((group) => {
    const was = before?.get(group);
    const volts = voltsOf(potentials.get(group) ?? nothingKnown, figures, group);
    const roles = keepSet(was?.roles, rolesOfWires(inputs.document, group, inputs.rolesOf));
    if (isSupplyNet(group, roles, volts, withSource.has(group))) supplies.add(group);
    return { group, was, volts, roles };
  });
  for (const { group, was, volts, roles } of drafts) {
    const isSupply = supplies.has(group);
    const standsWith = potentials.get(group)?.standsWith ?? null;
    const net: Net = {
      id: group.id,
      name: nameNet(inputs.document, inputs.findEntry, group, isSupply, volts, inputs.rolesOf),
      isChassis: group.isChassis,
      isSupply,
      standsOnRail: isSupply || (standsWith !== null && supplies.has(standsWith)),
      terminals: group.terminals,
      wires: group.wires,
      ...volts,
      atHeater: atHeater.has(group),
      roles
    };
    nets.set(group, was && isSame(was, net) ? was : net);
  }
  return nets;
}

type Volts = Pick<Net, 'dcV' | 'acV' | 'pulseV' | 'coldDcV' | 'solvedDcV'>;

/** What was declared or what a part says; else what the whole network gives. */
function voltsOf(potential: Readonly<Potential>, figures: FiguresOf, group: NetGroup): Volts {
  const solved = figures.get(group);
  return {
    dcV: dcOf(potential, solved?.dcV ?? null),
    acV: potential.acV ?? solved?.acV ?? null,
    pulseV: potential.pulseV,
    coldDcV: largerAmount(potential.coldDcV, solved?.coldDcV ?? null),
    solvedDcV: solved?.dcV ?? null
  };
}

/** What was followed from net to net gives way where the whole network, fully described, knows better. */
function dcOf({ dcV, dcIsFollowed }: Readonly<Potential>, solved: Amount | null): Amount | null {
  if (!dcV || !solved) return dcV ?? solved;
  const knowsBetter =
    dcIsFollowed && solved.doubt === undefined && !agrees(dcV.value, solved.value);
  return knowsBetter ? solved : dcV;
}

const isSame = (a: Net, b: Net): boolean =>
  a.name === b.name &&
  a.isSupply === b.isSupply &&
  a.standsOnRail === b.standsOnRail &&
  a.atHeater === b.atHeater &&
  a.roles === b.roles &&
  a.terminals === b.terminals &&
  a.wires === b.wires &&
  isSameAmount(a.dcV, b.dcV) &&
  isSameAmount(a.acV, b.acV) &&
  isSameAmount(a.pulseV, b.pulseV) &&
  isSameAmount(a.coldDcV, b.coldDcV) &&
  isSameAmount(a.solvedDcV, b.solvedDcV);
