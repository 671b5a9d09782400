// Alternating volts by way of parts: windings first, then through heaters. A heater that fails open
// puts all of the line on its far side, so volts pass it undiminished.
import { largerAmount } from './amounts.ts';
import type { PlacedElement } from './circuit-elements.ts';
import type { NetGroup } from './group-nets.ts';
import { listAt, type Lists } from './lists.ts';
import type { OpenPotentials } from './potentials.ts';
import { windingVolts } from './winding-volts.ts';

/** Writes `acV` of the nets that parts say something of. Comes after the dc, which says what is a rail. */
export function spreadAc(elements: readonly PlacedElement[], potentials: OpenPotentials): void {
  const raise = (net: NetGroup, volts: number, basis: string) => {
    const potential = potentials.get(net);
    if (!potential || net.isChassis) return;
    potential.acV = largerAmount(potential.acV, { value: volts, how: 'part', basis });
  };
  // Decided before anything is raised: the chassis, and rails of which no ac was declared.
  const held = new Set<NetGroup>();
  for (const [net, { dcV, acV }] of potentials) {
    if (net.isChassis || (dcV?.how === 'net' && acV === null)) held.add(net);
  }
  const isHeld = (net: NetGroup) => held.has(net);
  const heaters = elements.filter(
    ({ values, from, to }) => values.kind === 'heater' && from !== to
  );

  for (const { net, volts, basis, floats } of windingVolts(elements, isHeld)) {
    raise(net, volts, basis);
    const potential = potentials.get(net);
    if (potential) potential.acFloats ||= floats;
  }
  passHeaters(heaters, potentials, isHeld, raise);
  addHeaterRatings(heaters, potentials, raise);
}

type Raise = (net: NetGroup, volts: number, basis: string) => void;

function passHeaters(
  heaters: readonly PlacedElement[],
  potentials: OpenPotentials,
  isHeld: (net: NetGroup) => boolean,
  raise: Raise
): void {
  const beyond: Lists<NetGroup, { readonly net: NetGroup; readonly by: string }> = new Map();
  for (const { part, from, to } of heaters) {
    listAt(beyond, from).push({ net: to, by: part.reference });
    listAt(beyond, to).push({ net: from, by: part.reference });
  }
  const volts = (net: NetGroup) => potentials.get(net)?.acV?.value ?? 0;
  const queue = [...beyond.keys()]
    .filter((net) => !isHeld(net) && potentials.get(net)?.acV)
    .sort((a, b) => volts(b) - volts(a) || (a.id < b.id ? -1 : 1));
  for (const from of queue) {
    const known = potentials.get(from)?.acV;
    for (const { net, by } of beyond.get(from) ?? []) {
      if (!known || isHeld(net) || potentials.get(net)?.acV) continue;
      raise(net, known.value, `through the heater of ${by}, ${known.basis}`);
      // The queue grows while it is walked.
      queue.push(net);
    }
  }
}

/** A heater from a net to the chassis gives its rated volts where nothing else says any. In a series
 *  string the net also feeds the next heater, and the rating would be too low. */
function addHeaterRatings(
  heaters: readonly PlacedElement[],
  potentials: OpenPotentials,
  raise: Raise
): void {
  const inString = new Set<NetGroup>();
  for (const { from, to } of heaters) {
    if (from.isChassis || to.isChassis) continue;
    inString.add(from);
    inString.add(to);
  }
  const ends = heaters.flatMap(({ from, to }) => [from, to]);
  const unknown = new Set(ends.filter((net) => !potentials.get(net)?.acV));
  for (const { part, values, from, to } of heaters) {
    const live = to.isChassis ? from : from.isChassis ? to : undefined;
    if (live === undefined || values.kind !== 'heater') continue;
    if (inString.has(live) || !unknown.has(live)) continue;
    raise(live, values.volts, `rated heater of ${part.reference}`);
  }
}
