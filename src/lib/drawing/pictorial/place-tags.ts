// Puts a box with its number on every wire: on the wire itself, off terminals and names, never on
// another box, and off other wires as far as can be. Where nothing on the wire is free the box stands
// beside it, tied to it by a fine line. Long wires carry it again further on.
import RBush from 'rbush';
import type { Box } from '../figures/figure.ts';
import { numberBox } from '../figures/sizes.ts';
import type { Spot } from '../presentation/sides.ts';
import type { Clutter } from './clutter.ts';
import { lineLength, stationsAlong } from './smooth.ts';
import { distanceToPiece, plus, rightOf, times } from './vectors.ts';

export interface TagWish {
  readonly id: string;
  readonly line: readonly Spot[];
  readonly width: number;
}

export interface TagPlace {
  readonly id: string;
  readonly box: Box;
  /** The number reads from below. */
  readonly upright: boolean;
  /** The place on the wire that the box belongs to; null where it stands on the wire. */
  readonly tie: Spot | null;
}

interface Entry {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

interface Piece extends Entry {
  readonly wire: string;
  readonly from: Spot;
  readonly to: Spot;
}

const { height: thick } = numberBox;
const clear = 0.3;
const price = {
  box: 1e6,
  blocked: 60,
  otherWire: 11,
  perMm: 0.05,
  clutter: 0.35,
  aside: 14,
  upright: 2.5
} as const;
const asideMm = [4, 7, 11, 16] as const;
/** How far from its wire a number may stand at all, mm. */
const farthestMm = 200;
/** A wire longer than this carries its number twice, mm. */
const longMm = 170;

const entryOf = ({ x, y, width, height: high }: Box, more = 0): Entry => ({
  minX: x - more,
  minY: y - more,
  maxX: x + width + more,
  maxY: y + high + more
});

interface Found {
  readonly place: TagPlace;
  readonly cost: number;
}

class TagPlacer {
  private readonly boxes = new RBush<Entry>();
  private readonly blocked = new RBush<Entry>();
  private readonly pieces = new RBush<Piece>();
  private readonly clutter: Clutter;

  constructor(wishes: readonly TagWish[], blocked: readonly Box[], clutter: Clutter) {
    this.clutter = clutter;
    this.blocked.load(blocked.map((box) => entryOf(box)));
    this.pieces.load(
      wishes.flatMap(({ id, line }) =>
        line.slice(1).map((to, n): Piece => {
          const from = line[n] ?? to;
          return {
            minX: Math.min(from.x, to.x),
            minY: Math.min(from.y, to.y),
            maxX: Math.max(from.x, to.x),
            maxY: Math.max(from.y, to.y),
            wire: id,
            from,
            to
          };
        })
      )
    );
  }

  /** The best box for a wire near a place along it; on no other box unless none is free. Null where
   *  nothing is left between `from` and `to`, mm along the wire. */
  find(wish: TagWish, wishMm: number, from: number, to: number): Found | null {
    const { id, line, width } = wish;
    const steps = Math.min(90, Math.max(1, Math.ceil((to - from) / 2)));
    const distances = Array.from({ length: steps + 1 }, (_, n) => from + ((to - from) * n) / steps);
    // The nearest first: once a good place is found, those further off need not be looked at.
    const stations = (to < from ? [] : stationsAlong(line, distances)).toSorted(
      (a, b) => Math.abs(a.mm - wishMm) - Math.abs(b.mm - wishMm)
    );
    let best: Found | null = null;
    let least = Infinity;
    const offer = (at: Spot, upright: boolean, tie: Spot | null, extra: number): void => {
      const [wide, high] = upright ? [thick, width] : [width, thick];
      const box = { x: at.x - wide / 2, y: at.y - high / 2, width: wide, height: high };
      const start = extra + (upright ? price.upright : 0);
      const cost = start + this.costOf(box, id, least - start);
      if (cost < least) [best, least] = [{ place: { id, box, upright, tie }, cost }, cost];
    };
    for (const { at, along, mm } of stations) {
      const far = Math.abs(mm - wishMm) * price.perMm;
      offer(at, false, null, far);
      if (Math.abs(along.y) > Math.abs(along.x) * 1.7) offer(at, true, null, far);
    }
    if (least < price.blocked * 0.8) return best;
    for (const { at, along, mm } of stations.filter((_, n) => n % 2 === 0)) {
      for (const mmAside of asideMm) {
        for (const side of [1, -1]) {
          const reach = side * (mmAside + width * 0.3 * Math.abs(along.y));
          const extra = price.aside + mmAside * 0.5 + Math.abs(mm - wishMm) * price.perMm;
          offer(plus(at, times(rightOf(along), reach)), false, at, extra);
        }
      }
    }
    // A crowd: further and further out, until a place is free.
    const middle = stations[0];
    for (let reach = 20; middle && least >= price.box && reach <= farthestMm; reach += 4) {
      const count = Math.ceil(reach / 2);
      for (let n = 0; n < count; n++) {
        const turn = (2 * Math.PI * n) / count;
        const way = { x: Math.cos(turn), y: Math.sin(turn) };
        offer(plus(middle.at, times(way, reach)), false, middle.at, price.aside + reach);
      }
    }
    return best;
  }

