// A tube in its socket, as it looks from the wiring side: pins in their true order around the
// circle, numbers in them, key or gap shown, a short leader from each wired pin to the border.
import type { Terminal } from '#document/index.ts';
import {
  findTubeBase,
  findTubeType,
  tubeBaseOf,
  tubeBases,
  type TubeBase
} from '#handbook/index.ts';
import { degreesOf, isUpright, outwardOf, type Side, type Spot } from '../presentation/sides.ts';
import { toLane } from '../router/lanes.ts';
import { fitText, wrapText } from '../text-width.ts';
import { Sketch, type Figure, type Port } from './figure.ts';
import { drawMark } from './mark.ts';
import type { PartEnd } from './part-end.ts';
import { endsByTerminal, type FigureRequest } from './request.ts';
import { planRing } from './ring-sides.ts';
import { ring, type } from './sizes.ts';
import { dropOf, leave, roomOf, stackDepth, stackHeight, stackPlaces } from './stack.ts';

interface Geometry {
  readonly firstDeg: number;
  readonly stepDeg: number;
  readonly index: TubeBase['index'];
}

const mostPins = Math.max(...tubeBases.map(({ pins }) => pins));

const baseOf = (type: string | undefined): TubeBase | null => {
  if (type === undefined) return null;
  const tube = findTubeType(type);
  return tube ? tubeBaseOf(tube.base) : findTubeBase(type);
};

/** The pins on the circle, and what stands beside it: caps, and numbers that the base does not have. */
const splitTerminals = ({ part, terminals }: Pick<FigureRequest, 'part' | 'terminals'>) => {
  const most = baseOf(part.type)?.pins ?? mostPins;
  const isPin = ({ name, ending }: Terminal): boolean =>
    ending !== 'cap' && /^[1-9]\d?$/.test(name) && Number(name) <= most;
  return {
    pins: terminals.filter(isPin),
    others: terminals.filter((terminal) => !isPin(terminal))
  };
};

/** Whether a part is drawn as a pin circle: tubes whose terminals are numbered pins. */
export const isRing = (request: FigureRequest): boolean =>
  request.part.kind === 'tube' && splitTerminals(request).pins.length >= 3;

const commonBases: Readonly<Record<number, Geometry>> = {
  7: { firstDeg: 45, stepDeg: 45, index: 'gap' },
  8: { firstDeg: 22.5, stepDeg: 45, index: 'key' },
  9: { firstDeg: 36, stepDeg: 36, index: 'gap' },
  12: { firstDeg: 360 / 13, stepDeg: 360 / 13, index: 'gap' }
};

const geometryOf = (type: string | undefined, highest: number): Geometry => {
  const base = baseOf(type);
  if (base && base.pins >= highest) return base;
  return commonBases[highest] ?? { firstDeg: 180 / highest, stepDeg: 360 / highest, index: 'gap' };
};

/** Degrees clockwise from the top; key or gap at the bottom before the socket is turned. */
const pinDegOf = (name: string, { firstDeg, stepDeg }: Geometry): number =>
  180 + firstDeg + (Number(name) - 1) * stepDeg;

const polar = (deg: number, r: number): Spot => ({
  x: r * Math.sin((deg * Math.PI) / 180),
  y: -r * Math.cos((deg * Math.PI) / 180)
});

/** An angle as a turn of at most half a circle either way. */
const signedDeg = (deg: number): number => ((((deg + 180) % 360) + 360) % 360) - 180;

/** A leader leaves the circle straight, then bends. */
const kneeOut = 0.6;

interface Seat {
  readonly end: PartEnd;
  readonly side: Side;
  readonly pin: string;
  readonly deg: number;
  /** Along the side from its middle: to the right, or down. */
  along: number;
  readonly room: number;
}

/** Places along one side near the pins' own projections, in order, no closer than their rooms. */
const spreadAlong = (seats: Seat[]): void => {
  const least = (index: number): number =>
    ((seats[index - 1]?.room ?? 0) + (seats[index]?.room ?? 0)) / 2;
  // Pool neighbours that are too close and centre each pool on the mean of its wishes.
  const pools: { from: number; to: number; middle: number; offsets: number[] }[] = [];
  seats.forEach((seat, index) => {
    let pool = { from: index, to: index, middle: seat.along, offsets: [0] };
    for (;;) {
      const before = pools.at(-1);
      if (!before) break;
      const end = before.middle + (before.offsets.at(-1) ?? 0);
      const start = pool.middle + (pool.offsets[0] ?? 0);
      const needed = least(pool.from);
      if (start - end >= needed - 1e-9) break;
      pools.pop();
      const shift = (before.offsets.at(-1) ?? 0) + needed - (pool.offsets[0] ?? 0);
      const raw = [...before.offsets, ...pool.offsets.map((offset) => offset + shift)];
      const wishes = raw.map((offset, n) => (seats[before.from + n]?.along ?? 0) - offset);
      const mean = wishes.reduce((sum, wish) => sum + wish, 0) / wishes.length;
      pool = { from: before.from, to: pool.to, middle: mean, offsets: raw };
    }
    pools.push(pool);
  });
  for (const pool of pools) {
    pool.offsets.forEach((offset, n) => {
      const seat = seats[pool.from + n];
      const along = pool.middle + offset;
      // Lines stand on lanes; a pool keeps its steps, since all of it is rounded the same way.
      if (seat) seat.along = seat.end.mark ? along : toLane(along + 1e-6);
    });
  }
};

