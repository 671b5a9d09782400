// A whole diagram brought close together. Parts begin where the layered layout has them and shift by what they
// are wired to; then their ends take the sides that face where their lines go; and both again, the parts
// moving less each time.
import type { Id } from '#document/index.ts';
import { chanceFrom } from '#quantity/seeded-chance.ts';
import type { Box, Figure, Port } from '../../figures/figure.ts';
import type { Link } from '../../presentation/links.ts';
import { endId, type Course } from '../../presentation/part-ends.ts';
import type { Plan } from '../../presentation/plan.ts';
import type { LineRole } from '../../presentation/roles.ts';
import { degreesOf, isUpright, type Spot } from '../../presentation/sides.ts';
import { laneMm } from '../../router/lanes.ts';
import { headingOf } from '../../router/router.ts';
import { buildFigures } from '../build-figures.ts';
import type { FirstTask, Share } from '../first/first-places.ts';
import type { Geometry } from '../geometry.ts';
import { anneal, type Cooling } from './anneal.ts';
import { Floor, type FloorEnd, type FloorLine, type FloorPart, type Room } from './floor.ts';
import { fromLanes, toLanes, type UnitOnFloor } from './on-floor.ts';
import { layRegions, type Ground } from './regions.ts';
import { settle } from './settle.ts';
import { boxUnits, stackUnits } from './units.ts';

/** How much a line pulls its ends together, by what it is. */
const pull: Readonly<Record<LineRole, number>> = {
  signal: 1,
  supply: 0.6,
  heater: 0.6,
  chassis: 0.5
};

/** Lanes beside a part: at least so many, some more for each line of its own, and no more than so many. */
const room = { level: 2, upright: 1, byLine: 0.4, most: 5 } as const;
/** What stands there already may stand so close. */
const closeRoom: Room = [2, 2, 2, 2];
/** This much of a unit's ground is parts and the room beside them. */
const fill = 0.8;

/** Shifts for each part, and how far parts still move, each time that their ends have turned. */
const coolings: readonly { readonly effort: number; readonly by: Omit<Cooling, 'steps'> }[] = [
  { effort: 800, by: { from: 60, to: 3, overlap: [0.3, 4] } },
  { effort: 700, by: { from: 12, to: 1, overlap: [1, 8] } },
  { effort: 700, by: { from: 5, to: 0.3, overlap: [3, 20] } },
  { effort: 500, by: { from: 3, to: 0.3, overlap: [5, 20] } }
];

/** What is well ordered to begin with is not stirred up as much. */
const gentleStart = 30;

/** Small beside a quarter turn: it decides between ends of one pin, never between sides. */
const orderDeg = 8;

const nowhere: Spot = { x: 0, y: 0 };

/** By the side that an end left by before; those of one pin keep their order, which runs clockwise. */
const courseBefore = ({ width, height }: Figure, { side, x, y }: Port): Course => {
  const sort = isUpright(side) ? x : y;
  const share = isUpright(side) ? x / width - 0.5 : y / height - 0.5;
  const clockwise = side === 'north' || side === 'east' ? share : -share;
  return { towardsDeg: (degreesOf[side] + orderDeg * clockwise + 360) % 360, sort };
};

export interface PackingOptions {
  readonly seed: number;
  /** How much room wires have beside the parts: 1 is little. */
  readonly ease: number;
}

export class Packing {
  /** Steps of a layout from nothing. */
  static readonly steps = coolings.length;
  private readonly plan: Plan;
  private readonly units: readonly UnitOnFloor[];
  private readonly ids: readonly Id[];
  private readonly indexOf: ReadonlyMap<Id, number>;
  private readonly regionOf: readonly number[];
  private readonly chance: () => number;
  private readonly ease: number;
  private figures: ReadonlyMap<Id, Figure>;
  private regions: readonly Box[] = [];
  /** Upper left corners by part, lanes. */
  private places: Spot[] = [];
  private before: Geometry | null = null;

  constructor(plan: Plan, { seed, ease }: PackingOptions) {
    this.plan = plan;
    this.ease = ease;
    this.chance = chanceFrom(seed);
    this.units = plan.sheet.blocks.map((block) => ({ block, parts: block.parts }));
    this.ids = this.units.flatMap(({ parts }) => parts);
    this.indexOf = new Map(this.ids.map((id, index) => [id, index]));
    this.regionOf = this.units.flatMap(({ parts }, unit) => parts.map(() => unit));
    this.figures = buildFigures(plan, new Map());
  }

  /** What is asked of the layered layout. */
  firstTask(): FirstTask {
    const parts = this.floorParts();
    return {
      units: this.units.map(({ parts: own }) =>
        own.map((id) => {
          const {
            width,
            height,
            room: [north, east, south, west]
          } = parts[this.indexOf.get(id) ?? 0] as FloorPart;
          return { id, width: width + east + west, height: height + north + south };
        })
      ),
      lines: this.plan.links.lines.map(({ from, to }) =>
        this.plan.rankOf(from.part) > this.plan.rankOf(to.part)
          ? { from: to.part, to: from.part }
          : { from: from.part, to: to.part }
      )
    };
  }

