// A component's own leads: from its body round what stands between to the terminal that they sit on.
import type { Spot } from '../presentation/sides.ts';
import { smoothLine } from './smooth.ts';
import type { TautPath, TautPaths } from './taut-path.ts';
import type { TerminalSpot } from './terminal-spots.ts';
import { distance, minus, plus, times, unitOf } from './vectors.ts';

const bendMm = 3;
const freeLeadMm = 7;

/** From a place to a terminal, by whichever exit of the terminal is the shortest. */
export function leadLine(from: Spot, to: TerminalSpot, paths: TautPaths): Spot[] {
  const ends = to.exits.length > 0 ? to.exits.map(({ clear }) => clear) : [to.at];
  let best: { path: TautPath; end: Spot; mm: number } | null = null;
  for (const end of ends) {
    const path = paths.find(from, end);
    const mm = path.costMm + distance(end, to.at);
    if (!best || mm < best.mm) best = { path, end, mm };
  }
  const corners = best ? best.path.corners.map(({ at }) => at) : [];
  return smoothLine([from, ...corners, best?.end ?? to.at, to.at], bendMm);
}

/** A lead that sits on nothing: straight on from the body. */
export const leadStub = (middle: Spot, from: Spot): Spot[] => [
  from,
  plus(from, times(unitOf(minus(from, middle)), freeLeadMm))
];
