// Where components that hang by their leads have their bodies: near the middle between the terminals
// they sit on, moved and turned until they cover as little as may be, or where one was measured.
import type { Id, Part, Terminal } from '#document/index.ts';
import type { Spot } from '../presentation/sides.ts';
import { bodyOf, type Body } from './bodies.ts';
import type { Clutter } from './clutter.ts';
import { leadLine, leadStub } from './lead-lines.ts';
import type { HangingPart } from './sheet-places.ts';
import type { TautPaths } from './taut-path.ts';
import { hostKey, type TerminalSpot } from './terminal-spots.ts';
import { distance, plus, times, turnedBy } from './vectors.ts';

export interface Lead {
  readonly terminal: Id;
  /** From the body to the terminal that it sits on, or to its free end. */
  readonly line: readonly Spot[];
  readonly isFree: boolean;
}

export interface PlacedBody {
  readonly part: Part;
  readonly body: Body;
  readonly middle: Spot;
  /** Clockwise from lying level; between -90 and 90, so that a name along it can be read. */
  readonly degrees: number;
  readonly leads: readonly Lead[];
}

/** Weights in the clutter: what a body had better not cover. */
export const clutterWeights = {
  outline: 1,
  pin: 6,
  body: 8,
  lead: 2.5,
  wire: 2.5,
  border: 0.9,
  name: 6
} as const;

const reaches = [0, 5, 9, 13, 17, 22, 28] as const;
const turns = [0, 30, -30, 60, -60, 90] as const;

interface Foot {
  readonly terminal: Terminal;
  readonly spot: TerminalSpot | null;
}

interface Job {
  readonly part: Part;
  readonly feet: readonly Foot[];
  readonly body: Body;
  readonly fixed: readonly Spot[];
  readonly middle: Spot;
  readonly isMeasured: boolean;
}

interface Pose {
  readonly middle: Spot;
  readonly degrees: number;
}

/** Where leads leave a body: at both ends; of more than two, all but the last beside each other. */
function bodyEnds({ length, width }: Body, { middle, degrees }: Pose, count: number): Spot[] {
  const at = (x: number, y: number): Spot => plus(middle, turnedBy({ x, y }, degrees));
  if (count === 2) return [at(-length / 2, 0), at(length / 2, 0)];
  const own = Math.max(1, count - 1);
  return [
    ...Array.from({ length: own }, (_, n) => at(-length / 2, ((n + 0.5) / own - 0.5) * width)),
    at(length / 2, 0)
  ].slice(0, count);
}

/** What a lead covers, straight or clear of the part first; roughly, since this is asked often. */
function leadCost(from: Spot, to: TerminalSpot, clutter: Clutter): number {
  const costOf = (a: Spot, b: Spot): number => distance(a, b) + clutter.costOfPiece(a, b) * 0.8;
  let best = Infinity;
  for (const { clear } of to.exits) {
    const last = distance(clear, to.at);
    if (distance(from, clear) + last < best) best = Math.min(best, costOf(from, clear) + last);
  }
  return best < Infinity ? best : costOf(from, to.at);
}

/** What a body with its leads covers at a pose; without end as soon as it is `most`, since it cannot be
 *  the best then. */
function costOf({ feet, body }: Job, pose: Pose, clutter: Clutter, most: number): number {
  let cost = clutter.costOfBox(pose.middle, body.length + 1.5, body.width + 1.5, pose.degrees);
  if (cost >= most) return Infinity;
  const ends = bodyEnds(body, pose, feet.length);
  const spots = feet.map(({ spot }) => spot);
  spots.forEach((spot, n) => (cost += spot ? distance(ends[n] ?? pose.middle, spot.at) : 0));
  if (cost >= most) return Infinity;
  spots.forEach((spot, n) => {
    if (!spot || cost >= most) return;
    const from = ends[n] ?? pose.middle;
    cost += leadCost(from, spot, clutter) - distance(from, spot.at);
  });
  return cost;
}