  take({ box }: TagPlace): void {
    this.boxes.insert(entryOf(box));
  }

  /** What a box covers; without end as soon as it is `most`, since it cannot be the best then. */
  private costOf(box: Box, own: string, most: number): number {
    if (most <= 0) return Infinity;
    const around = entryOf(box, clear);
    if (this.boxes.collides(around)) return price.box;
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    const covered = this.clutter.costOfBox(middle, box.width, box.height) / thick;
    let cost = covered * price.clutter;
    if (cost >= most) return Infinity;
    cost += this.blocked.search(around).length * price.blocked;
    if (cost >= most) return Infinity;
    const crossed = new Set<string>();
    for (const { wire, from, to } of this.pieces.search(around)) {
      if (wire !== own && !crossed.has(wire) && meetsBox(from, to, box)) crossed.add(wire);
    }
    return cost + crossed.size * price.otherWire;
  }
}

/** True where a straight piece comes into a box, nearly. */
function meetsBox(from: Spot, to: Spot, { x, y, width, height }: Box): boolean {
  // Half the thickness, met at three places along the box, is near enough for boxes this thin.
  const reach = Math.min(width, height) / 2;
  return [0.15, 0.5, 0.85].some((share) => {
    const at =
      width > height
        ? { x: x + width * share, y: y + reach }
        : { x: x + reach, y: y + height * share };
    return distanceToPiece(at, from, to) < reach + 0.2;
  });
}

/** Places for the numbers of all wires. `blocked` are boxes that must stay readable. */
export function placeTags(
  wishes: readonly TagWish[],
  blocked: readonly Box[],
  clutter: Clutter
): readonly TagPlace[] {
  const placer = new TagPlacer(wishes, blocked, clutter);
  const places: TagPlace[] = [];
  const jobs = wishes
    .filter(({ line }) => line.length > 1)
    .map((wish) => ({ wish, length: lineLength(wish.line) }))
    .toSorted((a, b) => a.length - b.length);
  const take = ({ place }: Found): void => {
    placer.take(place);
    places.push(place);
  };
  // Every wire its first box, the shortest first, since they have the least choice.
  for (const { wish, length } of jobs) {
    const inset = Math.min(length / 2, 4 + wish.width / 2);
    const last = length <= longMm ? length - inset : length * 0.55;
    const found = placer.find(wish, length * (length <= longMm ? 0.5 : 0.3), inset, last);
    if (found) take(found);
  }
  // Then another further on, only where nothing is in the way.
  for (const { wish, length } of jobs) {
    if (length <= longMm) continue;
    const found = placer.find(wish, length * 0.78, length * 0.7, length - 12);
    if (found && found.cost < price.otherWire && !found.place.tie) take(found);
  }
  return places;
}
