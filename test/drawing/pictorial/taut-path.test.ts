// Ways round the parts: as short as a string pulled tight, never through a part. Lengths are held
// against Pythagoras on obstacles whose corners are known.
import { Obstacles, type Obstacle } from '#drawing/pictorial/obstacles.ts';
import { TautPaths } from '#drawing/pictorial/taut-path.ts';
import { lineLength } from '#drawing/pictorial/smooth.ts';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../helpers/generate-chassis.ts';

type Spot = { readonly x: number; readonly y: number };

const box = (x: number, y: number, width: number, height: number, rim = 0): Obstacle => {
  const corners = (more: number): Spot[] => [
    { x: x - more, y: y - more },
    { x: x + width + more, y: y - more },
    { x: x + width + more, y: y + height + more },
    { x: x - more, y: y + height + more }
  ];
  return { outer: corners(rim), core: corners(0) };
};

const lineOf = (obstacles: readonly Obstacle[], from: Spot, to: Spot): Spot[] => {
  const { corners } = new TautPaths(new Obstacles(obstacles)).find(from, to);
  return [from, ...corners.map(({ at }) => at), to];
};

/** True where some place of the line, looked at every half millimetre, lies within a box. */
const runsInto = (line: readonly Spot[], { core }: Obstacle): boolean => {
  const [{ x: left, y: top }, , { x: right, y: bottom }] = core as [Spot, Spot, Spot];
  return line.slice(1).some((to, index) => {
    const from = line[index]!;
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) * 2));
    return Array.from({ length: steps + 1 }, (_, step) => {
      const x = from.x + ((to.x - from.x) * step) / steps;
      const y = from.y + ((to.y - from.y) * step) / steps;
      return x > left + 0.1 && x < right - 0.1 && y > top + 0.1 && y < bottom - 0.1;
    }).some(Boolean);
  });
};

describe('taut paths', () => {
  it('go straight where nothing is in the way', () => {
    expect(lineOf([box(0, 50, 100, 20)], { x: 0, y: 0 }, { x: 100, y: 0 })).toHaveLength(2);
  });

  it('bend round the nearer corners: 2 x 50 mm by the 30-40-50 triangle and 20 mm along', () => {
    const line = lineOf([box(40, -30, 20, 200)], { x: 0, y: 0 }, { x: 100, y: 0 });
    expect(line.slice(1, -1)).toEqual([
      { x: 40, y: -30 },
      { x: 60, y: -30 }
    ]);
    expect(lineLength(line)).toBeCloseTo(120, 9);
  });

  it('pass between two parts when that is the shortest', () => {
    const parts = [box(40, -200, 20, 190), box(40, 10, 20, 190)];
    expect(lineLength(lineOf(parts, { x: 0, y: 0 }, { x: 100, y: 0 }))).toBeCloseTo(100, 9);
  });

  it('come out of the room around their own part without running through it', () => {
    const own = box(0, 0, 40, 40, 4);
    const line = lineOf([own], { x: 20, y: -2 }, { x: 20, y: 80 });
    expect(runsInto(line, own)).toBe(false);
    // Down one side at the outer rim: over by 22 to 24, then 44 and more down.
    expect(line.some(({ x }) => Math.abs(x - 44) < 1e-9 || Math.abs(x + 4) < 1e-9)).toBe(true);
  });

  it('leave a part that the end lies within straight through its side', () => {
    const line = lineOf([box(-20, -20, 40, 40)], { x: 0, y: 0 }, { x: 100, y: 0 });
    expect(line).toHaveLength(2);
  });

  it('are straight rather than missing where nothing leads there', () => {
    const walls = [
      box(40, -60, 20, 120),
      box(80, -60, 20, 120),
      box(40, -60, 60, 20),
      box(40, 40, 60, 20)
    ];
    const line = lineOf(walls, { x: 0, y: 0 }, { x: 70, y: 0 });
    expect(line[0]).toEqual({ x: 0, y: 0 });
    expect(line.at(-1)).toEqual({ x: 70, y: 0 });
  });

  it('never run through a part, over 120 crowds of parts (seeds 1 to 120)', () => {
    for (let seed = 1; seed <= 120; seed++) {
      const chance = seeded(seed);
      const parts = Array.from({ length: 18 }, (_, n) =>
        box(
          30 + (n % 6) * 50 + chance() * 12,
          30 + Math.floor(n / 6) * 60 + chance() * 14,
          14 + chance() * 18,
          14 + chance() * 26,
          2
        )
      );
      const [from, to] = [
        { x: 0, y: chance() * 220 },
        { x: 340, y: chance() * 220 }
      ];
      const line = lineOf(parts, from, to);
      for (const part of parts) expect(runsInto(line, part), `seed ${seed}`).toBe(false);
      const straight = Math.hypot(to.x - from.x, to.y - from.y);
      expect(lineLength(line)).toBeGreaterThanOrEqual(straight - 1e-9);
      expect(lineLength(line)).toBeLessThan(straight * 1.35);
    }
  });

  it('give way where many have gone before', () => {
    const paths = new TautPaths(new Obstacles([box(40, -31, 20, 60)]));
    const [from, to] = [
      { x: 0, y: 0 },
      { x: 100, y: 0 }
    ];
    const first = paths.find(from, to);
    expect(first.corners[0]?.at.y).toBe(29);
    paths.use(first.corners, 20);
    expect(paths.find(from, to).corners[0]?.at.y).toBe(-31);
  });
});
