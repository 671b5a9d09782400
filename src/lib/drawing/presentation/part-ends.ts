// What meets at each part, with what each end would like: known first from the order of parts and
// the roles of terminals, then, once there is a layout, from where its line really goes.
import type { Id } from '#document/index.ts';
import { terminalLabel } from '#document/references.ts';
import type { MarkFace, PartEnd } from '../figures/part-end.ts';
import { sideOut } from './exits.ts';
import type { Link, Mark } from './links.ts';
import type { Plan } from './plan.ts';
import { degreesOf, sides, type Side } from './sides.ts';

/** Where the line of an end heads, learnt from a layout. */
export interface Course {
  /** Degrees clockwise from the top, from the part to where the line goes. */
  readonly towardsDeg: number;
  /** Where it lies after its first turn: y at the flanks, x above and below. */
  readonly sort: number;
}

export type Courses = ReadonlyMap<string, Course>;

export const endId = (link: Link, end: 'from' | 'to'): string => `${link.id}#${end}`;

type Cost = PartEnd['cost'];

const buildCost = (price: (side: Side) => number): Cost =>
  Object.fromEntries(sides.map((side) => [side, price(side)])) as unknown as Cost;

const apart = (a: number, b: number): number => {
  const turn = Math.abs(a - b) % 360;
  return turn > 180 ? 360 - turn : turn;
};

const markCosts: Readonly<Record<Mark['kind'], Cost>> = {
  ground: { north: 1.2, east: 0.5, south: 0, west: 0.5 },
  metal: { north: 1.2, east: 0.5, south: 0, west: 0.5 },
  component: { north: 0.5, east: 0, south: 0.5, west: 0.05 },
  free: { north: 0.4, east: 0, south: 0.5, west: 0.1 },
  gather: { north: 2, east: 0, south: 2, west: 0 }
};

const markFace = (plan: Plan, mark: Mark): MarkFace => {
  const part = mark.component === undefined ? null : plan.partOf(mark.component);
  return {
    kind: mark.kind,
    tags: mark.wires.map((wire) =>
      plan.tagOf(wire, mark.kind !== 'free' && mark.kind !== 'gather')
    ),
    words: mark.words.replace(/^(chassis|metal) at /, ''),
    ...(part
      ? {
          component: {
            id: part.id,
            kind: part.kind,
            reference: part.reference,
            value: part.value ?? '',
            toMetal: mark.toMetal ?? false
          }
        }
      : {})
  };
};

const lineCost = (
  plan: Plan,
  link: Link,
  end: 'from' | 'to',
  towardsDeg: number,
  isLearnt: boolean
): Cost => {
  const { part, terminal } = link[end];
  const role = terminal === null ? null : plan.sideOf(part, terminal);
  const kind = plan.roleOf(link);
  const isRail = kind === 'heater' || kind === 'supply';
  const roleWeight = isRail ? 1.1 : isLearnt ? 0.3 : 0.9;
  const courseWeight = isRail ? 0.4 : 1;
  return buildCost((side) => {
    const byCourse = (1 - Math.cos((apart(towardsDeg, degreesOf[side]) * Math.PI) / 180)) / 2;
    const byRole = role === null ? 0 : apart(degreesOf[role], degreesOf[side]) / 180;
    // Lines run sideways: above and below is a detour unless the role says so.
    const upright = side === 'north' || side === 'south' ? 0.12 : 0;
    return courseWeight * byCourse + roleWeight * byRole + upright;
  });
};

/** Before there is a layout: by the order of the parts, or the way out of the unit. */
const guessDeg = (plan: Plan, link: Link, end: 'from' | 'to'): number => {
  const out = sideOut(plan, link, end);
  if (out) return degreesOf[out];
  const other = end === 'from' ? link.to : link.from;
  const isFirst = plan.rankOf(link[end].part) < plan.rankOf(other.part);
  return degreesOf[isFirst ? 'east' : 'west'];
};

/** The ends at every part that is drawn. */
export const buildPartEnds = (plan: Plan, courses: Courses): ReadonlyMap<Id, PartEnd[]> => {
  const byPart = new Map<Id, PartEnd[]>();
  const add = (part: Id, end: PartEnd): void => {
    const known = byPart.get(part);
    if (known) known.push(end);
    else byPart.set(part, [end]);
  };
  for (const link of plan.links.lines) {
    for (const end of ['from', 'to'] as const) {
      const id = endId(link, end);
      const course = courses.get(id);
      const towardsDeg = course?.towardsDeg ?? guessDeg(plan, link, end);
      add(link[end].part, {
        id,
        terminal: link[end].terminal,
        mark: null,
        cost: lineCost(plan, link, end, towardsDeg, course !== undefined),
        towardsDeg,
        sort: course?.sort ?? 0
      });
    }
  }
  for (const mark of plan.links.marks) {
    if (plan.links.absorbed.has(mark.part)) continue;
    add(mark.part, {
      id: mark.id,
      terminal: mark.terminal,
      mark: markFace(plan, mark),
      cost: markCosts[mark.kind],
      towardsDeg: null,
      // Marks stand below the lines of their terminal.
      sort: Number.MAX_VALUE
    });
  }
  return byPart;
};

/** "V3-5 to TS2-1", for titles. */
export const describeLink = (plan: Plan, link: Link): string =>
  [link.from, link.to]
    .map(({ part, terminal }) => {
      const found = plan.partOf(part);
      const own = terminal === null ? undefined : found.terminals[terminal];
      return own ? terminalLabel(found, own) : found.reference;
    })
    .join(' to ');
