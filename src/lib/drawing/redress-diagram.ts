// A laid-out diagram with the figures of another study of the same structure: numbers, class steps
// and bands follow what was edited, and nothing moves. Laying out is for changes of what is joined.
import type { Id } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import type { Diagram, PlacedTag } from './diagram.ts';
import type { FigureItem } from './figures/figure.ts';
import { tagWidth } from './figures/number-tag.ts';
import { finishDiagram } from './finish-diagram.ts';
import type { DiagramPart, Geometry } from './layout/geometry.ts';
import { handPlacesOf } from './layout/place-by-hand.ts';
import { numberDiagram } from './number-diagram.ts';
import { buildPlan, type Plan } from './presentation/plan.ts';

type TagOf = Plan['tagOf'];

const redressItem = (item: FigureItem, tagOf: TagOf): FigureItem => {
  const { wire, style, shape } = item;
  if (wire === undefined) return item;
  const [family, ...rest] = style.split('.');
  const { band, number, step } = tagOf(wire);
  if (family === 'wire' && rest.length === 1) {
    return style === `wire.${band}` ? item : { ...item, style: `wire.${band}` };
  }
  const role = rest.at(-1);
  if (family !== 'number' || role === undefined) return item;
  const text = role === 'text' ? number : role === 'step' ? step : null;
  const nextStyle = `number.${band}.${role}`;
  const nextShape = text !== null && shape.kind === 'text' ? { ...shape, text } : shape;
  const isSame =
    nextStyle === style &&
    (nextShape.kind !== 'text' || shape.kind !== 'text' || nextShape.text === shape.text);
  return isSame ? item : { ...item, style: nextStyle, shape: nextShape };
};

const redressPart = (part: DiagramPart, tagOf: TagOf): DiagramPart => {
  const items = part.figure.items.map((item) => redressItem(item, tagOf));
  const isSame = items.every((item, index) => item === part.figure.items[index]);
  return isSame ? part : { ...part, figure: { ...part.figure, items } };
};

const hasSamePlaces = (a: Study, b: Study): boolean => {
  const [one, two] = [handPlacesOf(a), handPlacesOf(b)];
  return (
    one.size === two.size &&
    [...one].every(([id, { x, y }]) => two.get(id)?.x === x && two.get(id)?.y === y)
  );
};

/** The diagram as it reads for `study`, whose document must have the same parts, and the same wires
 *  between the same terminals, as the one that was laid out. Pure; what no hand has
 *  placed otherwise since stays where it is. */
export const redressDiagram = (diagram: Diagram, study: Study): Diagram => {
  const plan = buildPlan(study);
  const known = new Map<Id, ReturnType<TagOf>>();
  const tagOf: TagOf = (wire, bare = false) => {
    if (bare) return plan.tagOf(wire, true);
    const tag = known.get(wire) ?? plan.tagOf(wire);
    known.set(wire, tag);
    return tag;
  };
  const redress = (geometry: Geometry): Geometry => ({
    ...geometry,
    parts: geometry.parts.map((part) => redressPart(part, tagOf))
  });
  const laidOut = redress(diagram.laidOut);
  if (!hasSamePlaces(diagram.plan.study, study)) return finishDiagram(plan, laidOut);
  const tags = diagram.tags.map(({ tag, place }): PlacedTag => ({
    tag: tagOf(tag.wire, tag.step === ''),
    place
  }));
  const geometry = redress(diagram.geometry);
  // A step that has become longer may not fit its box: then the numbers are placed anew.
  const isTooWide = tags.some(({ tag, place }) => tagWidth(tag) > place.width + 1e-6);
  if (isTooWide) return { ...diagram, plan, geometry, laidOut, ...numberDiagram(plan, geometry) };
  return { ...diagram, plan, geometry, laidOut, tags };
};

/** A diagram that was kept without its plan, for a study of the same structure. */
export const takeUpDiagram = (kept: Omit<Diagram, 'plan'>, study: Study): Diagram => {
  const plan = buildPlan(study);
  const boxes = new Map(kept.laidOut.parts.map(({ id, box }) => [id, box]));
  const wasMoved = kept.geometry.parts.some(({ id, box }) => {
    const laid = boxes.get(id);
    return laid?.x !== box.x || laid.y !== box.y;
  });
  const isMoved = wasMoved || handPlacesOf(study).size > 0;
  return redressDiagram(isMoved ? finishDiagram(plan, kept.laidOut) : { ...kept, plan }, study);
};
