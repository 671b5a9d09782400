// Direct volts by way of parts: a dc source sets one side above the other; a winding or a heater
// takes no part in the dc, so both of its sides stand at the same. That is how a heater trunk is
// known to stand at chassis, and a rectifier's filament at its rail.
import type { Policy } from '#document/index.ts';
import { largerAmount } from './amounts.ts';
import type { PlacedElement } from './circuit-elements.ts';
import type { NetGroup } from './group-nets.ts';
import type { LeadWinding } from './lead-windings.ts';
import { listAt, type Lists } from './lists.ts';
import type { OpenPotentials } from './potentials.ts';
import type { Amount } from './types.ts';

interface Step {
  readonly to: NetGroup;
  /** Added going that way, V. */
  readonly volts: number;
  readonly by: string;
}

/** Writes `dcV`, `coldDcV` and `standsWith` of the nets that parts say something of. */
export function followDc(
  elements: readonly PlacedElement[],
  windings: readonly LeadWinding[],
  potentials: OpenPotentials,
  policy: Policy
): void {
  for (const element of elements) addSource(element, potentials, policy);
  const steps = listSteps(elements);
  addWindings(windings, steps);
  walk(steps, potentials);
}

/** A source with its other end on the chassis says its volts outright, declared or not. */
function addSource(
  { part, values, from, to }: PlacedElement,
  potentials: OpenPotentials,
  policy: Policy
): void {
  if (values.kind !== 'source' || values.current !== 'dc' || from === to) return;
  const raise = (net: NetGroup, key: 'dcV' | 'coldDcV', value: number, basis: string) => {
    const potential = potentials.get(net);
    if (!potential || net.isChassis) return;
    potential[key] = largerAmount(potential[key], { value, how: 'part', basis });
  };
  if (to.isChassis) raise(from, 'dcV', values.volts, `source in ${part.reference}`);
  if (from.isChassis) raise(to, 'dcV', -values.volts, `source in ${part.reference}`);
  const cold = (values.noLoadVolts ?? 0) * (1 + policy.highLine);
  if (cold === 0) return;
  const basis = `${part.reference} without load, line ${Math.round(policy.highLine * 100)} % high`;
  if (!from.isChassis) raise(from, 'coldDcV', cold, basis);
  if (from.isChassis) raise(to, 'coldDcV', -cold, basis);
}

function listSteps(elements: readonly PlacedElement[]): Lists<NetGroup, Step> {
  const steps: Lists<NetGroup, Step> = new Map();
  for (const { part, values, from, to } of elements) {
    const isSource = values.kind === 'source';
    if (from === to || (!isSource && values.kind !== 'heater')) continue;
    const volts = isSource && values.current === 'dc' ? values.volts : 0;
    const by = volts === 0 ? `through ${part.reference}` : `source in ${part.reference}`;
    listAt(steps, from).push({ to, volts: -volts, by });
    listAt(steps, to).push({ to: from, volts, by });
  }
  return steps;
}

/** All leads of a winding stand at one dc. */
function addWindings(windings: readonly LeadWinding[], steps: Lists<NetGroup, Step>): void {
  for (const { part, colour, nets } of windings) {
    const by = `through the ${colour} leads of ${part.reference}`;
    for (const from of nets) {
      for (const to of nets) if (to !== from) listAt(steps, from).push({ to, volts: 0, by });
    }
  }
}

/** From every net whose dc is known, the highest first, out to those where it is not. A net keeps
 *  the first figure that reaches it, so the walk ends and never climbs round a ring of sources. */
function walk(steps: ReadonlyMap<NetGroup, readonly Step[]>, potentials: OpenPotentials): void {
  const magnitude = (net: NetGroup) => Math.abs(potentials.get(net)?.dcV?.value ?? 0);
  const queue = [...steps.keys()]
    .filter((net) => potentials.get(net)?.dcV)
    .sort((a, b) => magnitude(b) - magnitude(a) || (a.id < b.id ? -1 : 1));
  for (const from of queue) {
    const known = potentials.get(from);
    for (const { to, volts, by } of steps.get(from) ?? []) {
      const reached = potentials.get(to);
      if (!known?.dcV || !reached || reached.dcV || to.isChassis) continue;
      reached.dcV = onwards(known.dcV, known.dcV.value + volts, by);
      reached.dcIsFollowed = true;
      if (volts === 0) {
        reached.standsWith = known.standsWith ?? from;
        reached.coldDcV ??= known.coldDcV && onwards(known.coldDcV, known.coldDcV.value, by);
      }
      // The queue grows while it is walked.
      queue.push(to);
    }
  }
}

const onwards = ({ basis }: Amount, value: number, by: string): Amount => ({
  value,
  how: 'part',
  basis: `${by}, ${basis}`
});
