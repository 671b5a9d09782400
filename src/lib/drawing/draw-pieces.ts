// Some parts and lines of a diagram by themselves: what a hand moves is drawn over the rest.
import type { Id } from '#document/index.ts';
import type { Diagram } from './diagram.ts';
import type { DisplayItem } from './display-list.ts';
import { DiagramDrawer } from './draw-diagram.ts';
import type { DiagramLine, DiagramPart, Geometry } from './layout/geometry.ts';

export interface Pieces {
  readonly items: readonly DisplayItem[];
  readonly parts: readonly Id[];
  readonly lines: readonly DiagramLine[];
}

const isSameRoute = (a: DiagramLine, b: DiagramLine): boolean =>
  a.route.length === b.route.length &&
  a.route.every(({ x, y }, index) => x === b.route[index]?.x && y === b.route[index]?.y);

/** What of a diagram looks otherwise with the geometry given: the items, and which parts and lines they
 *  are. */
export const drawChanges = (diagram: Diagram, geometry: Geometry): Pieces => {
  const before = new Map(diagram.geometry.parts.map((part) => [part.id, part.box]));
  const routes = new Map(diagram.geometry.lines.map((line) => [line.link.id, line]));
  const parts = geometry.parts.filter(({ id, box }: DiagramPart) => {
    const old = before.get(id);
    return old?.x !== box.x || old.y !== box.y;
  });
  const lines = geometry.lines.filter((line) => {
    const old = routes.get(line.link.id);
    return !old || !isSameRoute(old, line);
  });
  const drawer = new DiagramDrawer({ ...diagram, geometry: { ...geometry, parts, lines } });
  drawer.lines();
  drawer.parts();
  return { items: drawer.items, parts: parts.map(({ id }) => id), lines };
};
