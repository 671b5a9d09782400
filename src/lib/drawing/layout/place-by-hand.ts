// Parts that a hand has placed in the diagram: they stand where they were put, what was laid out there
// gives way, and the wires that this touches are run anew. Everything else stays as it was laid out.
import { changeElement } from '#document/edits.ts';
import type { Edit, Id } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import type { Box } from '../figures/figure.ts';
import type { Block } from '../presentation/blocks.ts';
import type { Plan } from '../presentation/plan.ts';
import { roundMm, type Spot } from '../presentation/sides.ts';
import { laneMm, toLane } from '../router/lanes.ts';
import { findFreePlace, isFree, liesClear } from './free-place.ts';
import type { DiagramFrame, DiagramPart, Geometry } from './geometry.ts';
import { boundsOf, buildRouter, withRoutes } from './run-lines.ts';

/** Room inside a unit's border that stretches for a part, mm. */
const roomInside = 3 * laneMm;

/** The upper left corner of the box of a part's unit as it was laid out; places count from there. */
export const unitCornerOf = (plan: Plan, { frames }: Geometry, part: Id): Spot => {
  const unit = plan.homes.get(part);
  return frames.find(({ block }) => block.id === unit?.id)?.corner ?? { x: 0, y: 0 };
};

/** Puts a part somewhere in the diagram, by hand.
 *  @param at the upper left corner of the part on the sheet, mm */
export const placeInDiagram = (plan: Plan, geometry: Geometry, part: Id, at: Spot): Edit => {
  const corner = unitCornerOf(plan, geometry, part);
  const [x, y] = [roundMm(toLane(at.x - corner.x)), roundMm(toLane(at.y - corner.y))];
  return changeElement('part', part, { diagramPlace: { x, y, by: 'hand' } });
};

/** Gives a part back to the layout. */
export const letGoOfPlace = (part: Id): Edit => changeElement('part', part, { diagramPlace: null });

const holds = (block: Block, part: Id): boolean =>
  block.parts.includes(part) || block.loose.includes(part);

/** The border stretches where a part was put beyond it. */
const stretch = (frame: DiagramFrame, parts: readonly DiagramPart[]): DiagramFrame => {
  const own = parts.filter(({ id }) => holds(frame.block, id));
  const around = own.map(({ box: { x, y, width, height } }): Box => ({
    x: x - roomInside,
    y: y - roomInside,
    width: width + 2 * roomInside,
    height: height + 2 * roomInside
  }));
  return { ...frame, box: boundsOf([frame.box, ...around]) };
};

/** The diagram with parts at other places, on lanes: what lies in their way gives way to the nearest free
 *  place, borders stretch, and only the lines that this touches are run anew.
 *  @param places upper left corners on the sheet, mm */
export const moveParts = (geometry: Geometry, places: ReadonlyMap<Id, Spot>): Geometry => {
  const put = geometry.parts.map((part) => {
    const at = places.get(part.id);
    return at ? { ...part, box: { ...part.box, x: toLane(at.x), y: toLane(at.y) } } : part;
  });
  const boxes = new Map(put.map(({ id, box }) => [id, box]));
  const standing: Box[] = [];
  for (const { id, box } of put) {
    if (!places.has(id)) continue;
    // Two parts that were put on one place, as merging can leave them: the later gives way.
    const there = liesClear(box, standing) ? box : { ...box, ...findFreePlace(box, standing) };
    boxes.set(id, there);
    standing.push(there);
  }
  for (const { id, box } of put) {
    if (places.has(id) || isFree(box, standing)) continue;
    const others = [...boxes].flatMap(([other, own]) => (other === id ? [] : [own]));
    boxes.set(id, { ...box, ...findFreePlace(box, others) });
  }
  const parts = put.map((part) => ({ ...part, box: boxes.get(part.id) ?? part.box }));
  const frames = geometry.frames.map((frame) => stretch(frame, parts));
  const moved = { ...geometry, parts, frames };
  const router = buildRouter(moved);
  router.routeOpen();
  return withRoutes(moved, router);
};

/** Places that a hand has given, as they stand in the document: mm from the corner of the unit. */
export const handPlacesOf = ({ index }: Study): ReadonlyMap<Id, Spot> =>
  new Map(
    index.parts.flatMap(({ id, diagramPlace }) =>
      diagramPlace?.by === 'hand' ? [[id, { x: diagramPlace.x, y: diagramPlace.y }] as const] : []
    )
  );

/** The laid-out diagram with every part that a hand has placed where it was put. */
export const applyHandPlaces = (plan: Plan, geometry: Geometry): Geometry => {
  const wishes = handPlacesOf(plan.study);
  if (wishes.size === 0) return geometry;
  const places = new Map<Id, Spot>();
  for (const { id } of geometry.parts) {
    const wish = wishes.get(id);
    if (!wish) continue;
    const corner = unitCornerOf(plan, geometry, id);
    places.set(id, { x: corner.x + wish.x, y: corner.y + wish.y });
  }
  return moveParts(geometry, places);
};
