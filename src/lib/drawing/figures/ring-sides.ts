// How a socket is turned and which side each of its ends leaves by. The order around the pin circle
// is kept, so that the leaders from the pins to the sides cannot cross; within that, each end gets
// the side it likes as well as can be.
import { degreesOf, sides, type Side } from '../presentation/sides.ts';
import type { PartEnd } from './part-end.ts';

export interface RingEnd {
  readonly end: PartEnd;
  /** Degrees clockwise from the top before the socket is turned. */
  readonly pinDeg: number;
}

export interface RingPlan {
  /** Degrees clockwise that the socket is turned by. */
  readonly turnDeg: number;
  /** The side of each end, in the order given. */
  readonly sides: readonly Side[];
  /** The order in which the sides are filled, clockwise from the first end of the sequence. */
  readonly sequence: readonly number[];
}

/** A leader that bends away from its pin costs as much, per quarter turn, as this share of a wish. */
const bendPrice = 0.55;

interface Trial {
  readonly cost: number;
  readonly sides: readonly Side[];
}

/** An angle from 0 up to 360. */
const wholeTurn = (deg: number): number => ((deg % 360) + 360) % 360;

/** Sides for ends in clockwise order from `start`, north first; the cheapest split. `fromDeg` is the
 *  angle of the first end, the others follow within one turn: so no leader runs round the circle. */
const splitFrom = (ends: readonly RingEnd[], start: number, fromDeg: number): Trial => {
  const count = ends.length;
  const startDeg = ends[start]?.pinDeg ?? 0;
  const best = new Float64Array((count + 1) * 4).fill(Infinity);
  const cameFrom = new Int8Array((count + 1) * 4).fill(-1);
  for (let side = 0; side < 4; side++) best[side] = 0;
  for (let index = 0; index < count; index++) {
    const ring = ends[(start + index) % count];
    if (!ring) continue;
    const round = wholeTurn(ring.pinDeg - startDeg);
    // Ends of the first pin that come last have a whole turn behind them.
    const onward = round === 0 && start + index >= count ? 360 : round;
    for (let side = 0; side < 4; side++) {
      const name = sides[side] ?? 'north';
      const bend = (fromDeg + onward - degreesOf[name]) / 90;
      const own = ring.end.cost[name] + bendPrice * bend * bend;
      for (let before = 0; before <= side; before++) {
        const total = (best[index * 4 + before] ?? Infinity) + own;
        if (total >= (best[(index + 1) * 4 + side] ?? Infinity)) continue;
        best[(index + 1) * 4 + side] = total;
        cameFrom[(index + 1) * 4 + side] = before;
      }
    }
  }
  let side = 0;
  for (let other = 1; other < 4; other++) {
    if ((best[count * 4 + other] ?? Infinity) < (best[count * 4 + side] ?? Infinity)) side = other;
  }
  const cost = best[count * 4 + side] ?? Infinity;
  const chosen = new Array<Side>(count);
  for (let index = count; index > 0; index--) {
    chosen[(start + index - 1) % count] = sides[side] ?? 'north';
    side = cameFrom[index * 4 + side] ?? 0;
  }
  return { cost, sides: chosen };
};

/** With more ends than this the round begins between two pins only: to try every end would take a time
 *  that grows with the square of their number. */
const crowded = 60;

const startsOf = (ends: readonly RingEnd[]): number[] =>
  ends.flatMap(({ pinDeg }, index) =>
    ends.length <= crowded || index === 0 || pinDeg !== ends[index - 1]?.pinDeg ? [index] : []
  );

/** The best turn and split for the ends of a socket, given clockwise by pin. `stepDeg` is the turn
 *  from one place of the circle to the next. */
export const planRing = (ends: readonly RingEnd[], stepDeg: number): RingPlan => {
  if (ends.length === 0) return { turnDeg: 0, sides: [], sequence: [] };
  let best: { cost: number; turnDeg: number; start: number; sides: readonly Side[] } | null = null;
  const turns = Math.max(1, Math.round(360 / stepDeg));
  const starts = startsOf(ends);
  for (let turn = 0; turn < turns; turn++) {
    const turnDeg = (360 * turn) / turns;
    // A socket that stands as the books draw it is worth a little.
    const homely = turn === 0 ? -0.4 : 0;
    for (const start of starts) {
      const startDeg = wholeTurn((ends[start]?.pinDeg ?? 0) + turnDeg);
      for (const fromDeg of [startDeg, startDeg - 360]) {
        const trial = splitFrom(ends, start, fromDeg);
        const cost = trial.cost + homely;
        if (best && cost >= best.cost - 1e-9) continue;
        best = { cost, turnDeg, start, sides: trial.sides };
      }
    }
  }
  const start = best?.start ?? 0;
  return {
    turnDeg: best?.turnDeg ?? 0,
    sides: best?.sides ?? [],
    sequence: ends.map((_, index) => (start + index) % ends.length)
  };
};
