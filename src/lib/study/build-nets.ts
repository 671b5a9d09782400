// From groups of points to nets with names, volts and kind. A net that came out as before is the same
// object as before.
import type { ChassisDocument, Id } from '#document/index.ts';
import { isSameAmount, largerAmount } from './amounts.ts';
import type { PlacedElement } from './circuit-elements.ts';
import type { RoleReader } from './function-words.ts';
import type { GroupedNets, NetGroup } from './group-nets.ts';
import { lineSideNets } from './line-side.ts';
import { isSupplyNet, nameNet, netsWithDcSource, rolesOfWires } from './net-kind.ts';
import type { FiguresOf } from './network/net-figures.ts';
import { agrees } from './network/holders.ts';
import { nothingKnown, type Potential, type Potentials } from './potentials.ts';
import type { PartsIndex } from './index-parts.ts';
import { keepMap, keepSet } from './same.ts';
import type { Amount, Net } from './types.ts';

export type NetOf = ReadonlyMap<NetGroup, Net>;

export interface NetsInputs {
  readonly document: ChassisDocument;
  readonly parts: PartsIndex;
  readonly nets: GroupedNets;
  readonly potentials: Potentials;
  readonly figures: FiguresOf;
  readonly elements: readonly PlacedElement[];
  readonly rolesOf: RoleReader;
}

/** @param touched wires that are not what they were before
 *  @param before nets of before, and what they were made from */
export function buildNets(
  inputs: NetsInputs,
  touched: ReadonlySet<Id>,
  before?: { readonly inputs: NetsInputs; readonly netOf: NetOf }
): NetOf {
  const { potentials, elements } = inputs;
  const { groups } = inputs.nets;
  const withSource = netsWithDcSource(elements);
  const atHeater = new Set<NetGroup>();
  for (const { values, from, to } of elements) {
    if (values.kind === 'heater') atHeater.add(from).add(to);
  }
  const isAsBefore = untouchedNets(inputs, touched, before?.inputs);
  const groupWas = before?.inputs.nets.byId;
  const rolesWere = ({ id }: NetGroup) => {
    const group = groupWas?.get(id);
    return group && before?.netOf.get(group)?.roles;
  };
  const supplies = new Set<NetGroup>();
  const drafts = groups.map((group) => {
    const was = before?.netOf.get(group);
    const draft =
      was && isAsBefore(group)
        ? was
        : draftNet(inputs, group, rolesWere(group), withSource.has(group));
    if (draft.isSupply) supplies.add(group);
    return draft;
  });
  const calledLine = new Set(groups.filter((_, n) => drafts[n]?.roles.has('line')));
  const lineSide = lineSideNets(groups, elements, (net) => calledLine.has(net));
  const nets = new Map<NetGroup, Net>();
  groups.forEach((group, n) => {
    const draft = drafts[n];
    const was = before?.netOf.get(group);
    if (!draft) return;
    const standsWith = potentials.get(group)?.standsWith ?? null;
    const standsOnRail = draft.isSupply || (standsWith !== null && supplies.has(standsWith));
    const onLineSide = lineSide.has(group);
    const isAtHeater = atHeater.has(group);
    if (
      draft === was &&
      was.standsOnRail === standsOnRail &&
      was.onLineSide === onLineSide &&
      was.atHeater === isAtHeater
    ) {
      nets.set(group, was);
    } else {
      const net: Net = { ...draft, standsOnRail, onLineSide, atHeater: isAtHeater };
      nets.set(group, was && isSame(was, net) ? was : net);
    }
  });
  return keepMap(before?.netOf, nets);
}

/** Which nets can be told to be the same without being made again. */
function untouchedNets(
  now: NetsInputs,
  touched: ReadonlySet<Id>,
  was: NetsInputs | undefined
): (group: NetGroup) => boolean {
  if (was?.parts !== now.parts || was.document.units !== now.document.units) return () => false;
  const isTouched = (wire: Id): boolean => touched.has(wire);
  const [sourceWas, source] = [netsWithDcSource(was.elements), netsWithDcSource(now.elements)];
  return (group) =>
    sourceWas.has(group) === source.has(group) &&
    was.potentials.get(group) === now.potentials.get(group) &&
    was.figures.get(group) === now.figures.get(group) &&
    (touched.size === 0 || !group.wires.some(isTouched));
}

/** A net but for what other nets make of it. */
function draftNet(
  { document, parts, potentials, figures, rolesOf }: NetsInputs,
  group: NetGroup,
  rolesWere: Net['roles'] | undefined,
  hasDcSource: boolean
): Net {
  const volts = voltsOf(potentials.get(group) ?? nothingKnown, figures, group);
  const roles = keepSet(rolesWere, rolesOfWires(document, group, rolesOf));
  const isSupply = isSupplyNet(group, roles, volts, hasDcSource);
  const findEntry = (key: string) => parts.terminalByKey.get(key);
  return {
    id: group.id,
    name: nameNet(document, findEntry, group, isSupply, volts, rolesOf),
    isChassis: group.isChassis,
    isSupply,
    standsOnRail: isSupply,
    onLineSide: false,
    terminals: group.terminals,
    wires: group.wires,
    ...volts,
    atHeater: false,
    roles
  };
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
  a.onLineSide === b.onLineSide &&
  a.atHeater === b.atHeater &&
  a.roles === b.roles &&
  a.terminals === b.terminals &&
  a.wires === b.wires &&
  isSameAmount(a.dcV, b.dcV) &&
  isSameAmount(a.acV, b.acV) &&
  isSameAmount(a.pulseV, b.pulseV) &&
  isSameAmount(a.coldDcV, b.coldDcV) &&
  isSameAmount(a.solvedDcV, b.solvedDcV);
