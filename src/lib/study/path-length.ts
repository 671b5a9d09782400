// How long a wire is: as taped, else along its path at true scale.
import type { ChassisDocument, Support } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import type { WireSlot } from './index-wires.ts';
import { findTerminalPlace, stepMm, type Place3 } from './place.ts';
import type { TerminalEntry, WireLength } from './types.ts';

/** Longer than any wire: what a sum will still take, mm. */
const longestMm = 1_000_000;

interface Stop extends Place3 {
  readonly unit: string;
}

/** A wire's length, or null where neither a tape nor places tell it. Between two units only what
 *  lies within each is drawn; the way from one to the other has to be given as length outside. */
export function wireLength(document: ChassisDocument, slot: WireSlot): WireLength | null {
  const { wire } = slot;
  if (wire.tapedMm !== undefined) {
    return { mm: wire.tapedMm, how: 'taped', basis: 'taped lug to lug' };
  }
  const stops = findStops(document, slot);
  if (!stops) return null;
  let mm = wire.outsideMm ?? 0;
  let isSplit = false;
  for (let n = 1; n < stops.length; n++) {
    const before = stops[n - 1];
    const here = stops[n];
    if (!before || !here) continue;
    if (before.unit === here.unit) mm += stepMm(before, here);
    else isSplit = true;
  }
  if (isSplit && wire.outsideMm === undefined) return null;
  if (!(mm > 0) || mm > longestMm) return null;
  const supports = stops.length - 2;
  const way =
    supports > 0
      ? `along ${supports} support${supports === 1 ? '' : 's'}`
      : 'straight from end to end';
  const outside = wire.outsideMm === undefined ? '' : `, ${wire.outsideMm} mm outside the drawing`;
  return { mm, how: 'drawn', basis: `${way}, drawn to scale${outside}` };
}

/** Both ends and the supports between them; null where one of them has no place. */
function findStops(document: ChassisDocument, slot: WireSlot): readonly Stop[] | null {
  const { wire } = slot;
  const from = stopAt(slot.from);
  const to = stopAt(slot.to);
  if (!from || !to) return null;
  const stops: Stop[] = [from];
  for (const id of wire.route?.supports ?? []) {
    const support = findElement(document.supports, id);
    if (!support) return null;
    stops.push(stopOn(support));
  }
  stops.push(to);
  return stops;
}

function stopAt(entry: TerminalEntry | undefined): Stop | null {
  const place = entry && findTerminalPlace(entry.part, entry.terminal);
  return place ? { ...place, unit: entry.part.unit } : null;
}

const stopOn = ({ place, heightMm, unit }: Support): Stop => ({
  x: place.x,
  y: place.y,
  heightMm: heightMm ?? null,
  unit
});
