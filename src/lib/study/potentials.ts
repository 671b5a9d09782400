// The volts on each net, each kind apart, from what people declared and from the sources, windings
// and heaters of the parts. The largest magnitude wins, and every figure keeps where it came from.
import type { Policy, Wire } from '#document/index.ts';
import { largerAmount, wireName } from './amounts.ts';
import type { PlacedElement } from './circuit-elements.ts';
import type { NetGroup } from './group-nets.ts';
import { joinsItsEnds } from './join-points.ts';
import { followDc } from './follow-dc.ts';
import { spreadAc } from './spread-ac.ts';
import type { Amount } from './types.ts';

export interface Potential {
  dcV: Amount | null;
  acV: Amount | null;
  pulseV: Amount | null;
  /** What the net rises to before the tubes draw, at high line; null where no source says. */
  coldDcV: Amount | null;
  /** The net whose dc this one has through a winding or a heater; null where it has its own. */
  standsWith: number | null;
}

export function findPotentials(
  groups: readonly NetGroup[],
  elements: readonly PlacedElement[],
  policy: Policy
): readonly Potential[] {
  const potentials = groups.map(declaredPotential);
  for (const element of elements) addPulse(element, groups, potentials);
  followDc(groups, elements, potentials, policy);
  spreadAc(groups, elements, potentials);
  return potentials;
}

export const nothingKnown: Readonly<Potential> = {
  dcV: null,
  acV: null,
  pulseV: null,
  coldDcV: null,
  standsWith: null
};

const chassisZero: Amount = {
  value: 0,
  how: 'part',
  basis: 'the chassis, from which volts are counted'
};

/** What the wires of the net declare. Volts that a wire declares on the chassis stay with that wire:
 *  it is either its return or a mistake, and must not make every ground lead look live. */
function declaredPotential(group: NetGroup): Potential {
  if (group.isChassis) {
    return { ...nothingKnown, dcV: chassisZero, acV: chassisZero, pulseV: chassisZero };
  }
  const potential: Potential = { ...nothingKnown };
  for (const wire of group.wires) {
    if (!joinsItsEnds(wire)) continue;
    const { dcV, acV, pulseV } = wire.carries;
    potential.dcV = largerAmount(potential.dcV, declaredOn(wire, dcV));
    potential.acV = largerAmount(potential.acV, declaredOn(wire, acV));
    potential.pulseV = largerAmount(potential.pulseV, declaredOn(wire, pulseV));
  }
  return potential;
}

const declaredOn = (wire: Wire, value: number | undefined): Amount | null =>
  value === undefined ? null : { value, how: 'net', basis: `declared on ${wireName(wire)}` };

function addPulse(
  { part, values, from }: PlacedElement,
  groups: readonly NetGroup[],
  potentials: readonly Potential[]
): void {
  const potential = potentials[from];
  if (values.kind !== 'pulse' || !potential || groups[from]?.isChassis === true) return;
  const basis = `pulse of ${part.reference}`;
  potential.pulseV = largerAmount(potential.pulseV, { value: values.peakV, how: 'part', basis });
}