  /** Places everything anew, from where the layered layout has put it; says before each step what it is.
   *  @param first parts that are not in it begin in rows; null: all do, which makes for another diagram */
  *place(first: ReadonlyMap<Id, Share> | null): Generator<string> {
    const parts = this.floorParts();
    this.regions = layRegions(this.grounds(parts), this.biggest());
    this.places = this.inRows(parts);
    if (first) this.placeByShares(first);
    for (const [turn, { effort, by }] of coolings.entries()) {
      yield turn === 0 ? 'bringing parts together' : 'turning ends to their lines';
      if (turn > 0) this.learn();
      const floor = new Floor(this.floorParts(), this.regions, this.lines(turn > 0), this.places);
      const from = turn === 0 && first ? gentleStart : by.from;
      anneal(floor, { ...by, from, steps: effort * parts.length }, this.chance);
      this.places = settle(floor);
    }
    this.places = stackUnits(this.units, this.regions, this.boxesInUnits(), this.places);
  }

  /** Keeps every part where it was laid out before, and gives those a place that are new. */
  *add(before: Geometry): Generator<string> {
    yield 'finding places for what is new';
    this.before = before;
    const known = new Map(before.parts.map((part) => [part.id, part]));
    const places = this.ids.map((id): Spot | null => {
      const box = known.get(id)?.box;
      return box ? { x: toLanes(box.x), y: toLanes(box.y) } : null;
    });
    this.places = places.map((place) => place ?? nowhere);
    this.regions = this.regionsAround(before);
    this.learn(before);
    const own = this.floorParts().map((part, index): FloorPart =>
      places[index] ? { ...part, room: closeRoom } : part
    );
    const floor = new Floor(own, this.regions, this.lines(false), this.places);
    const isNew = places.map((place) => place === null);
    isNew.forEach((is, index) => {
      const middle = is ? floor.middleOfOthers(index, 0) : null;
      if (middle) floor.put(index, middle.x, middle.y);
    });
    this.places = settle(floor, isNew);
  }

  private biggest(): number {
    const sizes = this.plan.sheet.blocks.map(({ parts, loose }) => parts.length + loose.length);
    return Math.max(0, sizes.indexOf(Math.max(...sizes)));
  }

  private figureOf(index: number): Figure {
    return this.figures.get(this.ids[index] ?? '') as Figure;
  }

  private floorParts(): FloorPart[] {
    return this.ids.map((_, index) => {
      const { width, height, ports } = this.figureOf(index);
      const beside = (side: Port['side']): number => {
        const own = ports.filter((port) => port.side === side).length;
        const least = isUpright(side) ? room.upright : room.level;
        return Math.round((least + Math.min(room.most, own * room.byLine)) * this.ease);
      };
      return {
        width: toLanes(width),
        height: toLanes(height),
        room: [beside('north'), beside('east'), beside('south'), beside('west')],
        region: this.regionOf[index] ?? 0
      };
    });
  }

  private endOf(link: Link, end: 'from' | 'to', atPort: boolean): FloorEnd | null {
    const part = this.indexOf.get(link[end].part);
    if (part === undefined) return null;
    const { width, height, ports } = this.figureOf(part);
    const port = atPort ? ports.find((one) => one.end === endId(link, end)) : undefined;
    return port
      ? { part, x: toLanes(port.x), y: toLanes(port.y), heading: headingOf(port.side) }
      : { part, x: toLanes(width / 2), y: toLanes(height / 2), heading: null };
  }

  private lines(atPorts: boolean): FloorLine[] {
    return this.plan.links.lines.flatMap((link): FloorLine[] => {
      const [one, two] = [this.endOf(link, 'from', atPorts), this.endOf(link, 'to', atPorts)];
      if (!one || !two) return [];
      const isTurned = this.plan.rankOf(link.from.part) > this.plan.rankOf(link.to.part);
      const role = this.plan.roleOf(link);
      return [
        {
          from: isTurned ? two : one,
          to: isTurned ? one : two,
          weight: pull[role],
          isDirected: role === 'signal' && link.kind === 'wire'
        }
      ];
    });
  }

  private grounds(parts: readonly FloorPart[]): Ground[] {
    return this.units.map((_, unit) => {
      const sizes = parts
        .filter(({ region }) => region === unit)
        .map(({ width, height, room: [north, east, south, west] }) => ({
          width: width + east + west,
          height: height + north + south
        }));
      const area = sizes.reduce((sum, { width, height }) => sum + width * height, 0) / fill;
      return {
        area: Math.max(60, area),
        least: {
          width: Math.max(12, ...sizes.map(({ width }) => width)),
          height: Math.max(6, ...sizes.map(({ height }) => height))
        }
      };
    });
  }

