// The lines of a placed diagram, run by the router: what lies well is kept, what does not is run anew.
import type { Box } from '../figures/figure.ts';
import { type } from '../figures/sizes.ts';
import { endId } from '../presentation/part-ends.ts';
import type { Spot } from '../presentation/sides.ts';
import { laneMm, toLane, toLaneUp } from '../router/lanes.ts';
import { Router, type RouteEnd, type RouteWish } from '../router/router.ts';
import { textWidthMm } from '../text-width.ts';
import type { DiagramFrame, DiagramLine, DiagramPart, Geometry } from './geometry.ts';
import { cleanRoute } from './geometry.ts';

/** Room for wires around everything, mm. */
const marginMm = 30 * laneMm;
const unitLook = { size: type.unit, face: 'sans', bold: true } as const;

/** The name of a unit, which wires run round. */
const nameBox = ({ block, box }: DiagramFrame): Box => ({
  x: box.x + laneMm,
  y: box.y + laneMm,
  width: toLaneUp(textWidthMm(block.name, unitLook) + 2),
  height: 2 * laneMm
});

export const boundsOf = (boxes: readonly Box[], spots: readonly Spot[] = []): Box => {
  let [x1, y1, x2, y2] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y, width, height } of boxes) {
    [x1, y1] = [Math.min(x1, x), Math.min(y1, y)];
    [x2, y2] = [Math.max(x2, x + width), Math.max(y2, y + height)];
  }
  for (const { x, y } of spots) {
    [x1, y1, x2, y2] = [Math.min(x1, x), Math.min(y1, y), Math.max(x2, x), Math.max(y2, y)];
  }
  return x1 > x2
    ? { x: 0, y: 0, width: 0, height: 0 }
    : { x: x1, y: y1, width: x2 - x1, height: y2 - y1 };
};

/** The ends of all lines at a part, by end, where the part stands. */
const endsAt = ({ box, figure }: DiagramPart): Map<string, RouteEnd> =>
  new Map(figure.ports.map(({ end, x, y, side }) => [end, { x: box.x + x, y: box.y + y, side }]));

/** Everything set on lanes. Lines that were apart stay apart. */
export const snapToLanes = (geometry: Geometry): Geometry => {
  const snapBox = ({ x, y, width, height }: Box): Box => {
    const [left, top] = [toLane(x), toLane(y)];
    return { x: left, y: top, width: toLane(x + width) - left, height: toLane(y + height) - top };
  };
  return {
    ...geometry,
    frames: geometry.frames.map((frame) => {
      const box = snapBox(frame.box);
      return { ...frame, box, corner: { x: box.x, y: box.y } };
    }),
    parts: geometry.parts.map((part) => ({
      ...part,
      box: { ...part.box, x: toLane(part.box.x), y: toLane(part.box.y) }
    })),
    lines: geometry.lines.map((line) => ({
      ...line,
      route: line.route.map(({ x, y }) => ({ x: toLane(x), y: toLane(y) }))
    }))
  };
};

/** A router over a diagram on lanes, with the lines as they lie. */
export const buildRouter = ({ parts, frames, lines }: Geometry): Router => {
  const boxes = new Map<string, Box>(parts.map(({ id, box }) => [id, box]));
  for (const frame of frames) boxes.set(`name ${frame.block.id}`, nameBox(frame));
  const ends = new Map(parts.flatMap((part) => [...endsAt(part)]));
  const wishes = lines.flatMap(({ link }): RouteWish[] => {
    const [from, to] = [ends.get(endId(link, 'from')), ends.get(endId(link, 'to'))];
    return from && to ? [{ id: link.id, from, to }] : [];
  });
  const { x, y, width, height } = boundsOf([...boxes.values(), ...frames.map(({ box }) => box)]);
  return new Router({
    boxes,
    frames: frames.map(({ box }) => box),
    area: {
      x: x - marginMm,
      y: y - marginMm,
      width: width + 2 * marginMm,
      height: height + 2 * marginMm
    },
    wishes,
    laid: new Map(lines.map(({ link, route }) => [link.id, route]))
  });
};

/** Where the router found no way: straight on and across, whatever is there. The line must be seen. */
const plainWay = (a: Spot, b: Spot): Spot[] => cleanRoute([a, { x: b.x, y: a.y }, b]);

/** The diagram with its lines as the router ran them. */
export const withRoutes = (geometry: Geometry, router: Router): Geometry => {
  const { routes } = router;
  const paths = new Map<string, Spot[]>();
  for (const { box, figure } of geometry.parts) {
    for (const { end, path } of figure.ports) {
      paths.set(
        end,
        path.map(({ x, y }) => ({ x: x + box.x, y: y + box.y }))
      );
    }
  }
  const lines = geometry.lines.map((line): DiagramLine => {
    const fromPath = paths.get(endId(line.link, 'from')) ?? [];
    const toPath = paths.get(endId(line.link, 'to')) ?? [];
    const [a, b] = [fromPath.at(-1), toPath.at(-1)];
    const route = routes.get(line.link.id) ?? (a && b ? plainWay(a, b) : line.route);
    return { link: line.link, route, fromPath, toPath };
  });
  const bounds = boundsOf(
    [...geometry.frames.map(({ box }) => box), ...geometry.parts.map(({ box }) => box)],
    lines.flatMap(({ route }) => route)
  );
  return { ...geometry, ...bounds, lines };
};

/** A diagram as it was laid out, set on lanes and every line run: none through a part or on another. */
export const runLines = (geometry: Geometry, share: number): Geometry => {
  const snapped = snapToLanes(geometry);
  const router = buildRouter(snapped);
  router.routeOpen();
  router.improve(share);
  return withRoutes(snapped, router);
};
