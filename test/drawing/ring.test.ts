// A socket keeps its pins in true order, and no leader crosses another.
// Reference for the order: pins count clockwise from the key or gap, seen from below (the handbook's
// bases, which name their source).
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildFigure } from '#drawing/figures/build-figure.ts';
import { planRing } from '#drawing/figures/ring-sides.ts';
import type { PartEnd } from '#drawing/figures/part-end.ts';
import { sides, type Side, type Spot } from '#drawing/presentation/sides.ts';
import { pinPlaces, tubeBaseOf } from '#handbook/index.ts';
import { sortByOrder } from '#document/order.ts';
import { chassis } from '../helpers/chassis.ts';

const tube = (type: string, pins: number) => {
  const set = chassis().tube('V1', type, { pins, function: 'horizontal output' }).build();
  const part = set.parts['pv1']!;
  return { part, terminals: sortByOrder(part.terminals) };
};

const end = (id: string, terminal: string, wish: Side, towardsDeg: number): PartEnd => ({
  id,
  terminal,
  mark: null,
  cost: Object.fromEntries(sides.map((side) => [side, side === wish ? 0 : 1])) as PartEnd['cost'],
  towardsDeg,
  sort: 0
});

const crosses = ([a, b]: readonly Spot[], [c, d]: readonly Spot[]): boolean => {
  if (!a || !b || !c || !d) return false;
  const turn = (p: Spot, q: Spot, r: Spot) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return turn(a, b, c) * turn(a, b, d) < -1e-9 && turn(c, d, a) * turn(c, d, b) < -1e-9;
};

describe('a socket', () => {
  it('stays one where a number is written down that its base does not have', () => {
    const names = [...Array.from({ length: 9 }, (_, n) => String(n + 1)), '99'];
    const set = chassis().part('tube', 'V3', names, { type: '6CG7' }).build();
    const part = set.parts['pv3']!;
    const terminals = sortByOrder(part.terminals);
    const odd = terminals.find(({ name }) => name === '99')!;
    const of = (end: string) => buildFigure({ part, terminals, ends: [plain(end)] });
    const plain = (id: string) => end('a', id, 'east', 90);
    const figure = of(odd.id);
    const socket = figure.items.find(({ style }) => style === 'part.socket')!.shape;
    if (socket.kind !== 'circle') throw new Error('no circle');
    const spots = figure.items.flatMap(({ shape, terminal }) =>
      shape.kind === 'circle' && terminal !== undefined
        ? [{ terminal, out: Math.hypot(shape.x - socket.x, shape.y - socket.y), ...shape }]
        : []
    );
    expect(spots).toHaveLength(10);
    const inside = spots.filter(({ terminal }) => terminal !== odd.id);
    for (const { out } of inside) expect(out).toBeLessThan(socket.r);
    expect(spots.find(({ terminal }) => terminal === odd.id)!.out).toBeGreaterThan(socket.r);
    // No pin covers another.
    for (const a of inside)
      for (const b of inside)
        if (a !== b) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(a.r + b.r);
    expect(figure.ports).toHaveLength(1);
  });

  it('shows the pins as the base has them, but for a turn of the whole', () => {
    for (const [type, pins, base] of [
      ['6AU6A', 7, '7-pin miniature'],
      ['6CG7', 9, 'noval'],
      ['6V6GT', 8, 'octal']
    ] as const) {
      const { part, terminals } = tube(type, pins);
      const figure = buildFigure({ part, terminals, ends: [end('a', 't1', 'east', 90)] });
      const drawn = figure.items.flatMap(({ shape, terminal }) =>
        shape.kind === 'circle' && terminal ? [{ terminal, x: shape.x, y: shape.y }] : []
      );
      const middle = {
        x: drawn.reduce((sum, { x }) => sum + x, 0) / drawn.length,
        y: drawn.reduce((sum, { y }) => sum + y, 0) / drawn.length
      };
      expect(drawn).toHaveLength(pins);
      const places = pinPlaces(tubeBaseOf(base));
      const angle = (from: Spot, { x, y }: Spot) => Math.atan2(y - from.y, x - from.x);
      const centre = figure.items.find(({ style }) => style === 'part.socket')!.shape as Spot;
      const turns = places.map(({ pin, x, y }) => {
        const own = drawn.find(({ terminal }) => terminal === `t${pin}`)!;
        const off = angle(centre, own) - angle({ x: 0, y: 0 }, { x, y });
        return ((off * 180) / Math.PI + 720) % 360;
      });
      for (const turn of turns) {
        expect(Math.cos(((turn - turns[0]!) * Math.PI) / 180)).toBeCloseTo(1, 5);
      }
      expect(Math.abs(middle.x - centre.x)).toBeLessThan(3);
    }
  });

  it('has leaders that do not cross, whatever its ends wish', () => {
    const wishes = fc.array(
      fc.record({
        pin: fc.integer({ min: 1, max: 9 }),
        wish: fc.constantFrom(...sides),
        deg: fc.integer({ min: 0, max: 359 })
      }),
      { minLength: 1, maxLength: 16 }
    );
    const { part, terminals } = tube('6CG7', 9);
    fc.assert(
      fc.property(wishes, (list) => {
        const ends = list.map(({ pin, wish, deg }, index) =>
          end(`e${index}`, `t${pin}`, wish, deg)
        );
        const { ports, width, height } = buildFigure({ part, terminals, ends });
        expect(ports).toHaveLength(list.length);
        const pieces = ports.map(({ path }) =>
          path.slice(1).map((spot, index) => [path[index]!, spot])
        );
        pieces.forEach((one, index) => {
          for (const two of pieces.slice(index + 1)) {
            expect(one.some((a) => two.some((b) => crosses(a, b)))).toBe(false);
          }
        });
        for (const { x, y, side } of ports) {
          const onBorder = { north: y, south: height - y, west: x, east: width - x }[side];
          expect(onBorder).toBeCloseTo(0, 6);
        }
      }),
      { seed: 11, numRuns: 200 }
    );
  });

  it('with thousands of ends is planned at once', () => {
    const ends = Array.from({ length: 4000 }, (_, index) => ({
      end: end(`w${index}`, 't1', 'east', 90),
      pinDeg: index < 2000 ? 45 : 90
    }));
    const start = performance.now();
    expect(planRing(ends, 45).sides).toHaveLength(4000);
    // With every end tried as the first the time grows with the square of their number.
    expect(performance.now() - start).toBeLessThan(5000);
  });
});
