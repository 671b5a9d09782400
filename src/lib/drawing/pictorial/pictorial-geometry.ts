// The pictorial as geometry alone, before anything gets a style: places, bodies, ways and lines.
import type { Id } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { terminalKey } from '#study/terminal-key.ts';
import type { Box } from '../figures/figure.ts';
import type { Spot } from '../presentation/sides.ts';
import { layLines } from './bundle-lanes.ts';
import { Clutter } from './clutter.ts';
import { clearanceMm } from './exits.ts';
import { clutterWeights, placeBodies, type PlacedBody } from './hanging-places.ts';
import { Obstacles } from './obstacles.ts';
import { outlineCorners, type PlacedPart } from './placed-part.ts';
import { placeOnSheet, type Face, type HangingPart, type SheetPlaces } from './sheet-places.ts';
import { smoothLine } from './smooth.ts';
import { TautPaths } from './taut-path.ts';
import { listTerminalSpots, type TerminalSpot } from './terminal-spots.ts';
import { buildWireWays, type WireWay, type WireWays } from './wire-ways.ts';

/** From wire to wire in a bundle, mm. */
export const lanePitchMm = 1.4;
const widestBundleMm = 13;
const bendMm = 7;

export interface WireLine {
  readonly wire: Id;
  readonly way: WireWay;
  /** As drawn, from end to end. */
  readonly line: readonly Spot[];
}

export interface PictorialGeometry {
  readonly places: SheetPlaces;
  readonly spots: ReadonlyMap<string, TerminalSpot>;
  readonly bodies: readonly PlacedBody[];
  readonly lines: readonly WireLine[];
  readonly notDrawn: WireWays['notDrawn'];
  /** What stands on the sheet, for all that still has to find room. */
  readonly clutter: Clutter;
}

const boxAround = ({ units, trays, parts }: SheetPlaces): Box => {
  const spots = [
    ...[...units, ...trays].flatMap(({ box: { x, y, width, height } }) => [
      { x, y },
      { x: x + width, y: y + height }
    ]),
    ...[...parts.values()].flatMap((placed) => [
      ...outlineCorners(placed),
      ...placed.spots.values()
    ])
  ];
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
  const [x, y] = [Math.min(0, ...xs) - 40, Math.min(0, ...ys) - 40];
  return { x, y, width: Math.max(0, ...xs) + 40 - x, height: Math.max(0, ...ys) + 40 - y };
};

/** Everything of the pictorial that can be reckoned without a style, in millimetres of the sheet. */
export function layPictorial(study: Study, face: Face): PictorialGeometry {
  const places = placeOnSheet(study, face);
  const clutter = new Clutter(boxAround(places));
  const solid = [...places.parts.values()].filter(({ look }) => look !== 'mark');
  for (const placed of solid) {
    clutter.addPolygon(outlineCorners(placed, 0.8), clutterWeights.outline);
    for (const spot of placed.spots.values()) clutter.addDisc(spot, 2.4, clutterWeights.pin);
  }
  for (const placed of places.parts.values()) {
    if (placed.look === 'mark') clutter.addDisc(placed.pose.at, 3.5, clutterWeights.pin);
  }
  const spots = listTerminalSpots(places);
  const paths = new TautPaths(new Obstacles([...places.parts.values()].map(obstacleOf)));
  // A wire may end on a lead that hangs free: such bodies come first. All others find room between
  // the wires, which the chassis holds in their places.
  const needed = places.hanging.filter((hanging) => carriesOn(hanging, study, spots));
  const others = places.hanging.filter((hanging) => !needed.includes(hanging));
  const first = placeBodies(needed, spots, clutter, paths);
  addFreeEnds(first, spots);
  const { ways, notDrawn } = buildWireWays(study, places, spots, paths);
  const corners = layLines(ways, { pitchMm: lanePitchMm, widestMm: widestBundleMm });
  const lines = corners.flatMap((line, index): WireLine[] => {
    const way = ways[index];
    return way ? [{ wire: way.wire, way, line: smoothLine(line, bendMm) }] : [];
  });
  for (const { line } of lines) clutter.addLine(line, clutterWeights.wire);
  const bodies = [...first, ...placeBodies(others, spots, clutter, paths)];
  return { places, spots, bodies, lines, notDrawn, clutter };
}

const obstacleOf = (placed: PlacedPart): readonly Spot[] =>
  outlineCorners(placed, placed.look === 'mark' ? 0.8 : clearanceMm);

/** A wire ends on a lead of the component that sits on no terminal. */
const carriesOn = (
  { part, terminals }: HangingPart,
  { index }: Study,
  spots: ReadonlyMap<string, TerminalSpot>
): boolean =>
  terminals.some(({ id }) => {
    const key = terminalKey(part.id, id);
    return !spots.has(key) && index.wiresAt.has(key);
  });

function addFreeEnds(bodies: readonly PlacedBody[], spots: Map<string, TerminalSpot>): void {
  for (const { part, leads } of bodies) {
    for (const { terminal, line, isFree } of leads) {
      const at = line.at(-1);
      const key = terminalKey(part.id, terminal);
      if (isFree && at) spots.set(key, { key, at, exits: [] });
    }
  }
}
