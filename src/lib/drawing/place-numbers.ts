// Puts a box with its number on every line: on the wire itself, off the parts, never on another box,
// and off other wires as far as can be. Long wires carry it again near their other end, so that
// nobody has to walk the whole way to know which wire this is.
import RBush from 'rbush';
import type { Box } from './figures/figure.ts';
import { numberBox } from './figures/sizes.ts';
import type { Spot } from './presentation/sides.ts';

/** A line that wants its box. */
export interface NumberWish {
  readonly id: string;
  readonly route: readonly Spot[];
  /** Widths of the box, the one to be tried first in front. */
  readonly widths: readonly number[];
}

export interface NumberPlace {
  readonly id: string;
  /** Which of the widths was taken. */
  readonly width: number;
  readonly x: number;
  readonly y: number;
  readonly upright: boolean;
  readonly box: Box;
}

interface Taken {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly kind: 'part' | 'label' | 'line';
  readonly line: string;
}

const clear = 0.35;
/** Room between a box and the rounded corner of its line, mm. */
const cornerRoom = 1.7;
const price = {
  part: 400,
  label: 1e6,
  line: 24,
  upright: 4,
  overhang: 40,
  narrower: 10,
  perMm: 0.06
} as const;

/** A wire longer than this carries its number at both ends; one longer than twice as much, also midway. */
export const longLineMm = 130;

const toTaken = ({ x, y, width, height }: Box, kind: Taken['kind'], line = ''): Taken => ({
  minX: x,
  minY: y,
  maxX: x + width,
  maxY: y + height,
  kind,
  line
});

interface Candidate {
  readonly x: number;
  readonly y: number;
  readonly upright: boolean;
  /** Along the line from its start, mm. */
  readonly at: number;
  /** The piece is shorter than the box, or slanted. */
  readonly overhangs: boolean;
}

const lengthOf = (route: readonly Spot[]): number =>
  route.slice(1).reduce((sum, point, index) => {
    const before = route[index] as Spot;
    return sum + Math.abs(point.x - before.x) + Math.abs(point.y - before.y);
  }, 0);

/** Middles of boxes on the pieces of a line: clear of its corners where a piece is long enough for
 *  that, else wherever it runs, hanging over. */
const candidatesOf = (route: readonly Spot[], width: number): Candidate[] => {
  const found: Candidate[] = [];
  let run = 0;
  for (let index = 1; index < route.length; index++) {
    const [a, b] = [route[index - 1] as Spot, route[index] as Spot];
    const [wide, high] = [Math.abs(a.x - b.x), Math.abs(a.y - b.y)];
    const long = wide + high;
    if (long === 0) continue;
    const add = (from: number, to: number, overhangs: boolean): void => {
      const steps = Math.min(40, Math.ceil((to - from) / 1.5));
      for (let step = 0; step <= steps; step++) {
        const along = from + (steps === 0 ? 0 : ((to - from) * step) / steps);
        found.push({
          x: a.x + ((b.x - a.x) * along) / long,
          y: a.y + ((b.y - a.y) * along) / long,
          upright: wide < high,
          at: run + along,
          overhangs
        });
      }
    };
    const isStraight = Math.min(wide, high) < 1e-3;
    const inset = long >= width + 2 * cornerRoom ? cornerRoom : 0.5;
    const [from, to] = [inset + width / 2, long - inset - width / 2];
    if (isStraight && from <= to) add(from, to, false);
    else add(0, long, true);
    run += long;
  }
  return found;
};

const boxAt = ({ x, y, upright }: Candidate, width: number): Box => {
  const [wide, high] = upright ? [numberBox.height, width] : [width, numberBox.height];
  return { x: x - wide / 2, y: y - high / 2, width: wide, height: high };
};

/** Where along a line its boxes should stand, mm from its start. */
const stationsOf = (length: number): number[] => {
  if (length <= longLineMm) return [length / 2];
  const inset = 24;
  const ends = [inset, length - inset];
  if (length <= 2 * longLineMm) return ends;
  const between = Math.floor(length / (2 * longLineMm));
  const middles = Array.from(
    { length: between },
    (_, index) => inset + ((length - 2 * inset) * (index + 1)) / (between + 1)
  );
  return [...ends, ...middles];
};

interface Found {
  readonly place: NumberPlace;
  readonly cost: number;
}

interface Choice {
  readonly cost: number;
  readonly candidate: Candidate;
  readonly width: number;
}

const isCovering = (choice: Choice | null): boolean =>
  choice !== null && choice.cost >= price.label;