function bestPose(job: Job, clutter: Clutter): Pose {
  const { fixed, middle, isMeasured } = job;
  const [first] = fixed;
  const last = fixed.at(-1);
  const own = first && last && first !== last ? degreesAlong(first, last) : 0;
  let best: Pose = { middle, degrees: own };
  let least = Infinity;
  for (const reach of isMeasured ? [0] : reaches) {
    const count = reach === 0 ? 1 : 12;
    for (let n = 0; n < count; n++) {
      const turn = (2 * Math.PI * n) / count;
      const spot = plus(middle, times({ x: Math.cos(turn), y: Math.sin(turn) }, reach));
      for (const turned of [own, ...turns]) {
        const slanted = Math.abs(Math.sin((turned * Math.PI) / 90)) * 1.5;
        const extra = reach * 0.6 + slanted;
        const pose = {
          middle: spot,
          degrees: turned + (isShorterReversed(job, spot, turned) ? 180 : 0)
        };
        const cost = extra + costOf(job, pose, clutter, least - extra);
        if (cost < least) [best, least] = [pose, cost];
      }
    }
  }
  return best;
}

/** A body may lie either way round: its leads trade ends rather than cross. */
function isShorterReversed({ feet, body }: Job, middle: Spot, degrees: number): boolean {
  const lengthOf = (turned: number): number => {
    const ends = bodyEnds(body, { middle, degrees: turned }, feet.length);
    return feet.reduce(
      (sum, { spot }, n) => sum + (spot ? distance(ends[n] ?? middle, spot.at) : 0),
      0
    );
  };
  return lengthOf(degrees + 180) < lengthOf(degrees);
}

const degreesAlong = (a: Spot, b: Spot): number =>
  (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;

/** The same axis, turned so that a text along it does not stand on its head. */
const readable = (degrees: number): number => {
  const turned = ((degrees % 180) + 180) % 180;
  return turned > 90 ? turned - 180 : turned;
};

/** The corners of a body, `more` wider all round. */
export function bodyCorners(
  { body, middle, degrees }: Pick<PlacedBody, 'body' | 'middle' | 'degrees'>,
  more = 0
): Spot[] {
  const [x, y] = [body.length / 2 + more, body.width / 2 + more];
  return [
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y }
  ].map((corner) => plus(middle, turnedBy(corner, degrees)));
}

function readJob(
  { part, terminals, at }: HangingPart,
  spots: ReadonlyMap<string, TerminalSpot>
): Job {
  const feet = terminals.map((terminal): Foot => {
    const spot = terminal.on && spots.get(hostKey(terminal.on));
    return { terminal, spot: spot ?? null };
  });
  const fixed = feet.flatMap(({ spot }) => spot?.at ?? []);
  const mean = times(
    fixed.reduce((sum, spot) => plus(sum, spot), { x: 0, y: 0 }),
    1 / Math.max(1, fixed.length)
  );
  const body = bodyOf(part, feet.length);
  return { part, feet, body, fixed, middle: at ?? mean, isMeasured: at !== null };
}

const spanOf = ({ fixed, middle, isMeasured }: Job): number =>
  isMeasured ? 0 : 1 + fixed.reduce((sum, spot) => sum + distance(spot, middle), 0);

/** Places all bodies, those measured first, then those whose terminals are nearest to each other, and
 *  marks each in the clutter, so that the next keeps clear of it. */
export function placeBodies(
  hanging: readonly HangingPart[],
  spots: ReadonlyMap<string, TerminalSpot>,
  clutter: Clutter,
  paths: TautPaths
): readonly PlacedBody[] {
  const jobs = hanging.map((one) => readJob(one, spots));
  return jobs
    .toSorted((a, b) => spanOf(a) - spanOf(b))
    .map((job): PlacedBody => {
      const pose = bestPose(job, clutter);
      const { middle, degrees } = pose;
      const ends = bodyEnds(job.body, pose, job.feet.length);
      const leads = job.feet.map(({ terminal, spot }, n): Lead => {
        const from = ends[n] ?? middle;
        const line = spot ? leadLine(from, spot, paths) : leadStub(middle, from);
        return { terminal: terminal.id, line, isFree: spot === null };
      });
      const placed = { part: job.part, body: job.body, middle, degrees: readable(degrees), leads };
      clutter.addPolygon(bodyCorners(placed, 0.6), clutterWeights.body);
      for (const { line } of leads) clutter.addLine(line, clutterWeights.lead);
      return placed;
    });
}
