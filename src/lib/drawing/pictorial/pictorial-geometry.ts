// The pictorial as geometry alone, before anything gets a style: places, bodies, ways and lines.
import type { Id } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { terminalKey } from '#study/terminal-key.ts';
import type { Box } from '../figures/figure.ts';
import type { Spot } from '../presentation/sides.ts';
import { boxAround, cornersOf, widened } from './boxes.ts';
import { layLines } from './bundle-lanes.ts';
import type { SupportFit } from './draw-supports.ts';
import { directionAt } from './path-order.ts';
import { distance, middleOf, minus, rightOf, unitOf } from './vectors.ts';
import { Clutter } from './clutter.ts';
import { clearanceMm, nearMm } from './exits.ts';
import { bodyCorners, clutterWeights, placeBodies, type PlacedBody } from './hanging-places.ts';
import { Obstacles, type Obstacle } from './obstacles.ts';
import { outlineCorners, type PlacedPart } from './placed-part.ts';
import { placeOnSheet, type Face, type HangingPart, type SheetPlaces } from './sheet-places.ts';
import { smoothLine } from './smooth.ts';
import { TautPaths } from './taut-path.ts';
import { leadLine } from './lead-lines.ts';
import { hostKey, listTerminalSpots, type TerminalSpot } from './terminal-spots.ts';
import type { WireWay } from './way.ts';
import { buildWireWays, type WireWays } from './wire-ways.ts';

/** Between the lines of neighbours in a bundle, mm. */
const wireRoomMm = 0.95;
const widestBundleMm = 13;
const bendMm = 7;
/** So far outside a unit nothing of it should be, mm. */
const rimMm = 16;

export interface WireLine {
  readonly wire: Id;
  readonly way: WireWay;
  /** As drawn, from end to end. */
  readonly line: readonly Spot[];
  /** The part of it that lies under a cable's jacket; none for a wire by itself. */
  readonly jacket: readonly Spot[];
}

export interface PartLead {
  readonly part: Id;
  readonly terminal: Id;
  readonly line: readonly Spot[];
}

export interface PictorialGeometry {
  readonly places: SheetPlaces;
  readonly spots: ReadonlyMap<string, TerminalSpot>;
  readonly bodies: readonly PlacedBody[];
  /** Leads of placed parts that sit on another part's terminal. */
  readonly partLeads: readonly PartLead[];
  readonly lines: readonly WireLine[];
  /** How wires lie in the supports, by the support's id. */
  readonly fits: ReadonlyMap<Id, SupportFit>;
  readonly notDrawn: WireWays['notDrawn'];
  /** What stands on the sheet, for all that still has to find room. */
  readonly clutter: Clutter;
  /** What lies over the parts: wires, leads and bodies alone. */
  readonly over: Clutter;
}

/** Room around what is known to be there, for all that still has to find a place, mm. */
const spareMm = 40;

const areaOf = ({ units, trays, parts }: SheetPlaces): Box =>
  widened(
    boxAround([
      { x: 0, y: 0 },
      ...[...units, ...trays].flatMap(({ box }) => cornersOf(box)),
      ...[...parts.values()].flatMap((placed) => [
        ...outlineCorners(placed),
        ...placed.spots.values()
      ])
    ]),
    spareMm
  );

