// From a study to a laid-out diagram with its numbers: the one function that the command line and
// the editor call.
import type { Study } from '#study/index.ts';
import type { Diagram } from './diagram.ts';
import { finishDiagram } from './finish-diagram.ts';
import type { Geometry } from './layout/geometry.ts';
import { layoutDiagram } from './layout/layout-diagram.ts';
import type { LayoutEngine } from './layout/first/layout-engine.ts';
import type { LayoutOptions } from './layout/layout-options.ts';
import { buildPlan, type Plan } from './presentation/plan.ts';

/** Lays out the diagram of a chassis and places its numbers. The engine is stopped where the layout is. Rejects with a LayoutError; see there. */
export const buildDiagram = async (
  study: Study,
  engine: LayoutEngine,
  options: LayoutOptions = {}
): Promise<Diagram> => {
  if (study.index.parts.length === 0) return emptyDiagram(buildPlan(study));
  const { plan, geometry } = await layoutDiagram(study, engine, options);
  return finishDiagram(plan, geometry);
};

const nothing: Geometry = { x: 0, y: 0, width: 0, height: 0, frames: [], parts: [], lines: [] };

const emptyDiagram = (plan: Plan): Diagram => ({
  plan,
  geometry: nothing,
  laidOut: nothing,
  proofs: {
    lines: 0,
    crossings: 0,
    bends: 0,
    lengthMm: 0,
    overlaps: [],
    throughParts: [],
    partClashes: [],
    slanted: 0
  },
  tags: [],
  cableNames: [],
  remarks: ['no parts are recorded yet']
});
