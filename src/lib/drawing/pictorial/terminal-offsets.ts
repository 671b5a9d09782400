// Where a part's terminals stand from its middle: as measured, and where nobody measured them, in the
// way that such a part is usually made, so that it can be drawn at all.
import type { Id, Part, Terminal } from '#document/index.ts';
import { findTubeBase, findTubeType, pinPlaces, tubeBaseOf } from '#handbook/index.ts';
import type { Spot } from '../presentation/sides.ts';

/** How far the solder lugs of a socket stand outside its pins, mm. Common practice, no source. */
const lugReachMm = 3.5;
/** From lug to lug of a strip, mm (3/8 in). Common practice, no source. */
const lugPitchMm = 9.5;

const isPinName = (name: string): boolean => /^\d{1,2}$/.test(name);

/** Terminals that are numbered pins, and the rest: caps, anodes, braids. */
export const splitPins = (terminals: readonly Terminal[]) => ({
  pins: terminals.filter(({ name, ending }) => ending !== 'cap' && isPinName(name)),
  others: terminals.filter(({ name, ending }) => ending === 'cap' || !isPinName(name))
});

const rowOf = (count: number, pitchMm: number, y = 0): Spot[] =>
  Array.from({ length: count }, (_, index) => ({ x: (index - (count - 1) / 2) * pitchMm, y }));

const circleOf = (count: number, radius: number): Spot[] =>
  Array.from({ length: count }, (_, index) => {
    const turn = (2 * Math.PI * (index + 0.5)) / count;
    return { x: -radius * Math.sin(turn), y: radius * Math.cos(turn) };
  });

/** Lugs of a socket by pin number: of the tube's base, else evenly on a circle that fits the pins. */
function socketSpots(part: Part, highest: number): readonly Spot[] {
  const tube = part.type === undefined ? null : findTubeType(part.type);
  const base = tube
    ? tubeBaseOf(tube.base)
    : part.type === undefined
      ? null
      : findTubeBase(part.type);
  if (!base || base.pins < highest) return circleOf(highest, 5 + highest * 0.75);
  const reach = 1 + (2 * lugReachMm) / base.circleMm;
  return pinPlaces(base).map(({ x, y }) => ({ x: x * reach, y: y * reach }));
}

/** Two rows, the first half above: the leads of a transformer. */
function twoRows(count: number): Spot[] {
  const above = Math.ceil(count / 2);
  const half = Math.max(12, above * 4.5);
  return [...rowOf(above, 9, -half), ...rowOf(count - above, 9, half)];
}

function usualSpots(part: Part, terminals: readonly Terminal[]): readonly Spot[] {
  const count = terminals.length;
  switch (part.kind) {
    case 'terminal strip':
    case 'board':
      return rowOf(count, lugPitchMm);
    case 'transformer':
    case 'yoke':
      return twoRows(count);
    case 'control':
      return count === 3 ? rowOf(3, 8, 9) : circleOf(count, 10);
    case 'speaker':
    case 'antenna':
      return rowOf(count, 12, 12);
    case 'capacitor':
      return count === 2 ? rowOf(2, 14) : circleOf(count, 8);
    case 'plug':
    case 'jack':
      return count > 3 ? circleOf(count, 5 + count * 0.75) : rowOf(count, 10);
    default:
      return count === 1 ? [{ x: 0, y: 0 }] : count <= 4 ? rowOf(count, 10) : twoRows(count);
  }
}

/** Each terminal's place from the middle of its part before the part is turned, mm, seen from below. */
export function offsetsOf(part: Part, terminals: readonly Terminal[]): ReadonlyMap<Id, Spot> {
  const offsets = new Map<Id, Spot>();
  for (const { id, offset } of terminals) if (offset) offsets.set(id, { x: offset.x, y: offset.y });
  if (offsets.size === terminals.length) return offsets;
  if (part.kind === 'tube' || part.kind === 'picture tube') {
    const { pins, others } = splitPins(terminals);
    const spots = socketSpots(part, Math.max(3, ...pins.map(({ name }) => Number(name))));
    for (const { id, name } of pins) {
      const spot = spots[Number(name) - 1];
      if (spot && !offsets.has(id)) offsets.set(id, spot);
    }
    const reach = Math.max(...spots.map(({ x, y }) => Math.hypot(x, y)));
    others.forEach(({ id }, index) => {
      if (!offsets.has(id)) offsets.set(id, { x: reach + 6, y: -reach - 2 + index * 7 });
    });
  }
  const usual = usualSpots(part, terminals);
  terminals.forEach(({ id }, index) => {
    if (!offsets.has(id)) offsets.set(id, usual[index] ?? { x: 0, y: 0 });
  });
  return offsets;
}