const drawSocket = (
  sketch: Sketch,
  middle: Spot,
  pins: readonly Terminal[],
  geometry: Geometry,
  turnDeg: number,
  used: ReadonlySet<string>
): void => {
  const mark = 180 + turnDeg;
  if (geometry.index === 'key') {
    const key = polar(mark, ring.body);
    sketch.circle('part.key', middle.x + key.x, middle.y + key.y, 0.95);
  } else {
    const [from, to] = [polar(mark - 9, ring.body), polar(mark + 9, ring.body)];
    const tip = polar(mark, ring.body - 1.5);
    const points = [from, tip, to].flatMap(({ x, y }) => [middle.x + x, middle.y + y]);
    sketch.line('part.key', points, { closed: true });
  }
  for (const pin of pins) {
    const spot = polar(pinDegOf(pin.name, geometry) + turnDeg, ring.pinCircle);
    const marks = { terminal: pin.id, layer: 'terminals' } as const;
    const style = used.has(pin.id) ? 'part.pin' : 'part.pin.spare';
    sketch.circle(style, middle.x + spot.x, middle.y + spot.y, ring.pin, marks);
    const name = used.has(pin.id) ? 'part.pin.name' : 'part.pin.name.spare';
    sketch.text(name, pin.name, middle.x + spot.x, middle.y + spot.y, {
      size: type.pin,
      face: 'mono',
      ...marks
    });
  }
};

const functionLook = { size: type.small * 0.92, face: 'sans' } as const;

/** At most two lines; what does not fit is left out with an ellipsis. */
const twoLines = (text: string, width: number): string[] => {
  const lines = wrapText(text, width, functionLook);
  if (lines.length <= 2) return lines;
  return [lines[0] ?? '', `${(lines[1] ?? '').replace(/[,;.]$/, '')} …`];
};

const drawNames = (sketch: Sketch, { part }: FigureRequest, middle: Spot): void => {
  const inner = 2 * (ring.pinCircle - ring.pin) - 1.4;
  const lines = [
    {
      style: 'part.reference',
      size: type.reference,
      bold: true,
      text: part.reference,
      width: inner
    },
    {
      style: 'part.kind',
      size: type.kind,
      text: part.type ?? part.value ?? '',
      width: inner - 0.6
    },
    ...twoLines(part.function ?? '', inner - 1.4).map((text) => ({
      style: 'part.function',
      size: functionLook.size,
      text,
      width: inner
    }))
  ].filter(({ text }) => text !== '');
  const height = lines.reduce((sum, { size }) => sum + size * 1.2, 0);
  let y = middle.y - height / 2;
  for (const { style, text, width, ...look } of lines) {
    const full = { face: 'sans' as const, ...look };
    y += look.size * 0.6;
    sketch.text(style, fitText(text, width, full), middle.x, y, full);
    y += look.size * 0.6;
  }
};

