// Which way a wire leaves a terminal, and how far it runs straight until it is clear of the part:
// outward from a socket, across a strip to either side, through the nearest edge of a box.
import type { Id } from '#document/index.ts';
import type { Spot } from '../presentation/sides.ts';
import { isLevelRow, type Outline } from './outlines.ts';
import { toSheet, type PlacedPart } from './placed-part.ts';
import { splitPins } from './terminal-offsets.ts';
import { dot, minus, plus, times, unitOf } from './vectors.ts';

export interface Exit {
  /** A step of 1 away from the part, on the sheet. */
  readonly out: Spot;
  /** Where the wire is clear of the part, on the sheet. */
  readonly clear: Spot;
}

/** How far outside its outline a wire that ends at a part bends, mm. */
export const nearMm = 1.7;
/** How far outside the outlines wires run that only pass, mm. */
export const clearanceMm = 3.6;

const north = { x: 0, y: -1 };
const south = { x: 0, y: 1 };
const west = { x: -1, y: 0 };
const east = { x: 1, y: 0 };

function boxWays({ x, y }: Spot, outline: Outline): readonly Spot[] {
  if (outline.kind === 'circle') return [];
  const ways = [
    { way: north, far: y - outline.top },
    { way: south, far: outline.bottom - y },
    { way: west, far: x - outline.left },
    { way: east, far: outline.right - x }
  ];
  const nearest = Math.min(...ways.map(({ far }) => far));
  return ways.filter(({ far }) => far <= nearest + 1).map(({ way }) => way);
}

/** Ways out of the part in its own directions; none where a wire may leave any way. */
function waysOf(placed: PlacedPart, id: Id, offset: Spot): readonly Spot[] {
  const { look, terminals, offsets, outline } = placed;
  const radial = Math.hypot(offset.x, offset.y) < 1 ? [] : [unitOf(offset)];
  switch (look) {
    case 'socket':
    case 'picture tube':
      return splitPins(terminals).pins.some((pin) => pin.id === id) ? radial : [];
    case 'strip':
      return isLevelRow([...offsets.values()]) ? [north, south] : [west, east];
    case 'post':
    case 'mark':
      return [];
    case 'control':
    case 'can':
    case 'round connector':
    case 'speaker':
    case 'lamp':
    case 'body':
      return radial;
    default:
      return boxWays(offset, outline);
  }
}

/** How far along a way the outline, `more` wider, is left behind; 0 where the start is outside. */
function wayOutOf(outline: Outline, from: Spot, way: Spot, more: number): number {
  if (outline.kind === 'circle') {
    const along = dot(from, way);
    const r = (outline.r + more) / Math.cos(Math.PI / 8);
    const under = along * along - dot(from, from) + r * r;
    return under < 0 ? 0 : Math.max(0, Math.sqrt(under) - along);
  }
  const x = way.x > 0 ? outline.right + more - from.x : from.x - outline.left + more;
  const y = way.y > 0 ? outline.bottom + more - from.y : from.y - outline.top + more;
  const far = Math.min(
    Math.abs(way.x) > 1e-6 ? x / Math.abs(way.x) : Infinity,
    Math.abs(way.y) > 1e-6 ? y / Math.abs(way.y) : Infinity
  );
  return Math.max(0, far);
}

/** The ways a wire can leave a terminal of a placed part; empty where it may leave any way. */
export function exitsOf(placed: PlacedPart, id: Id): readonly Exit[] {
  const offset = placed.offsets.get(id);
  const at = placed.spots.get(id);
  if (!offset || !at) return [];
  return waysOf(placed, id, offset).map((way) => {
    const far = wayOutOf(placed.outline, offset, way, nearMm) + 0.2;
    const clear = toSheet(placed.pose, plus(offset, times(way, far)));
    return { out: unitOf(minus(clear, at)), clear };
  });
}
