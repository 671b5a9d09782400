// The way from one point to another along wires, for people who have to find where two things meet.
import type { Wire } from '#document/index.ts';
import { joinsItsEnds } from './points.ts';
import { listAt, type Lists } from './lists.ts';
import type { Study } from './types.ts';

interface Step {
  readonly wire: Wire;
  readonly to: number;
}

/** The wires of a shortest way from a point (see `Study.pointOf`) to another, or null where none
 *  leads there. Wires that do not join their ends are no way, and neither is `without`. */
export function findWireWay(
  study: Study,
  from: number,
  goal: number,
  without?: Wire
): readonly Wire[] | null {
  const steps = stepsOf(study);
  const cameBy = new Map<number, { readonly wire: Wire; readonly from: number } | null>([
    [from, null]
  ]);
  const queue = [from];
  for (let next = 0; next < queue.length && !cameBy.has(goal); next++) {
    const point = queue[next] ?? from;
    for (const { wire, to } of steps.get(point) ?? []) {
      if (cameBy.has(to) || wire === without) continue;
      cameBy.set(to, { wire, from: point });
      queue.push(to);
    }
  }
  if (!cameBy.has(goal)) return null;
  const way: Wire[] = [];
  for (let step = cameBy.get(goal); step; step = cameBy.get(step.from)) way.push(step.wire);
  return way.reverse();
}

const known = new WeakMap<Study, Lists<number, Step>>();

/** The steps from each point, made once for a study: several findings may ask for a way. */
function stepsOf(study: Study): Lists<number, Step> {
  const before = known.get(study);
  if (before) return before;
  const steps = listSteps(study);
  known.set(study, steps);
  return steps;
}

function listSteps(study: Study): Lists<number, Step> {
  const steps: Lists<number, Step> = new Map();
  const pointAt = (end: Wire['from']): number | undefined => {
    const entry = study.index.findAt(end);
    return entry && study.pointOf.get(entry.key);
  };
  for (const wire of study.index.wires) {
    const from = pointAt(wire.from);
    const to = pointAt(wire.to);
    if (from === undefined || to === undefined || !joinsItsEnds(wire)) continue;
    listAt(steps, from).push({ wire, to });
    listAt(steps, to).push({ wire, to: from });
  }
  return steps;
}
