// The part that is walked, large: its terminals where they are as seen from below, in the pose that it
// has on the chassis, so that what is under the lamp and what is on screen look alike.
import type { TerminalEntry, Study } from '#study/index.ts';
import { findTubeBase, findTubeType, tubeBaseOf } from '#handbook/index.ts';
import { outlineCorners, placePart, type PlacedPart } from '#drawing/pictorial/placed-part.ts';
import { viewStops, type StopView } from './walk-list.ts';

interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface RingStop extends StopView, Spot {
  readonly isHere: boolean;
}

export interface RingView {
  /** "x y width height", mm. */
  readonly viewBox: string;
  /** Of each terminal's disc, mm: as large as its neighbours leave room for. */
  readonly radius: number;
  readonly body:
    | { readonly kind: 'circle'; readonly r: number }
    | { readonly kind: 'polygon'; readonly points: string };
  /** Where the pins are counted from, if the part has such a mark. */
  readonly index: (Spot & { readonly kind: 'key' | 'gap' }) | null;
  readonly stops: readonly RingStop[];
}

const middle: Spot = { x: 0, y: 0 };

/** A terminal's disc takes this much of the way to its nearest neighbour. */
const share = 0.44;
const largest = 4;

const radiusFor = (spots: readonly Spot[]): number => {
  let nearest = Infinity;
  spots.forEach((one, index) => {
    for (const other of spots.slice(index + 1)) {
      const distance = Math.hypot(one.x - other.x, one.y - other.y);
      if (distance > 0.5) nearest = Math.min(nearest, distance);
    }
  });
  return Math.min(largest, share * nearest);
};

const indexOf = ({ part, pose, outline }: PlacedPart): RingView['index'] => {
  if (outline.kind !== 'circle' || !/tube$/.test(part.kind)) return null;
  const tube = part.type === undefined ? null : findTubeType(part.type);
  const base = tube ? tubeBaseOf(tube.base) : findTubeBase(part.type ?? '');
  if (base === null || base.index === 'thick pins') return null;
  const turn = (pose.rotation * Math.PI) / 180;
  const at = { x: -outline.r * Math.sin(turn), y: outline.r * Math.cos(turn) };
  return { ...at, kind: base.index };
};

/** The ring of a part; null where it has no terminals.
 *  @param here the key of the terminal that one stands at */
export const buildRing = (study: Study, partId: string, here: string | null): RingView | null => {
  const part = study.index.partById.get(partId);
  const stops = viewStops(study, partId);
  if (part === undefined || stops.length === 0) return null;
  const terminals = stops.map(({ entry }) => entry.terminal);
  const rotation = part.place?.rotation ?? 0;
  const placed = placePart(part, terminals, { at: middle, rotation, mirrored: false }, false);
  const spotOf = ({ terminal }: TerminalEntry): Spot => placed.spots.get(terminal.id) ?? middle;
  const ring = stops.map((stop) => ({
    ...stop,
    ...spotOf(stop.entry),
    isHere: stop.entry.key === here
  }));
  const radius = radiusFor(ring);
  const { outline } = placed;
  const corners = outlineCorners(placed);
  const reach = [
    ...corners,
    ...ring.flatMap(({ x, y }) => [
      { x: x - radius, y: y - radius },
      { x: x + radius, y: y + radius }
    ])
  ];
  const margin = radius * 0.5;
  const [left, top] = [least(reach, 'x') - margin, least(reach, 'y') - margin];
  const [right, bottom] = [most(reach, 'x') + margin, most(reach, 'y') + margin];
  const round = (value: number): number => Math.round(value * 100) / 100;
  return {
    viewBox: [left, top, right - left, bottom - top].map(round).join(' '),
    radius: round(radius),
    body:
      outline.kind === 'circle'
        ? { kind: 'circle', r: outline.r }
        : {
            kind: 'polygon',
            points: corners.map(({ x, y }) => `${round(x)},${round(y)}`).join(' ')
          },
    index: indexOf(placed),
    stops: ring
  };
};

const least = (spots: readonly Spot[], axis: 'x' | 'y'): number =>
  Math.min(...spots.map((spot) => spot[axis]));
const most = (spots: readonly Spot[], axis: 'x' | 'y'): number =>
  Math.max(...spots.map((spot) => spot[axis]));
