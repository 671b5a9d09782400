// The drawing to scale as the tools ask about it: where terminals, parts and supports lie on the sheet,
// and where a place on the sheet lies in its unit.
import type { Point, Support, TerminalRef, Unit } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import type { Face, PictorialGeometry } from '#drawing/index.ts';
import { outlineCorners, type PlacedPart } from '#drawing/pictorial/placed-part.ts';
import type { Study } from '#study/index.ts';
import type { Box } from '../sheet/viewport.ts';
import type { Spot } from './tool.ts';

export interface SceneTerminal {
  /** As the study keys it. */
  readonly key: string;
  readonly ref: TerminalRef;
  readonly at: Spot;
}

/** A unit, and how the sheet's millimetres are its own. */
export interface Home {
  readonly unit: Unit;
  /** What it covers on the sheet; null while nothing of it is drawn. */
  readonly box: Box | null;
  readonly corner: Spot;
}

export interface Scene {
  readonly face: Face;
  readonly geometry: PictorialGeometry;
  readonly terminals: readonly SceneTerminal[];
  readonly terminalByKey: ReadonlyMap<string, SceneTerminal>;
  readonly homes: readonly Home[];
  /** The terminal nearest to a place, at most `reachMm` from it, or null. */
  readonly terminalAt: (at: Spot, reachMm: number) => SceneTerminal | null;
  /** The support nearest to a place, at most `reachMm` from its middle, or null. */
  readonly supportAt: (at: Spot, reachMm: number) => Support | null;
  /** The unit that a place lies in, else the nearest one; null where the set has none. */
  readonly homeAt: (at: Spot) => Home | null;
  readonly homeOf: (unit: string) => Home | null;
  /** A place on the sheet as a place in a unit, and back. */
  readonly toUnit: (home: Home, at: Spot) => Point;
  readonly toSheet: (home: Home, at: Spot) => Spot;
}

/** How far a place lies outside a box, mm; 0 inside. */
const outsideOf = ({ x, y, width, height }: Box, at: Spot): number =>
  Math.hypot(Math.max(x - at.x, 0, at.x - x - width), Math.max(y - at.y, 0, at.y - y - height));

/** The scene of a study as it was laid for the sheet. */
export const buildScene = (study: Study, geometry: PictorialGeometry, face: Face): Scene => {
  const mirror = face === 'above' ? -1 : 1;
  const terminals = [...geometry.spots.values()].flatMap(({ key, at }): SceneTerminal[] => {
    const entry = study.index.terminalByKey.get(key);
    if (entry === undefined) return [];
    return [{ key, at, ref: { part: entry.part.id, terminal: entry.terminal.id } }];
  });
  const placed = new Map(geometry.places.units.map((one) => [one.unit.id, one]));
  const homes = sortByOrder(study.document.units).map((unit): Home => {
    const known = placed.get(unit.id);
    if (known) return { unit, box: known.box, corner: known.corner };
    const { x, y } = unit.place ?? { x: 0, y: 0 };
    return { unit, box: null, corner: { x: x * mirror, y } };
  });
  const homeAt = (at: Spot): Home | null => {
    const drawn = homes.flatMap((home) =>
      home.box ? [{ home, far: outsideOf(home.box, at) }] : []
    );
    return drawn.sort((a, b) => a.far - b.far)[0]?.home ?? homes[0] ?? null;
  };
  return {
    face,
    geometry,
    terminals,
    terminalByKey: new Map(terminals.map((terminal) => [terminal.key, terminal])),
    homes,
    terminalAt: (at, reachMm) => nearest(terminals, at, reachMm),
    supportAt: (at, reachMm) =>
      nearest([...geometry.places.supports.values()], at, Math.max(reachMm, leastGrasp))?.support ??
      null,
    homeAt,
    homeOf: (id) => homes.find(({ unit }) => unit.id === id) ?? null,
    toUnit: ({ corner }, { x, y }) => ({ x: (x - corner.x) * mirror, y: y - corner.y }),
    toSheet: ({ corner }, { x, y }) => ({ x: corner.x + x * mirror, y: corner.y + y })
  };
};

/** A support's mark is pressed anywhere on it, mm. */
const leastGrasp = 3.5;

const nearest = <T extends { readonly at: Spot }>(
  things: readonly T[],
  at: Spot,
  reachMm: number
): T | null => {
  let best: T | null = null;
  let bestFar = reachMm;
  for (const thing of things) {
    const far = Math.hypot(thing.at.x - at.x, thing.at.y - at.y);
    if (far > bestFar) continue;
    best = thing;
    bestFar = far;
  }
  return best;
};

/** The box round a part's outline on the sheet. */
export const boxOfPart = (placed: PlacedPart): Box => {
  const corners = outlineCorners(placed);
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
};