/** The figure of a tube in its socket; caps and other terminals stand at its upper right corner. */
export const buildRing = (request: FigureRequest): Figure => {
  const { part, ends } = request;
  const { pins, others } = splitTerminals(request);
  const highest = Math.max(...pins.map(({ name }) => Number(name)));
  const geometry = geometryOf(part.type, highest);
  const byTerminal = endsByTerminal(ends);
  const ordered = pins
    .toSorted((a, b) => Number(a.name) - Number(b.name))
    .flatMap((pin) =>
      (byTerminal.get(pin.id) ?? []).map((end) => ({
        end,
        pinDeg: pinDegOf(pin.name, geometry),
        pin
      }))
    );
  const first = planRing(ordered, geometry.stepDeg);
  // Ends of one pin fan out in the order of where they go.
  const lean = ({ end, pinDeg }: (typeof ordered)[number]): number =>
    end.towardsDeg === null ? 0 : signedDeg(end.towardsDeg - pinDeg - first.turnDeg);
  ordered.sort((a, b) => Number(a.pin.name) - Number(b.pin.name) || lean(a) - lean(b));
  const plan = planRing(ordered, geometry.stepDeg);
  const bySide: Record<Side, Seat[]> = { north: [], east: [], south: [], west: [] };
  for (const index of plan.sequence) {
    const own = ordered[index];
    const side = plan.sides[index];
    if (!own || !side) continue;
    const deg = own.pinDeg + plan.turnDeg;
    const spot = polar(deg, ring.body + kneeOut);
    const along = isUpright(side) ? spot.x : spot.y;
    bySide[side].push({
      end: own.end,
      side,
      pin: own.pin.name,
      deg,
      along,
      room: roomOf(own.end, side).pitch
    });
  }
  // Clockwise runs leftwards below and upwards on the left.
  bySide.south.reverse();
  bySide.west.reverse();
  for (const side of Object.values(bySide)) spreadAlong(side);
  const caps = others.map((terminal): Cap => {
    const own = byTerminal.get(terminal.id) ?? [];
    return { terminal, ends: own, height: Math.max(4.6, stackHeight(own, 'east') + 1.2) };
  });
  const capHeight = caps.reduce((sum, cap) => sum + cap.height, 0);
  const extent = (seats: readonly Seat[]): number =>
    Math.max(0, ...seats.map(({ along, room }) => Math.abs(along) + room / 2));
  const least = ring.body + ring.room;
  const halfWidth = Math.max(least, extent(bySide.north), extent(bySide.south));
  const halfHeight = Math.max(least, extent(bySide.east), extent(bySide.west));
  const depthOf = (side: Side): number =>
    Math.max(0, ...bySide[side].map(({ end }) => roomOf(end, side).depth));
  const capDepth = Math.max(0, ...caps.map((cap) => stackDepth(cap.ends, 'east')));
  const capRoom = caps.length > 0 ? 3 + capDepth : 0;
  const depth = {
    north: Math.max(depthOf('north'), capHeight),
    east: Math.max(depthOf('east'), capRoom),
    south: depthOf('south'),
    west: depthOf('west')
  };
  const middle = { x: depth.west + halfWidth, y: depth.north + halfHeight };
  const width = depth.west + 2 * halfWidth + depth.east;
  const height = depth.north + 2 * halfHeight + depth.south;
  const sketch = new Sketch();
  const ports: Port[] = [];
  sketch.circle('part.socket', middle.x, middle.y, ring.body, { layer: 'bodies' });
  drawSocket(
    sketch,
    middle,
    pins,
    geometry,
    plan.turnDeg,
    new Set(byTerminal.keys()) as ReadonlySet<string>
  );
  drawNames(sketch, request, middle);
  for (const side of Object.keys(bySide) as Side[]) {
    for (const seat of bySide[side])
      addSeat(sketch, ports, seat, middle, { halfWidth, halfHeight }, depth[side]);
  }
  drawCaps(sketch, ports, caps, { middle, width, halfWidth, halfHeight });
  return { width, height, ports, items: sketch.items };
};

/** The leader from a pin to the border, and what leaves there. */
const addSeat = (
  sketch: Sketch,
  ports: Port[],
  seat: Seat,
  middle: Spot,
  half: { halfWidth: number; halfHeight: number },
  depth: number
): void => {
  const { end, side, deg, along } = seat;
  const at = (r: number): Spot => {
    const spot = polar(deg, r);
    return { x: middle.x + spot.x, y: middle.y + spot.y };
  };
  const way = outwardOf[side];
  const border: Spot = isUpright(side)
    ? { x: middle.x + along, y: middle.y + way.y * half.halfHeight }
    : { x: middle.x + way.x * half.halfWidth, y: middle.y + along + dropOf(end) };
  const pin = at(ring.pinCircle + ring.pin);
  const knee = at(ring.body + kneeOut);
  if (end.mark) {
    const band = end.mark.tags[0]?.band;
    const wire = end.mark.tags[0] ? { wire: end.mark.tags[0].wire } : {};
    const style = end.mark.kind === 'component' || !band ? 'lead' : `wire.${band}`;
    const points = [pin, knee, border].flatMap(({ x, y }) => [x, y]);
    sketch.line(style, points, { layer: 'wires', round: 0.6, ...wire });
    drawMark(sketch, end.mark, border, side);
    return;
  }
  const port = { x: border.x + way.x * depth, y: border.y + way.y * depth };
  const path = depth > 0 ? [pin, knee, border, port] : [pin, knee, port];
  ports.push({ end: end.id, ...port, side, path });
};

/** Caps stand beside the circle, above its upper right corner, one above the other; their lines leave
 *  to the right. */
const drawCaps = (
  sketch: Sketch,
  ports: Port[],
  caps: readonly Cap[],
  place: { middle: Spot; width: number; halfWidth: number; halfHeight: number }
): void => {
  const { middle, width, halfWidth, halfHeight } = place;
  const x = middle.x + halfWidth + 1;
  let foot = middle.y - halfHeight + 1.2;
  caps.forEach(({ terminal, ends, height }, index) => {
    const y = foot - height / 2;
    foot -= height;
    const edge = polar(degreesOf.east - 45 - index * 9, ring.body);
    sketch.line('part.fine', [middle.x + edge.x, middle.y + edge.y, x - 1.2, y + 1.2]);
    sketch.circle('part.cap', x, y, 1.7, { terminal: terminal.id, layer: 'terminals' });
    sketch.text(
      'part.pin.name',
      fitText(terminal.name, 12, { size: type.small, face: 'sans' }),
      x - 2.4,
      y,
      { size: type.small, anchor: 'end', layer: 'terminals', terminal: terminal.id }
    );
    leave(sketch, ports, stackPlaces(ends, 'east', y), 'east', x + 1.5, width);
  });
};

interface Cap {
  readonly terminal: Terminal;
  readonly ends: readonly PartEnd[];
  readonly height: number;
}
