// Direct volts by way of parts: a dc source sets one side above the other; a winding or a heater
// takes no part in the dc, so both of its sides stand at the same. That is how a heater trunk is
// known to stand at chassis, and a rectifier's filament at its rail.
import type { Policy } from '#document/index.ts';
import { largerAmount } from './amounts.ts';
import type { PlacedElement } from './circuit-elements.ts';
import type { NetGroup } from './group-nets.ts';
import { listAt, type Lists } from './lists.ts';
import type { Potential } from './potentials.ts';
import type { Amount } from './types.ts';

interface Step {
  readonly to: number;
  /** Added going that way, V. */
  readonly volts: number;
  readonly by: string;
}

/** Writes `dcV`, `coldDcV` and `standsWith` of the nets that parts say something of. */
export function followDc(
  groups: readonly NetGroup[],
  elements: readonly PlacedElement[],
  potentials: readonly Potential[],
  policy: Policy
): void {
  const isChassis = (net: number) => groups[net]?.isChassis === true;
  for (const element of elements) addSource(element, potentials, isChassis, policy);
  walk(listSteps(elements), potentials, isChassis);
}

/** A source with its other end on the chassis says its volts outright, declared or not. */
function addSource(
  { part, values, from, to }: PlacedElement,
  potentials: readonly Potential[],
  isChassis: (net: number) => boolean,
  policy: Policy
): void {
  if (values.kind !== 'source' || values.current !== 'dc' || from === to) return;
  const raise = (net: number, key: 'dcV' | 'coldDcV', value: number, basis: string) => {
    const potential = potentials[net];
    if (!potential || isChassis(net)) return;
    potential[key] = largerAmount(potential[key], { value, how: 'part', basis });
  };
  if (isChassis(to)) raise(from, 'dcV', values.volts, `source in ${part.reference}`);
  if (isChassis(from)) raise(to, 'dcV', -values.volts, `source in ${part.reference}`);
  const cold = (values.noLoadVolts ?? 0) * (1 + policy.highLine);
  if (cold === 0) return;
  const basis = `${part.reference} without load, line ${Math.round(policy.highLine * 100)} % high`;
  if (!isChassis(from)) raise(from, 'coldDcV', cold, basis);
  if (isChassis(from)) raise(to, 'coldDcV', -cold, basis);
}

function listSteps(elements: readonly PlacedElement[]): Lists<number, Step> {
  const steps: Lists<number, Step> = new Map();
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

/** From every net whose dc is known, the highest first, out to those where it is not. A net keeps
 *  the first figure that reaches it, so the walk ends and never climbs round a ring of sources. */
function walk(
  steps: ReadonlyMap<number, readonly Step[]>,
  potentials: readonly Potential[],
  isChassis: (net: number) => boolean
): void {
  const magnitude = (net: number) => Math.abs(potentials[net]?.dcV?.value ?? 0);
  const queue = [...steps.keys()]
    .filter((net) => potentials[net]?.dcV)
    .sort((a, b) => magnitude(b) - magnitude(a) || a - b);
  for (let next = 0; next < queue.length; next++) {
    const from = queue[next] ?? 0;
    const known = potentials[from];
    for (const { to, volts, by } of steps.get(from) ?? []) {
      const reached = potentials[to];
      if (!known?.dcV || !reached || reached.dcV || isChassis(to)) continue;
      reached.dcV = onwards(known.dcV, known.dcV.value + volts, by);
      if (volts === 0) {
        reached.standsWith = known.standsWith ?? from;
        reached.coldDcV ??= known.coldDcV && onwards(known.coldDcV, known.coldDcV.value, by);
      }
      queue.push(to);
    }
  }
}

const onwards = ({ basis }: Amount, value: number, by: string): Amount => ({
  value,
  how: 'part',
  basis: `${by}, ${basis}`
});
