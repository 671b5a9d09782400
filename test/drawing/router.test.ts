// The router, held to what can be counted: on boxes small enough to see, on boxes by chance, and on
// generated chassis set out by hand.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box } from '#drawing/figures/figure.ts';
import { buildRouter, withRoutes } from '#drawing/layout/run-lines.ts';
import { proveGeometry } from '#drawing/proofs.ts';
import type { Side, Spot } from '#drawing/presentation/sides.ts';
import { isOnLane, laneMm } from '#drawing/router/lanes.ts';
import { Router, type RouteEnd, type RouteWish } from '#drawing/router/router.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { setInRows } from '../helpers/parts-in-rows.ts';

/** In lanes, as everything here. */
const lanes = (count: number): number => count * laneMm;
const box = (x: number, y: number, width = 4, height = 4): Box => ({
  x: lanes(x),
  y: lanes(y),
  width: lanes(width),
  height: lanes(height)
});
const end = (side: Side, x: number, y: number): RouteEnd => ({
  side,
  x: lanes(x),
  y: lanes(y)
});
const area = box(-20, -20, 100, 100);
const route = (boxes: Record<string, Box>, wishes: RouteWish[]): Router => {
  const router = new Router({ boxes: new Map(Object.entries(boxes)), frames: [], area, wishes });
  router.routeOpen();
  return router;
};
const asLanes = (spot?: Spot): readonly [number, number] | null =>
  spot ? [Math.round(spot.x / laneMm), Math.round(spot.y / laneMm)] : null;
const areApart = (a: Box, b: Box, room: number): boolean =>
  Math.max(a.x - b.x - b.width, b.x - a.x - a.width, a.y - b.y - b.height, b.y - a.y - a.height) >
  room - 1e-6;
const span = (a: Spot, b: Spot): Box => ({
  x: Math.min(a.x, b.x),
  y: Math.min(a.y, b.y),
  width: Math.abs(a.x - b.x),
  height: Math.abs(a.y - b.y)
});
const inLanes = (router: Router, id: string) => (router.routes.get(id) ?? []).map(asLanes);

describe('one wire', () => {
  it('runs straight between ports that face each other', () => {
    const router = route({ a: box(0, 0), b: box(20, 0) }, [
      { id: 'w', from: end('east', 4, 2), to: end('west', 20, 2) }
    ]);
    expect(inLanes(router, 'w')).toEqual([
      [4, 2],
      [20, 2]
    ]);
  });

  it('takes one corner where that is enough', () => {
    const router = route({ a: box(0, 0), b: box(20, 20) }, [
      { id: 'w', from: end('east', 4, 2), to: end('north', 22, 20) }
    ]);
    expect(inLanes(router, 'w')).toEqual([
      [4, 2],
      [22, 2],
      [22, 20]
    ]);
  });

  it('goes round a part in its way', () => {
    const router = route({ a: box(0, 0), b: box(40, 0), wall: box(20, -4, 4, 12) }, [
      { id: 'w', from: end('east', 4, 2), to: end('west', 40, 2) }
    ]);
    const way = inLanes(router, 'w');
    expect(way).toHaveLength(6);
    const over = way.slice(1, -1).map((spot) => spot![1]);
    expect(Math.min(...over) < -4 || Math.max(...over) > 8).toBe(true);
  });

  it('crosses the edge of a frame straight and never runs along it', () => {
    const router = new Router({
      boxes: new Map([
        ['a', box(0, 0)],
        ['b', box(30, 10)]
      ]),
      frames: [box(-3, -3, 20, 10)],
      area,
      wishes: [{ id: 'w', from: end('east', 4, 2), to: end('north', 32, 10) }]
    });
    router.routeOpen();
    const way = inLanes(router, 'w');
    expect(way.at(-1)).toEqual([32, 10]);
    for (const spot of way.slice(1, -1)) {
      const [x, y] = spot!;
      expect(x === 17 && y >= -3 && y <= 7, `a corner on the edge at ${x}, ${y}`).toBe(false);
    }
  });

  it('says so where it is walled in', () => {
    const walls = { n: box(3, -3, 10, 3), s: box(3, 5, 10, 3), e: box(9, 0, 3, 5) };
    const router = route({ a: box(0, 0), b: box(40, 0), ...walls }, [
      { id: 'w', from: end('east', 4, 2), to: end('west', 40, 2) }
    ]);
    expect(router.unrouted).toEqual(['w']);
    expect(router.routes.has('w')).toBe(false);
  });
});

