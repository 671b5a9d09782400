// Parts, components that hang by their leads, and the names of parts.
import type { Id, Part } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import type { Box } from '../figures/figure.ts';
import { boxAround, widened } from './boxes.ts';
import { drawHanging } from './draw-hanging.ts';
import { drawPart } from './draw-part.ts';
import { bodyCorners } from './hanging-places.ts';
import type { PictorialGeometry } from './pictorial-geometry.ts';
import { placePartName } from './place-names.ts';
import { outlineCorners } from './placed-part.ts';
import type { SheetItems } from './sheet-items.ts';
import { hostKey } from './terminal-spots.ts';

/** Half the width of a terminal's ring with what should stay free around it, mm. */
const terminalMm = 1.6;
const nothing: ReadonlySet<Id> = new Set();

/** Adds all parts and the leads of components.
 *  @returns the box of each part's body */
export function addParts(
  sheet: SheetItems,
  study: Study,
  { places, bodies, partLeads }: PictorialGeometry
): ReadonlyMap<Id, Box> {
  const boxes = new Map<Id, Box>();
  const used = listUsed(study);
  // A picture tube's bulb lies below the yoke that sits on its neck.
  const bulbsFirst = [...places.parts.values()].toSorted(
    (a, b) => Number(b.look === 'picture tube') - Number(a.look === 'picture tube')
  );
  for (const placed of bulbsFirst) {
    const { id } = placed.part;
    boxes.set(id, boxAround(outlineCorners(placed)));
    const items = drawPart(placed, { used: used.get(id) ?? nothing });
    sheet.addFigure(`part-${id}`, items, ({ terminal }) => sheet.ofPart(id, terminal));
  }
  for (const { terminal, part, line } of partLeads) {
    const points = line.flatMap(({ x, y }) => [x, y]);
    const told = sheet.ofPart(part, terminal);
    sheet.add(`lead-${part}-${terminal}`, 'parts', 'lead', { kind: 'line', points }, told);
  }
  for (const placed of bodies) {
    const { id } = placed.part;
    boxes.set(id, boxAround(bodyCorners(placed)));
    sheet.addFigure(`part-${id}`, drawHanging(placed), ({ terminal }) =>
      sheet.ofPart(id, terminal)
    );
  }
  return boxes;
}

/** Adds the names of all placed parts.
 *  @returns the boxes that must stay readable: names, terminals, bodies */
export function addPartNames(sheet: SheetItems, study: Study, geometry: PictorialGeometry): Box[] {
  const { places, bodies, spots, clutter, over } = geometry;
  const names = [...places.parts.values()].map((placed) => {
    const { part } = placed;
    const { items, box } = placePartName(placed, findMate(study, part), clutter, over);
    sheet.addFigure(`name-${part.id}`, items, () => sheet.ofPart(part.id));
    return box;
  });
  return [
    ...names,
    ...bodies.map((body) => boxAround(bodyCorners(body))),
    ...[...places.parts.values()].flatMap((placed) =>
      [...placed.spots.values()].map((at) => widened(boxAround([at]), terminalMm))
    ),
    ...[...spots.values()].map(({ at }) => widened(boxAround([at]), terminalMm))
  ];
}

function findMate({ index }: Study, { id, mates }: Part): Part | undefined {
  return mates === undefined
    ? index.parts.find((part) => part.mates === id)
    : index.partById.get(mates);
}

/** The terminals of each part that a wire or a lead ends at. */
function listUsed({ index }: Study): ReadonlyMap<Id, ReadonlySet<Id>> {
  const hosts = new Set(
    index.terminals.flatMap(({ terminal }) => (terminal.on ? [hostKey(terminal.on)] : []))
  );
  const used = new Map<Id, Set<Id>>();
  for (const { key, part, terminal } of index.terminals) {
    if (!index.wiresAt.has(key) && !hosts.has(key) && !terminal.on) continue;
    const known = used.get(part.id) ?? new Set<Id>();
    used.set(part.id, known.add(terminal.id));
  }
  return used;
}
