// elk's answer, read back: places and routes without the keys that elk adds.
import { roundMm, type Spot } from '../presentation/sides.ts';
import type { BlockGraph, Leaving } from './block-graph.ts';
import { exitPort } from './block-graph.ts';
import { LayoutError, type ElkGraph } from './engine.ts';
import type { PlacedBlock, PlacedNode } from './placed.ts';

const spot = ({ x, y }: Spot, corner: Spot): Spot => ({
  x: roundMm(x - corner.x),
  y: roundMm(y - corner.y)
});

/** Corners only: spots on a straight line and repeated spots are left out. */
export const cleanRoute = (route: readonly Spot[]): Spot[] => {
  const out: Spot[] = [];
  const near = (a: number, b: number) => Math.abs(a - b) < 1e-3;
  for (const point of route) {
    const [last, before] = [out.at(-1), out.at(-2)];
    if (last && near(last.x, point.x) && near(last.y, point.y)) continue;
    const isStraight =
      last &&
      before &&
      ((near(before.x, last.x) && near(last.x, point.x)) ||
        (near(before.y, last.y) && near(last.y, point.y)));
    if (isStraight) out.pop();
    out.push(point);
  }
  return out;
};

/** The block as elk placed it. */
export const readBlock = (
  result: ElkGraph,
  { lines }: BlockGraph,
  leaving: readonly Leaving[]
): PlacedBlock => {
  const block = result.children?.[0];
  if (!block || block.width === undefined || block.height === undefined) {
    throw new LayoutError('engine', 'the layout engine gave back a graph without places');
  }
  const corner = { x: block.x ?? 0, y: block.y ?? 0 };
  const nodes = (block.children ?? []).map(
    ({ id, x = 0, y = 0, width = 0, height = 0 }): PlacedNode => ({
      id,
      ...spot({ x, y }, corner),
      width,
      height
    })
  );
  const edges = new Map((block.edges ?? []).map((edge) => [edge.id, edge]));
  const routes = new Map<string, Spot[]>();
  for (const { link, isReversed } of lines) {
    const section = edges.get(link.id)?.sections?.[0];
    if (!section)
      throw new LayoutError('engine', `the layout engine left line ${link.id} unrouted`);
    const route = [section.startPoint, ...(section.bendPoints ?? []), section.endPoint].map((one) =>
      spot(one, corner)
    );
    routes.set(link.id, cleanRoute(isReversed ? route.reverse() : route));
  }
  const ports = new Map((block.ports ?? []).map((one) => [one.id, one]));
  const exits = new Map<string, Spot & { side: Leaving['side'] }>();
  for (const { link, side } of leaving) {
    const own = ports.get(exitPort(link));
    if (own) exits.set(link.id, { ...spot({ x: own.x ?? 0, y: own.y ?? 0 }, corner), side });
  }
  return {
    id: block.id,
    width: roundMm(block.width),
    height: roundMm(block.height),
    nodes,
    routes,
    exits
  };
};