/** Boxes on a coarse grid, with wires between ports of chance. */
const problems = fc
  .record({
    cells: fc.uniqueArray(fc.integer({ min: 0, max: 15 }), { minLength: 3, maxLength: 10 }),
    pairs: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.nat({ max: 3 }), fc.nat({ max: 3 })), {
      minLength: 1,
      maxLength: 14
    })
  })
  .map(({ cells, pairs }) => {
    const boxes = new Map(
      cells.map((cell) => [`b${cell}`, box((cell % 4) * 18, Math.floor(cell / 4) * 18, 8, 8)])
    );
    const used = new Set<string>();
    const names = [...boxes.keys()];
    const port = (pick: number, turn: number): RouteEnd | null => {
      const name = names[pick % names.length]!;
      const at = boxes.get(name)!;
      const side = (['north', 'east', 'south', 'west'] as const)[turn]!;
      const slot = [...Array(7).keys()].find((index) => !used.has(`${name} ${side} ${index}`));
      if (slot === undefined) return null;
      used.add(`${name} ${side} ${slot}`);
      const along = lanes(slot + 1);
      const x = side === 'east' ? at.x + at.width : side === 'west' ? at.x : at.x + along;
      const y = side === 'south' ? at.y + at.height : side === 'north' ? at.y : at.y + along;
      return { side, x, y };
    };
    const wishes = pairs.flatMap(([a, b, one, two], index): RouteWish[] => {
      const from = port(a, one);
      const to = port(b, two);
      return from && to ? [{ id: `w${index}`, from, to }] : [];
    });
    return { boxes, wishes };
  });

/** What the proofs need of a routed problem. No two wires share a terminal. */
const geometryOf = (boxes: ReadonlyMap<string, Box>, router: Router) => ({
  ...area,
  frames: [],
  parts: [...boxes].map(([id, own]) => ({
    id,
    box: own,
    figure: { width: own.width, height: own.height, ports: [], items: [] }
  })),
  lines: [...router.routes].map(([id, way]) => ({
    link: {
      id,
      kind: 'wire' as const,
      from: { part: `${id} from`, terminal: 't' },
      to: { part: `${id} to`, terminal: 't' },
      wires: [id]
    },
    route: way,
    fromPath: [],
    toPath: []
  }))
});

const expectProved = (boxes: ReadonlyMap<string, Box>, router: Router): void => {
  const { throughParts, overlaps, slanted } = proveGeometry(geometryOf(boxes, router));
  expect(throughParts).toEqual([]);
  expect(overlaps).toEqual([]);
  expect(slanted).toBe(0);
};

describe('any wires', () => {
  it('are all run, on lanes, from port to port, none through a box, none on another', () => {
    fc.assert(
      fc.property(problems, ({ boxes, wishes }) => {
        const router = route(Object.fromEntries(boxes), wishes);
        router.improve(1);
        expect(router.unrouted).toEqual([]);
        expectProved(boxes, router);
        for (const { id, from, to } of wishes) {
          const way = router.routes.get(id)!;
          expect([way[0], way.at(-1)].map(asLanes)).toEqual([from, to].map(asLanes));
          for (const { x, y } of way) expect(isOnLane(x) && isOnLane(y)).toBe(true);
        }
      }),
      { seed: 11, numRuns: 150 }
    );
  });

  it('that are laid already stay where nothing is in their way, and give way where a box comes', () => {
    fc.assert(
      fc.property(problems, fc.nat({ max: 60 }), fc.nat({ max: 60 }), (problem, x, y) => {
        const first = route(Object.fromEntries(problem.boxes), problem.wishes);
        const laid = first.routes;
        const comes = box(x, y, 6, 6);
        fc.pre([...problem.boxes.values()].every((other) => areApart(other, comes, lanes(8))));
        const boxes = new Map([...problem.boxes, ['comes', comes]]);
        const router = new Router({ boxes, frames: [], area, wishes: problem.wishes, laid });
        const isUnder = (id: string) =>
          laid
            .get(id)!
            .some(
              (spot, index, way) => index > 0 && !areApart(span(way[index - 1]!, spot), comes, 0.01)
            );
        const under = problem.wishes.filter(({ id }) => isUnder(id)).map(({ id }) => id);
        expect(router.unrouted).toEqual(under);
        router.routeOpen();
        expect(router.unrouted).toEqual([]);
        expectProved(boxes, router);
        if (under.length === 0) expect(router.routes).toEqual(laid);
      }),
      { seed: 12, numRuns: 150, endOnFailure: true }
    );
  });
});

describe.each([1, 2, 3])('a chassis set out in rows, seed %i', (seed) => {
  const placed = setInRows(generateChassis(100, seed));
  const router = buildRouter(placed);
  router.routeOpen();
  router.improve(1);
  const geometry = withRoutes(placed, router);

  it('has every wire run, none through a part, none on another', () => {
    expect(geometry.lines.length).toBeGreaterThan(60);
    expect(router.unrouted).toEqual([]);
    const { throughParts, overlaps, slanted, partClashes } = proveGeometry(geometry);
    expect([throughParts, overlaps, partClashes]).toEqual([[], [], []]);
    expect(slanted).toBe(0);
  });
});
