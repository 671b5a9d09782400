// Wires of one cable run together under its jacket: where it begins and ends, as a mouth a little off
// the terminals that its conductors fan out to.
import type { Id, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import type { Study } from '#study/index.ts';
import type { Spot } from '../presentation/sides.ts';
import type { SheetPlaces } from './sheet-places.ts';
import type { TerminalSpot } from './terminal-spots.ts';
import { distance, minus, plus, times, turnedBy, unitOf } from './vectors.ts';

/** Both ends of one of the cable's wires, the cable's first end first. */
export interface CableWire {
  readonly wire: Wire;
  readonly first: TerminalSpot;
  readonly last: TerminalSpot;
  /** The wire is recorded from the cable's last end to its first. */
  readonly reversed: boolean;
}

export interface CableRun {
  readonly cable: Id;
  readonly wires: readonly CableWire[];
  /** Supports in order from the first end. */
  readonly supports: readonly Id[];
  readonly mouths: readonly [Spot, Spot];
}

/** From the terminals to the mouth of the jacket, mm; more where the terminals stand far apart. */
const fanMm = 9;
/** Terminals of one end that lie further apart than this belong to no common mouth, mm. */
const widestFanMm = 60;

const middleOf = (spots: readonly Spot[]): Spot =>
  times(
    spots.reduce((sum, spot) => plus(sum, spot), { x: 0, y: 0 }),
    1 / Math.max(1, spots.length)
  );

const spreadOf = (spots: readonly Spot[], middle: Spot): number =>
  Math.max(0, ...spots.map((spot) => distance(spot, middle)));

const routeOf = (wire: Wire, places: SheetPlaces): Id[] =>
  (wire.route?.supports ?? []).filter((id) => places.supports.has(id));

const clearOf = ({ at, exits }: TerminalSpot, towards: Spot): Spot =>
  exits
    .map(({ clear }) => clear)
    .toSorted((a, b) => distance(a, towards) - distance(b, towards))[0] ?? at;

/** The cables whose wires run together from end to end; wires of a cable that go other ways are left out. */
export function listCableRuns(
  study: Study,
  places: SheetPlaces,
  spots: ReadonlyMap<string, TerminalSpot>,
  isClear: (at: Spot) => boolean
): readonly CableRun[] {
  const { index, document } = study;
  const byCable = new Map<Id, Wire[]>();
  for (const wire of index.wires) {
    if (wire.cable === undefined || !findElement(document.cables, wire.cable)) continue;
    byCable.set(wire.cable, [...(byCable.get(wire.cable) ?? []), wire]);
  }
  const spotOf = (end: Wire['from']): TerminalSpot | undefined => {
    const entry = index.findAt(end);
    return entry && spots.get(entry.key);
  };
  return [...byCable].flatMap(([cable, all]): CableRun[] => {
    const placed = all.flatMap((wire) => {
      const [from, to] = [spotOf(wire.from), spotOf(wire.to)];
      return from && to && from.key !== to.key ? [{ wire, from, to }] : [];
    });
    const [lead] = placed;
    if (!lead) return [];
    const supports = routeOf(lead.wire, places);
    const wires = placed.flatMap(({ wire, from, to }): CableWire[] => {
      const reversed =
        distance(from.at, lead.from.at) + distance(to.at, lead.to.at) >
        distance(from.at, lead.to.at) + distance(to.at, lead.from.at);
      const own = routeOf(wire, places);
      const route = reversed ? own.toReversed() : own;
      if (route.join(' ') !== supports.join(' ')) return [];
      return [{ wire, reversed, first: reversed ? to : from, last: reversed ? from : to }];
    });
    const mouths = findMouths(wires, supports, places, isClear);
    return mouths ? [{ cable, wires, supports, mouths }] : [];
  });
}

function findMouths(
  wires: readonly CableWire[],
  supports: readonly Id[],
  places: SheetPlaces,
  isClear: (at: Spot) => boolean
): readonly [Spot, Spot] | null {
  const stops = supports.flatMap((id) => places.supports.get(id)?.at ?? []);
  const [firsts, lasts] = [wires.map(({ first }) => first), wires.map(({ last }) => last)];
  const [a, b] = [middleOf(firsts.map(({ at }) => at)), middleOf(lasts.map(({ at }) => at))];
  const mouthAt = (ends: readonly TerminalSpot[], middle: Spot, towards: Spot): Spot | null => {
    const clear = middleOf(ends.map((end) => clearOf(end, towards)));
    const spread = spreadOf(
      ends.map(({ at }) => at),
      middle
    );
    if (spread > widestFanMm / 2) return null;
    const far = Math.min(fanMm + spread * 0.6, distance(clear, towards) * 0.4);
    const straight = unitOf(minus(towards, clear));
    // Straight on where that is clear of the parts, else the least turned from it, else further out.
    for (const reach of [far, far * 1.6, far * 2.4]) {
      for (const degrees of [0, 30, -30, 60, -60, 90, -90, 125, -125, 180]) {
        const mouth = plus(clear, times(turnedBy(straight, degrees), reach));
        if (isClear(mouth)) return mouth;
      }
    }
    return plus(clear, times(straight, far));
  };
  const first = mouthAt(firsts, a, stops[0] ?? b);
  const last = mouthAt(lasts, b, stops.at(-1) ?? a);
  return first && last ? [first, last] : null;
}
