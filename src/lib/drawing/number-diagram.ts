// Numbers on the lines of a laid-out diagram, and the names of its cables.
import type { Id } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import type { CableName, Diagram, PlacedTag } from './diagram.ts';
import type { Box } from './figures/figure.ts';
import { tagWidth } from './figures/number-tag.ts';
import { numberBox, type } from './figures/sizes.ts';
import { boxOfShape } from './item-boxes.ts';
import type { DiagramLine, Geometry } from './layout/geometry.ts';
import { NumberPlacer, type NumberWish } from './place-numbers.ts';
import type { Plan } from './presentation/plan.ts';
import type { Spot } from './presentation/sides.ts';
import { textWidthMm } from './text-width.ts';

const cableLook = { size: type.small, face: 'sans' } as const;
const unitLook = { size: type.unit, face: 'sans', bold: true } as const;

/** What must not be covered: everything that is drawn of the parts, and the names of units. */
const obstaclesOf = ({ parts, frames }: Geometry): Box[] => [
  ...parts.flatMap(({ box, figure }) =>
    figure.items
      // A leader to a terminal may carry the number of its own wire.
      .filter(({ layer }) => layer !== 'wires')
      .map(({ shape }) => {
        const own = boxOfShape(shape);
        return { ...own, x: own.x + box.x, y: own.y + box.y };
      })
  ),
  ...frames.map(({ block, box }) => ({
    x: box.x,
    y: box.y,
    width: textWidthMm(block.name, unitLook) + 6,
    height: 8
  })),
  // The border itself: a number on it reads badly.
  ...frames.flatMap(({ box }) => [
    { x: box.x - 0.3, y: box.y, width: 0.6, height: box.height },
    { x: box.x + box.width - 0.3, y: box.y, width: 0.6, height: box.height },
    { x: box.x, y: box.y - 0.3, width: box.width, height: 0.6 },
    { x: box.x, y: box.y + box.height - 0.3, width: box.width, height: 0.6 }
  ])
];

/** The whole way of a line, from terminal to terminal. */
export const wholePath = ({ fromPath, route, toPath }: DiagramLine): Spot[] => [
  ...fromPath.slice(0, -1),
  ...route,
  ...[...toPath].reverse().slice(1)
];

const isNumbered = ({ link }: DiagramLine): boolean =>
  link.kind === 'wire' && link.wires.length === 1;

/** The lines of each cable, by cable. */
const linesByCable = (plan: Plan, lines: readonly DiagramLine[]): Map<Id, DiagramLine[]> => {
  const { cables, wires } = plan.study.document;
  const byCable = new Map<Id, DiagramLine[]>();
  for (const line of lines) {
    const [wire] = line.link.wires;
    const cable = wire === undefined ? undefined : findElement(wires, wire)?.cable;
    if (cable === undefined || !findElement(cables, cable)) continue;
    byCable.set(cable, [...(byCable.get(cable) ?? []), line]);
  }
  return byCable;
};

/** Every line gets its number; every cable its name once, where there is room for it. */
export const numberDiagram = (
  plan: Plan,
  geometry: Geometry
): Pick<Diagram, 'tags' | 'cableNames'> => {
  const lines = geometry.lines.map((line) => ({ line, id: line.link.id, route: wholePath(line) }));
  const placer = new NumberPlacer(lines, obstaclesOf(geometry));
  const wireOf = new Map(lines.map(({ line, id }) => [id, line.link.wires[0] ?? '']));
  const wishes = lines
    .filter(({ line }) => isNumbered(line))
    .map(({ id, route }): NumberWish => {
      const wire = wireOf.get(id) ?? '';
      return { id, route, widths: [tagWidth(plan.tagOf(wire)), tagWidth(plan.tagOf(wire, true))] };
    });
  const tags = placer.placeAll(wishes).map((place): PlacedTag => {
    const wire = wireOf.get(place.id) ?? '';
    const full = plan.tagOf(wire);
    return { place, tag: tagWidth(full) <= place.width + 1e-6 ? full : plan.tagOf(wire, true) };
  });
  const cableNames: CableName[] = [];
  for (const [cable, own] of linesByCable(plan, geometry.lines)) {
    const text = findElement(plan.study.document.cables, cable)?.name ?? '';
    if (text === '') continue;
    const width = textWidthMm(text, cableLook) + 2 * numberBox.pad;
    const place = placer.placeName(
      own.map((line) => ({ id: line.link.id, route: wholePath(line), widths: [width] }))
    );
    if (place) cableNames.push({ cable, text, place });
  }
  return { tags, cableNames };
};
