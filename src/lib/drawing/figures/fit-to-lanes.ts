// A figure set on the raster of lanes: its box a whole number of lanes, its ports on lanes and far
// enough apart. What does not stand on a lane by itself gets there by a short slant inside the box.
import { placeShape } from '../items.ts';
import { isOnLane, laneMm, toLaneUp } from '../router/lanes.ts';
import { isUpright, roundMm, type Side, type Spot } from '../presentation/sides.ts';
import type { Figure, Port } from './figure.ts';

const near = 1e-3;

/** By how much to shift so that most of `values` come to lie on lanes. */
const phaseOf = (values: readonly number[]): number => {
  let best = { shift: 0, hits: 0 };
  for (const value of values) {
    const shift = roundMm(toLaneUp(value) - value);
    const hits = values.filter((other) => isOnLane(other + shift)).length;
    if (hits > best.hits) best = { shift, hits };
  }
  return best.shift;
};

/** Lanes for ports in the order of their places: near those, never closer than wires may run. */
const slotsOf = (wishes: readonly number[]): number[] => {
  const slots: number[] = [];
  for (const wish of wishes) {
    const least = (slots.at(-1) ?? -Infinity) + 1;
    slots.push(Math.max(1, least, Math.round(wish / laneMm - 1e-6)));
  }
  return slots;
};

const isSame = (a: Spot, b: Spot): boolean =>
  Math.abs(a.x - b.x) < near && Math.abs(a.y - b.y) < near;

const alongOf = (side: Side, { x, y }: Spot): number => (isUpright(side) ? x : y);

/** The same figure with everything that wires need on the raster. */
export const fitToLanes = (figure: Figure): Figure => {
  const shiftY = phaseOf(figure.ports.filter(({ side }) => !isUpright(side)).map(({ y }) => y));
  const shiftX = phaseOf(figure.ports.filter(({ side }) => isUpright(side)).map(({ x }) => x));
  const bySide: Record<Side, Port[]> = { north: [], east: [], south: [], west: [] };
  for (const port of figure.ports) bySide[port.side].push(port);
  const slots = new Map<Port, number>();
  const slanted = new Set<Side>();
  const last = { x: 0, y: 0 };
  for (const [side, ports] of Object.entries(bySide) as [Side, Port[]][]) {
    const shift = isUpright(side) ? shiftX : shiftY;
    ports.sort((a, b) => alongOf(side, a) - alongOf(side, b));
    const found = slotsOf(ports.map((port) => alongOf(side, port) + shift));
    ports.forEach((port, index) => {
      const slot = found[index] ?? 0;
      slots.set(port, slot);
      if (Math.abs(slot * laneMm - alongOf(side, port) - shift) > near) slanted.add(side);
      const axis = isUpright(side) ? 'x' : 'y';
      last[axis] = Math.max(last[axis], slot + 1);
    });
  }
  const extra = (side: Side): number => (slanted.has(side) ? laneMm : 0);
  // The corner moves by whole lanes where slants need room on that side.
  const corner = { x: shiftX + extra('west'), y: shiftY + extra('north') };
  const add = { x: extra('west') / laneMm, y: extra('north') / laneMm };
  const width = Math.max(
    toLaneUp(corner.x + figure.width + extra('east')),
    (last.x + add.x) * laneMm
  );
  const height = Math.max(
    toLaneUp(corner.y + figure.height + extra('south')),
    (last.y + add.y) * laneMm
  );
  const toBorder = (port: Port): Port => {
    const { side } = port;
    const slot = slots.get(port) ?? 0;
    const moved = port.path.map(({ x, y }) => ({ x: x + corner.x, y: y + corner.y }));
    const border = isUpright(side)
      ? { x: roundMm((slot + add.x) * laneMm), y: side === 'north' ? 0 : roundMm(height) }
      : { x: side === 'west' ? 0 : roundMm(width), y: roundMm((slot + add.y) * laneMm) };
    const isSlanted =
      Math.abs(alongOf(side, border) - alongOf(side, moved.at(-1) ?? border)) > near;
    // A straight one just runs on; a slanted one bends on the last lane before the border.
    const inner = isSlanted || moved.length === 1 ? moved : moved.slice(0, -1);
    const path = [...inner.filter((spot) => !isSame(spot, border)), border];
    return { end: port.end, side, ...border, path };
  };
  return {
    width: roundMm(width),
    height: roundMm(height),
    ports: figure.ports.map(toBorder),
    items: figure.items.map((item) => ({ ...item, shape: placeShape(item.shape, corner) }))
  };
};
