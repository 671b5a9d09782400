// The figure of every part that is drawn, its ports on lanes and at the sides that face where their
// lines go.
import type { Id } from '#document/index.ts';
import { buildFigure } from '../figures/build-figure.ts';
import { fitToLanes } from '../figures/fit-to-lanes.ts';
import type { Figure } from '../figures/figure.ts';
import { buildPartEnds, type Courses } from '../presentation/part-ends.ts';
import type { Plan } from '../presentation/plan.ts';

/** @param courses where the lines go from the parts as they stand; none yet at first */
export const buildFigures = (plan: Plan, courses: Courses): Map<Id, Figure> => {
  const ends = buildPartEnds(plan, courses);
  const figures = new Map<Id, Figure>();
  for (const id of plan.homes.keys()) {
    const request = {
      part: plan.partOf(id),
      terminals: plan.terminalsOf(id),
      ends: ends.get(id) ?? []
    };
    figures.set(id, fitToLanes(buildFigure(request)));
  }
  return figures;
};
