// The volts on each net, each kind apart, from what people declared and from the sources, windings
// and heaters of the parts. The largest magnitude wins, and every figure keeps where it came from.
import type { ChassisDocument, Id, Policy, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { isSameAmount, largerAmount, wireName } from './amounts.ts';
import type { PlacedElement } from './circuit-elements.ts';
import type { NetGroup } from './group-nets.ts';
import type { LeadWinding } from './lead-windings.ts';
import { followDc } from './follow-dc.ts';
import { joinsItsEnds } from './points.ts';
import { spreadAc } from './spread-ac.ts';
import type { Amount } from './types.ts';

export interface Potential {
  dcV: Amount | null;
  acV: Amount | null;
  pulseV: Amount | null;
  /** What the net rises to before the tubes draw, at high line; null where no source says. */
  coldDcV: Amount | null;
  /** The dc was followed from another net, through parts. */
  dcIsFollowed: boolean;
  /** The net whose dc this one has through a winding or a heater; null where it has its own. */
  standsWith: NetGroup | null;
  /** The ac is that of a winding of which either side may be the grounded one. */
  acFloats: boolean;
}

export type Potentials = ReadonlyMap<NetGroup, Readonly<Potential>>;
export type OpenPotentials = ReadonlyMap<NetGroup, Potential>;

export const nothingKnown: Readonly<Potential> = {
  dcV: null,
  acV: null,
  pulseV: null,
  coldDcV: null,
  dcIsFollowed: false,
  standsWith: null,
  acFloats: false
};

const chassisZero: Amount = {
  value: 0,
  how: 'part',
  basis: 'the chassis, from which volts are counted'
};
const atChassis: Readonly<Potential> = {
  ...nothingKnown,
  dcV: chassisZero,
  acV: chassisZero,
  pulseV: chassisZero
};

/** What the wires of each net declare. A net none of whose wires changed keeps what it had.
 *  @param touched wires that are not what they were before */
export function listDeclared(
  document: ChassisDocument,
  groups: readonly NetGroup[],
  touched: ReadonlySet<Id>,
  before?: Potentials
): Potentials {
  const isTouched = (wire: Id): boolean => touched.has(wire);
  let isAsBefore = before?.size === groups.length;
  const declared = new Map<NetGroup, Readonly<Potential>>();
  for (const group of groups) {
    const known = before?.get(group);
    const now =
      known && (touched.size === 0 || !group.wires.some(isTouched))
        ? known
        : declaredPotential(document, group, known);
    if (now !== known) isAsBefore = false;
    declared.set(group, now);
  }
  return isAsBefore && before ? before : declared;
}

/** The potentials of all nets. A net that came out as before has the same object as before. */
export function findPotentials(
  declared: Potentials,
  elements: readonly PlacedElement[],
  windings: readonly LeadWinding[],
  policy: Policy,
  before?: Potentials
): Potentials {
  const open = new Map<NetGroup, Potential>();
  for (const [group, potential] of declared) open.set(group, { ...potential });
  for (const element of elements) addPulse(element, open);
  followDc(elements, windings, open, policy);
  spreadAc(elements, open);
  if (!before) return open;
  const kept = new Map<NetGroup, Readonly<Potential>>();
  for (const [group, now] of open) {
    const known = before.get(group);
    kept.set(group, known && isSamePotential(known, now) ? known : now);
  }
  return kept;
}

const isSamePotential = (a: Readonly<Potential>, b: Readonly<Potential>): boolean =>
  isSameAmount(a.dcV, b.dcV) &&
  isSameAmount(a.acV, b.acV) &&
  isSameAmount(a.pulseV, b.pulseV) &&
  isSameAmount(a.coldDcV, b.coldDcV) &&
  a.dcIsFollowed === b.dcIsFollowed &&
  a.standsWith === b.standsWith &&
  a.acFloats === b.acFloats;

/** What the wires of the net declare. Volts that a wire declares on the chassis stay with that wire:
 *  it is either its return or a mistake, and must not make every ground lead look live. */
function declaredPotential(
  document: ChassisDocument,
  group: NetGroup,
  known: Readonly<Potential> | undefined
): Readonly<Potential> {
  if (group.isChassis) return atChassis;
  const potential: Potential = { ...nothingKnown };
  for (const id of group.wires) {
    const wire = findElement(document.wires, id);
    if (!wire || !joinsItsEnds(wire)) continue;
    const { dcV, acV, pulseV } = wire.carries;
    potential.dcV = largerAmount(potential.dcV, declaredOn(wire, dcV));
    potential.acV = largerAmount(potential.acV, declaredOn(wire, acV));
    potential.pulseV = largerAmount(potential.pulseV, declaredOn(wire, pulseV));
  }
  if (!potential.dcV && !potential.acV && !potential.pulseV) return nothingKnown;
  return known && isSamePotential(known, potential) ? known : potential;
}

const declaredOn = (wire: Wire, value: number | undefined): Amount | null =>
  value === undefined ? null : { value, how: 'net', basis: `declared on ${wireName(wire)}` };

function addPulse({ part, values, from }: PlacedElement, potentials: OpenPotentials): void {
  const potential = potentials.get(from);
  if (values.kind !== 'pulse' || !potential || from.isChassis) return;
  const basis = `pulse of ${part.reference}`;
  potential.pulseV = largerAmount(potential.pulseV, { value: values.peakV, how: 'part', basis });
}