  /** Parts in rows along the signal, as one reads. */
  private inRows(parts: readonly FloorPart[]): Spot[] {
    const places: Spot[] = [];
    this.units.forEach(({ parts: own }, unit) => {
      const box = this.regions[unit] as Box;
      let [x, y, deep] = [box.x, box.y, 0];
      for (const id of own) {
        const index = this.indexOf.get(id) ?? 0;
        const { width, height, room: beside } = parts[index] as FloorPart;
        const [north, east, south, west] = beside;
        const wide = width + east + west;
        if (x > box.x && x + wide > box.x + box.width) [x, y, deep] = [box.x, y + deep, 0];
        places[index] = { x: x + west, y: y + north };
        x += wide;
        deep = Math.max(deep, height + north + south);
      }
    });
    return places;
  }

  /** Parts where the layered layout has them, as if its sheet were drawn together to the unit's ground. */
  private placeByShares(first: ReadonlyMap<Id, Share>): void {
    this.places = this.places.map((place, index) => {
      const share = first.get(this.ids[index] ?? '');
      const region = this.regions[this.regionOf[index] ?? 0];
      if (!share || !region) return place;
      const { width, height } = this.figureOf(index);
      return {
        x: region.x + Math.round(share.x * region.width - toLanes(width) / 2),
        y: region.y + Math.round(share.y * region.height - toLanes(height) / 2)
      };
    });
  }

  /** Each unit as it stands, with all the paper below it; a new one on the right of everything. */
  private regionsAround(before: Geometry): Box[] {
    const right = toLanes(before.x + before.width) + 16;
    return this.units.map(({ block }) => {
      const box = before.frames.find((frame) => frame.block.id === block.id)?.box;
      return box
        ? { x: toLanes(box.x), y: toLanes(box.y), width: toLanes(box.width), height: 4000 }
        : { x: right, y: toLanes(before.y), width: 100, height: 4000 };
    });
  }

  /** Sides and orders of all ends, from where their lines go now, or from what they were before. */
  private learn(before?: Geometry): void {
    const courses = new Map<string, Course>();
    for (const link of this.plan.links.lines) {
      for (const [end, far] of [
        ['from', 'to'],
        ['to', 'from']
      ] as const) {
        const course = this.courseOf(link, end, far);
        if (course) courses.set(endId(link, end), course);
      }
    }
    for (const { figure } of before?.parts ?? [])
      for (const port of figure.ports) courses.set(port.end, courseBefore(figure, port));
    const old = this.figures;
    this.figures = buildFigures(this.plan, courses);
    if (before) return;
    // A part that has grown or shrunk keeps its middle.
    this.places = this.places.map(({ x, y }, index) => {
      const was = old.get(this.ids[index] ?? '') as Figure;
      const now = this.figureOf(index);
      return {
        x: x + Math.round(toLanes(was.width - now.width) / 2),
        y: y + Math.round(toLanes(was.height - now.height) / 2)
      };
    });
  }

  private courseOf(link: Link, end: 'from' | 'to', far: 'from' | 'to'): Course | null {
    const [own, other] = [this.indexOf.get(link[end].part), this.indexOf.get(link[far].part)];
    if (own === undefined || other === undefined) return null;
    const here = this.middleOf(own);
    const there = this.portAt(link, far, other) ?? this.middleOf(other);
    const degrees = (Math.atan2(there.x - here.x, here.y - there.y) * 180) / Math.PI;
    const side = this.figureOf(own).ports.find((one) => one.end === endId(link, end))?.side;
    return {
      towardsDeg: (degrees + 360) % 360,
      sort: side !== undefined && isUpright(side) ? there.x : there.y
    };
  }

  private middleOf(index: number): Spot {
    const { x, y } = this.places[index] ?? nowhere;
    const { width, height } = this.figureOf(index);
    return { x: x + width / laneMm / 2, y: y + height / laneMm / 2 };
  }

  private portAt(link: Link, end: 'from' | 'to', index: number): Spot | null {
    const port = this.figureOf(index).ports.find((one) => one.end === endId(link, end));
    const { x, y } = this.places[index] ?? nowhere;
    return port ? { x: x + port.x / laneMm, y: y + port.y / laneMm } : null;
  }

  private boxesInUnits(): Box[] {
    return this.places.map(({ x, y }, index) => {
      const { width, height } = this.figureOf(index);
      return { x, y, width: toLanes(width), height: toLanes(height) };
    });
  }

  /** The diagram as it is placed; lines that were run before have their routes, the others none yet. */
  get geometry(): Geometry {
    const wired = this.ids.map((id, index) => {
      const figure = this.figureOf(index);
      const { x, y } = this.places[index] ?? nowhere;
      const corner = { x: fromLanes(x), y: fromLanes(y) };
      return { id, figure, box: { ...corner, width: figure.width, height: figure.height } };
    });
    const { parts, frames } = boxUnits(this.units, wired, this.figures, this.before);
    const routes = new Map(this.before?.lines.map(({ link, route }) => [link.id, route]));
    const lines = this.plan.links.lines.map((link) => ({
      link,
      route: routes.get(link.id) ?? [],
      fromPath: [],
      toPath: []
    }));
    return { x: 0, y: 0, width: 0, height: 0, frames, parts, lines };
  }
}
