// Alternating volts by way of parts: windings first, then through heaters. A heater that fails open
// puts all of the line on its far side, so volts pass it undiminished.
import { largerAmount } from './amounts.ts';
import type { PlacedElement } from './circuit-elements.ts';
import type { NetGroup } from './group-nets.ts';
import { listAt, type Lists } from './lists.ts';
import type { Potential } from './potentials.ts';
import { windingVolts } from './winding-volts.ts';

/** Writes `acV` of the nets that parts say something of. Comes after the dc, which says what is a rail. */
export function spreadAc(
  groups: readonly NetGroup[],
  elements: readonly PlacedElement[],
  potentials: readonly Potential[]
): void {
  const isChassis = (net: number) => groups[net]?.isChassis === true;
  const raise = (net: number, volts: number, basis: string) => {
    const potential = potentials[net];
    if (!potential || isChassis(net)) return;
    potential.acV = largerAmount(potential.acV, { value: volts, how: 'part', basis });
  };
  // Decided before anything is raised: the chassis, and rails of which no ac was declared.
  const held = potentials.map(
    ({ dcV, acV }, net) => isChassis(net) || (dcV?.how === 'net' && acV === null)
  );
  const isHeld = (net: number) => held[net] === true;
  const heaters = elements.filter(
    ({ values, from, to }) => values.kind === 'heater' && from !== to
  );

  for (const { net, volts, basis } of windingVolts(elements, isHeld)) raise(net, volts, basis);
  passHeaters(heaters, potentials, isHeld, raise);
  addHeaterRatings(heaters, potentials, isChassis, raise);
}

type Raise = (net: number, volts: number, basis: string) => void;
type NetTest = (net: number) => boolean;

function passHeaters(
  heaters: readonly PlacedElement[],
  potentials: readonly Potential[],
  isHeld: NetTest,
  raise: Raise
): void {
  const beyond: Lists<number, { readonly net: number; readonly by: string }> = new Map();
  for (const { part, from, to } of heaters) {
    listAt(beyond, from).push({ net: to, by: part.reference });
    listAt(beyond, to).push({ net: from, by: part.reference });
  }
  const volts = (net: number) => potentials[net]?.acV?.value ?? 0;
  const queue = [...beyond.keys()]
    .filter((net) => !isHeld(net) && potentials[net]?.acV)
    .sort((a, b) => volts(b) - volts(a) || a - b);
  for (let next = 0; next < queue.length; next++) {
    const from = queue[next] ?? 0;
    const known = potentials[from]?.acV;
    for (const { net, by } of beyond.get(from) ?? []) {
      if (!known || isHeld(net) || potentials[net]?.acV) continue;
      raise(net, known.value, `through the heater of ${by}, ${known.basis}`);
      queue.push(net);
    }
  }
}

/** A heater from a net to the chassis gives its rated volts where nothing else says any. In a series
 *  string the net also feeds the next heater, and the rating would be too low. */
function addHeaterRatings(
  heaters: readonly PlacedElement[],
  potentials: readonly Potential[],
  isChassis: NetTest,
  raise: Raise
): void {
  const inString = new Set<number>();
  for (const { from, to } of heaters) {
    if (isChassis(from) || isChassis(to)) continue;
    inString.add(from);
    inString.add(to);
  }
  const ends = heaters.flatMap(({ from, to }) => [from, to]);
  const unknown = new Set(ends.filter((net) => !potentials[net]?.acV));
  for (const { part, values, from, to } of heaters) {
    const live = isChassis(to) ? from : isChassis(from) ? to : undefined;
    if (live === undefined || values.kind !== 'heater') continue;
    if (inString.has(live) || !unknown.has(live)) continue;
    raise(live, values.volts, `rated heater of ${part.reference}`);
  }
}