/** Everything of the pictorial that can be reckoned without a style, in millimetres of the sheet. */
export function layPictorial(study: Study, face: Face): PictorialGeometry {
  const places = placeOnSheet(study, face);
  const clutter = new Clutter(areaOf(places));
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
  for (const { box } of [...places.units, ...places.trays]) markBorder(box, clutter);
  const corners = layLines(ways, { roomMm: wireRoomMm, widestMm: widestBundleMm });
  const lines = corners.flatMap((line, index): WireLine[] => {
    const way = ways[index];
    if (!way) return [];
    const [from, to] = way.jacket ?? [0, -1];
    const jacket = smoothLine(line.slice(from, to + 1).flat(), bendMm);
    return [{ wire: way.wire, way, line: smoothLine(line.flat(), bendMm), jacket }];
  });
  for (const { line } of lines) clutter.addLine(line, clutterWeights.wire);
  const bodies = [...first, ...placeBodies(others, spots, clutter, paths)];
  const partLeads = listPartLeads(places, spots, paths);
  const over = new Clutter(areaOf(places));
  for (const { line } of lines) over.addLine(line, 1);
  for (const { line } of partLeads) over.addLine(line, 1);
  for (const body of bodies) {
    over.addPolygon(bodyCorners(body), 1);
    for (const { line } of body.leads) over.addLine(line, 1);
  }
  return {
    places,
    spots,
    bodies,
    partLeads,
    lines,
    fits: fitSupports(ways, corners),
    notDrawn,
    clutter,
    over
  };
}

/** A can's own lead that is soldered straight to a socket: from where it comes out to where it sits. */
function listPartLeads(
  { parts }: SheetPlaces,
  spots: ReadonlyMap<string, TerminalSpot>,
  paths: TautPaths
): readonly PartLead[] {
  return [...parts.values()].flatMap(({ part, terminals }) =>
    terminals.flatMap(({ id, on }): PartLead[] => {
      const own = spots.get(terminalKey(part.id, id));
      const host = on && spots.get(hostKey(on));
      if (!own || !host) return [];
      const from = own.exits
        .map(({ clear }) => clear)
        .toSorted((a, b) => distance(a, host.at) - distance(b, host.at))[0];
      const line = leadLine(from ?? own.at, host, paths);
      return [{ part: part.id, terminal: id, line: [own.at, ...line] }];
    })
  );
}

/** Bodies had better not hang over the edge of their unit. */
function markBorder({ x, y, width, height }: Box, clutter: Clutter): void {
  const band = (left: number, top: number, wide: number, high: number): void =>
    clutter.addPolygon(
      cornersOf({ x: left, y: top, width: wide, height: high }),
      clutterWeights.border
    );
  band(x - rimMm, y - rimMm, width + 2 * rimMm, rimMm);
  band(x - rimMm, y + height, width + 2 * rimMm, rimMm);
  band(x - rimMm, y, rimMm, height);
  band(x + width, y, rimMm, height);
}

/** How the wires lie in each support, from where their lines pass it. */
function fitSupports(
  ways: readonly WireWay[],
  corners: readonly (readonly (readonly Spot[])[])[]
): ReadonlyMap<Id, SupportFit> {
  const passing = new Map<Id, { spots: Spot[]; along: Spot }>();
  ways.forEach((way, index) => {
    way.nodes.forEach(({ kind, key }, place) => {
      const spots = corners[index]?.[place] ?? [];
      const [first] = spots;
      const last = spots.at(-1);
      if (kind !== 'support' || !first || !last) return;
      const known = passing.get(key) ?? { spots: [], along: directionAt(way, place) };
      known.spots.push(middleOf(first, last));
      passing.set(key, known);
    });
  });
  return new Map(
    [...passing].map(([id, { spots, along }]) => {
      const [first = { x: 0, y: 0 }] = spots;
      const far = farthestFrom(farthestFrom(first, spots), spots);
      const near = farthestFrom(far, spots);
      const widthMm = distance(far, near);
      return [id, { axis: widthMm > 1 ? unitOf(minus(far, near)) : rightOf(along), widthMm }];
    })
  );
}

const farthestFrom = (from: Spot, spots: readonly Spot[]): Spot =>
  spots.reduce((far, spot) => (distance(from, spot) > distance(from, far) ? spot : far), from);

/** Wires keep clear of parts; of a lug on the metal only that they do not touch it. */
const obstacleOf = (placed: PlacedPart): Obstacle => {
  const isMark = placed.look === 'mark';
  return {
    outer: outlineCorners(placed, isMark ? 1.2 : clearanceMm),
    core: outlineCorners(placed, isMark ? 0 : nearMm)
  };
};

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
