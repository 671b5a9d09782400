// On which side of one another two wires should run where they share their way, so that they cross
// as little as can be. Walk the common run to both ends, see to which side each wire turns off there.
// Both ends agree: no crossing. They disagree: one crossing cannot be avoided, and it is put at the
// end where they turn apart the less, so that all pieces of the run give the same answer.
//
// Wire ordering along shared paths: Groeneveld 1989; metro-line crossing minimisation: Bekos,
// Kaufmann, Potika, Symvonis 2007.
import type { Way, WayNode } from './way.ts';
import { dot, minus, plus, times, turnBetween, unitOf } from './vectors.ts';
import type { Spot } from '../presentation/sides.ts';

/** A stretch that two ways share: places in the first way, and how the second runs there. */
export interface CommonRun {
  readonly from: number;
  readonly to: number;
  /** Place in the second way that meets `from`, and the step (1 or -1) to the next. */
  readonly otherFrom: number;
  readonly step: 1 | -1;
  /** Greater than 0 where the first way should run to the right of the second, seen along the first. */
  readonly side: number;
}

const indexByKey = (way: Way): ReadonlyMap<string, number> => {
  const places = new Map<string, number>();
  way.nodes.forEach(({ key }, index) => {
    if (!places.has(key)) places.set(key, index);
  });
  return places;
};

/** The way's direction at a place, half way between coming and going. */
export const directionAt = ({ nodes }: Way, index: number): Spot => {
  const here = nodes[index];
  const before = nodes[index - 1];
  const after = nodes[index + 1];
  if (!here) return { x: 1, y: 0 };
  const came = before ? unitOf(minus(here.at, before.at)) : null;
  const goes = after ? unitOf(minus(after.at, here.at)) : null;
  if (came && goes) {
    const both = plus(came, goes);
    return Math.hypot(both.x, both.y) < 1e-6 ? came : unitOf(both);
  }
  return came ?? goes ?? { x: 1, y: 0 };
};

/** How much further to the right one goes than the other, both from the same place and direction. */
const lean = (along: Spot, from: Spot, a: WayNode | undefined, b: WayNode | undefined): number => {
  if (!a || !b) return 0;
  const difference = turnBetween(along, minus(a.at, from)) - turnBetween(along, minus(b.at, from));
  return Math.abs(difference) < 1e-6 ? 0 : difference;
};

/** Every run that two ways share, with the side that the first should keep to. */
export function findCommonRuns(a: Way, b: Way): readonly CommonRun[] {
  const places = indexByKey(b);
  const runs: CommonRun[] = [];
  for (let from = 0; from < a.nodes.length; from++) {
    const otherFrom = places.get(a.nodes[from]?.key ?? '');
    if (otherFrom === undefined) continue;
    const same = (offset: number, step: number): boolean => {
      const mine = a.nodes[from + offset];
      return mine !== undefined && mine.key === b.nodes[otherFrom + offset * step]?.key;
    };
    const step = same(1, -1) ? -1 : 1;
    let length = 0;
    while (same(length + 1, step)) length++;
    runs.push({
      from,
      to: from + length,
      otherFrom,
      step,
      side: sideOn(a, b, from, length, otherFrom, step)
    });
    from += length;
  }
  return runs;
}

function sideOn(
  a: Way,
  b: Way,
  from: number,
  length: number,
  otherFrom: number,
  step: 1 | -1
): number {
  const first = a.nodes[from];
  const last = a.nodes[from + length];
  if (!first || !last) return 0;
  let turn: 1 | -1 = step;
  let out: Spot;
  let back: Spot;
  if (length > 0) {
    out = minus(last.at, a.nodes[from + length - 1]?.at ?? first.at);
    back = minus(first.at, a.nodes[from + 1]?.at ?? last.at);
  } else {
    // One place alone: seen along the direction that both have there, roughly.
    const mine = directionAt(a, from);
    const other = directionAt(b, otherFrom);
    turn = dot(mine, other) < 0 ? -1 : 1;
    out = unitOf(plus(mine, times(other, turn)));
    back = times(out, -1);
  }
  const otherLast = otherFrom + length * step;
  const ahead = lean(out, last.at, a.nodes[from + length + 1], b.nodes[otherLast + turn]);
  const behind = -lean(back, first.at, a.nodes[from - 1], b.nodes[otherFrom - turn]);
  if (ahead === 0 && behind === 0) {
    const forward = first.key <= last.key ? 1 : -1;
    return Math.sign(a.rank - b.rank) * forward;
  }
  if (ahead === 0 || behind === 0) return Math.sign(ahead + behind);
  if (ahead > 0 === behind > 0) return Math.sign(ahead);
  const [near, far] = [Math.abs(ahead), Math.abs(behind)];
  // As much at either end: the keys decide, so that it does not matter which way a wire was recorded.
  if (Math.abs(near - far) < 1e-6) return Math.sign(first.key <= last.key ? ahead : behind);
  return Math.sign(near > far ? ahead : behind);
}