/** Places numbers one after the other; each stays clear of those before it. */
export class NumberPlacer {
  private readonly tree = new RBush<Taken>();

  /** `boxes` are parts, names and everything else that must stay readable. */
  constructor(
    lines: readonly { readonly id: string; readonly route: readonly Spot[] }[],
    boxes: readonly Box[]
  ) {
    const taken = boxes.map((box) => toTaken(box, 'part'));
    for (const { id, route } of lines) {
      for (let index = 1; index < route.length; index++) {
        const [a, b] = [route[index - 1] as Spot, route[index] as Spot];
        const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)];
        const box = { x, y, width: Math.abs(a.x - b.x), height: Math.abs(a.y - b.y) };
        taken.push(toTaken(box, 'line', id));
      }
    }
    this.tree.load(taken);
  }

  private cost(candidate: Candidate, width: number, line: string, station: number): number {
    const box = boxAt(candidate, width);
    let cost =
      Math.abs(candidate.at - station) * price.perMm +
      (candidate.upright ? price.upright : 0) +
      (candidate.overhangs ? price.overhang : 0);
    const query = {
      minX: box.x - clear,
      minY: box.y - clear,
      maxX: box.x + box.width + clear,
      maxY: box.y + box.height + clear
    };
    for (const hit of this.tree.search(query)) {
      if (hit.kind !== 'line') cost += price[hit.kind];
      else if (hit.line !== line) cost += price.line;
    }
    return cost;
  }

  private find({ id, route, widths }: NumberWish, station: number): Found | null {
    let best: Choice | null = null;
    const tryOut = (aside: number): void => {
      for (const [turn, width] of widths.entries()) {
        for (const on of candidatesOf(route, width)) {
          const candidate = on.upright ? { ...on, x: on.x + aside } : { ...on, y: on.y + aside };
          const cost = this.cost(candidate, width, id, station) + turn * price.narrower;
          if (!best || cost < best.cost) best = { cost, candidate, width };
        }
      }
    };
    tryOut(0);
    // Crowded out: beside the line, as near as there is room.
    for (let step = 1; step <= 6 && isCovering(best); step++) {
      tryOut(step * numberBox.height);
      tryOut(-step * numberBox.height);
    }
    const chosen = best as Choice | null;
    if (!chosen) return null;
    const { candidate, width, cost } = chosen;
    const { x, y, upright } = candidate;
    return { place: { id, width, x, y, upright, box: boxAt(candidate, width) }, cost };
  }

  private take(place: NumberPlace): NumberPlace {
    this.tree.insert(toTaken(place.box, 'label', place.id));
    return place;
  }

  /** Every line its number, the shortest first, since they have the least choice; then long lines
   *  again near their other end, where nothing is in the way. */
  placeAll(wishes: readonly NumberWish[]): NumberPlace[] {
    const byLength = wishes
      .map((wish) => ({ wish, length: lengthOf(wish.route) }))
      .sort((a, b) => a.length - b.length);
    const first = byLength.flatMap(({ wish, length }) => {
      const found = this.find(wish, stationsOf(length)[0] ?? 0);
      return found ? [this.take(found.place)] : [];
    });
    const further = byLength.flatMap(({ wish, length }) =>
      stationsOf(length)
        .slice(1)
        .flatMap((station) => {
          const found = this.find(wish, station);
          return found && found.cost < price.line ? [this.take(found.place)] : [];
        })
    );
    return [...first, ...further];
  }

  /** A name that may stand on any of several lines; null where it would cover something. */
  placeName(wishes: readonly NumberWish[]): NumberPlace | null {
    let best: Found | null = null;
    for (const wish of wishes) {
      const found = this.find(wish, lengthOf(wish.route) / 2);
      if (found && (!best || found.cost < best.cost)) best = found;
    }
    return best && best.cost < price.part ? this.take(best.place) : null;
  }
}

/** Pairs of boxes that lie on each other: must be empty. */
export const findNumberClashes = (places: readonly NumberPlace[]): { a: string; b: string }[] => {
  const clashes: { a: string; b: string }[] = [];
  places.forEach(({ id, box }, index) => {
    for (const other of places.slice(index + 1)) {
      const apart =
        box.x + box.width <= other.box.x ||
        other.box.x + other.box.width <= box.x ||
        box.y + box.height <= other.box.y ||
        other.box.y + other.box.height <= box.y;
      if (!apart) clashes.push({ a: id, b: other.id });
    }
  });
  return clashes;
};
