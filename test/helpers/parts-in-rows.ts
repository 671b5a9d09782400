// A chassis as a hand might set it out: parts in rows, in the order of the document, no line run yet.
import type { ChassisDocument } from '#document/index.ts';
import { buildFigures } from '#drawing/layout/build-figures.ts';
import type { DiagramPart, Geometry } from '#drawing/layout/geometry.ts';
import { buildPlan } from '#drawing/presentation/plan.ts';
import { finishDiagram } from '#drawing/finish-diagram.ts';
import type { Diagram } from '#drawing/index.ts';
import { buildRouter, withRoutes } from '#drawing/layout/run-lines.ts';
import { toLane, toLaneUp } from '#drawing/router/lanes.ts';
import { buildStudy } from '#study/build-study.ts';

/** @param gapMm between parts, both ways @param widthMm of a row at most */
export const setInRows = (document: ChassisDocument, gapMm = 60, widthMm = 900): Geometry => {
  const plan = buildPlan(buildStudy(document));
  const parts: DiagramPart[] = [];
  let [x, y, deep] = [0, 0, 0];
  for (const [id, figure] of buildFigures(plan, new Map())) {
    if (x > 0 && x + figure.width > widthMm) [x, y, deep] = [0, toLaneUp(y + deep + gapMm), 0];
    parts.push({ id, figure, box: { x, y, width: figure.width, height: figure.height } });
    x = toLane(x + figure.width + gapMm);
    deep = Math.max(deep, figure.height);
  }
  const lines = plan.links.lines.map((link) => ({ link, route: [], fromPath: [], toPath: [] }));
  return { x: 0, y: 0, width: widthMm, height: y + deep, frames: [], parts, lines };
};

/** The same with every line run, as a diagram. */
export const diagramInRows = (document: ChassisDocument): Diagram => {
  const placed = setInRows(document);
  const router = buildRouter(placed);
  router.routeOpen();
  return finishDiagram(buildPlan(buildStudy(document)), withRoutes(placed, router));
};
