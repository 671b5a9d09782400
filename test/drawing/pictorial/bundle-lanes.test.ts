// Wires beside each other: each in a lane of its own, in an order that crosses less than an order
// that knows nothing of where they go.
import { layLines as layCorners, type LaneOptions } from '#drawing/pictorial/bundle-lanes.ts';
import { crossingOf } from '#drawing/pictorial/crossing-gaps.ts';
import type { Way, WayNode } from '#drawing/pictorial/way.ts';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../helpers/generate-chassis.ts';

type Spot = { readonly x: number; readonly y: number };

/** Each wire's line as one run of corners. */
const layLines = (ways: readonly Way[], laneOptions: LaneOptions): Spot[][] =>
  layCorners(ways, laneOptions).map((places) => places.flat());

const options = { roomMm: 1, widestMm: 1000 } as const;

const support = (key: string, x: number, y: number): WayNode => ({
  key,
  at: { x, y },
  kind: 'support'
});
const terminal = (key: string, x: number, y: number): WayNode => ({
  key,
  at: { x, y },
  kind: 'terminal'
});

const way = (rank: number, ...nodes: WayNode[]): Way => ({
  wire: `w${rank}`,
  rank,
  widthMm: 0.4,
  nodes
});

const piecesOf = (line: readonly Spot[]): [Spot, Spot][] =>
  line.slice(1).map((to, index) => [line[index]!, to]);

const crossingsOf = (lines: readonly (readonly Spot[])[]): number => {
  let count = 0;
  lines.forEach((one, index) => {
    for (const other of lines.slice(index + 1)) {
      for (const [a, b] of piecesOf(one)) {
        for (const [c, d] of piecesOf(other)) if (crossingOf(a, b, c, d)) count++;
      }
    }
  });
  return count;
};

describe('lanes', () => {
  it('keeps wires of a bundle apart by their widths and the room between', () => {
    const ways = [0, 1, 2, 3].map((n) =>
      way(
        n,
        terminal(`a${n}`, 0, n * 20 - 30),
        support('k1', 60, 0),
        support('k2', 160, 0),
        terminal(`b${n}`, 220, n * 20 - 30)
      )
    );
    const lines = layLines(ways, options);
    const across = lines.map((line) => line[1]!.y).toSorted((a, b) => a - b);
    for (let n = 1; n < across.length; n++) {
      expect(across[n]! - across[n - 1]!).toBeCloseTo(1.4, 6);
    }
    for (const line of lines) expect(line[2]!.y).toBeCloseTo(line[1]!.y, 6);
  });

  it('gives a thick wire more room', () => {
    const ways = [0, 1].map((n): Way => ({
      ...way(
        n,
        terminal(`a${n}`, 0, n * 20),
        support('k1', 60, 0),
        support('k2', 160, 0),
        terminal(`b${n}`, 220, n * 20)
      ),
      widthMm: n === 0 ? 0.4 : 2.6
    }));
    const [thin, thick] = layLines(ways, options);
    expect(Math.abs(thin![1]!.y - thick![1]!.y)).toBeCloseTo(1 + (0.4 + 2.6) / 2, 6);
  });

  it('draws a bundle of many together rather than over its neighbours', () => {
    const ways = Array.from({ length: 20 }, (_, n) =>
      way(
        n,
        terminal(`a${n}`, 0, n * 9),
        support('k1', 60, 80),
        support('k2', 160, 80),
        terminal(`b${n}`, 220, n * 9)
      )
    );
    const lines = layLines(ways, { roomMm: 1, widestMm: 14 });
    const across = lines.map((line) => line[1]!.y);
    expect(Math.max(...across) - Math.min(...across)).toBeLessThan(20 * 0.4 + 19 * 0.5 + 0.01);
  });

  it('crosses nothing where the wires come and go in one order', () => {
    const ways = [3, 1, 0, 2].map((n) =>
      way(
        n,
        terminal(`a${n}`, 0, n * 20),
        support('k1', 60, 30),
        support('k2', 160, 30),
        terminal(`b${n}`, 220, n * 20)
      )
    );
    expect(crossingsOf(layLines(ways, options))).toBe(0);
  });

  it('nests wires that turn together', () => {
    const ways = [0, 1, 2].map((n) =>
      way(
        n,
        terminal(`a${n}`, 0, n * 12),
        support('k1', 60, 12),
        support('k2', 160, 12),
        support('k3', 160, 120),
        terminal(`b${n}`, 172 - n * 12, 180)
      )
    );
    const lines = layLines(ways, options);
    expect(crossingsOf(lines)).toBe(0);
    // The upper one lies outermost at the corner: further right and further up.
    expect(lines[0]![2]!.x).toBeGreaterThan(lines[2]![2]!.x);
    expect(lines[0]![2]!.y).toBeLessThan(lines[2]![2]!.y);
  });

  it('is the same from whichever end a wire was recorded', () => {
    const forward = [0, 1, 2].map((n) =>
      way(
        n,
        terminal(`a${n}`, 0, n * 20),
        support('k1', 60, 20),
        support('k2', 160, 20),
        terminal(`b${n}`, 220, 40 - n * 20)
      )
    );
    const mixed = forward.map((one, n) =>
      n === 1 ? { ...one, nodes: one.nodes.toReversed() } : one
    );
    const lines = layLines(forward, options);
    const others = layLines(mixed, options);
    expect(others[1]!.toReversed()).toEqual(lines[1]);
    expect(others[0]).toEqual(lines[0]);
  });

  it('wraps wires round a corner side by side, away from the part', () => {
    const corner: WayNode = {
      key: 'corner 1',
      at: { x: 50, y: 0 },
      kind: 'corner',
      outward: { x: 0, y: -1 }
    };
    const ways = [0, 1].map((n) =>
      way(n, terminal(`a${n}`, 0, 30 - n * 10), corner, terminal(`b${n}`, 100, 30 - n * 10))
    );
    const lines = layLines(ways, options);
    expect(lines[0]![1]).toEqual({ x: 50, y: 0 });
    expect(lines[1]![1]!.x).toBeCloseTo(50, 6);
    expect(lines[1]![1]!.y).toBeCloseTo(-1.4, 6);
    expect(crossingsOf(lines)).toBe(0);
  });
});

/** A chassis as a grid of supports, and wires that walk along it from terminal to terminal. */
const network = (seed: number): Way[] => {
  const chance = seeded(seed);
  const below = (count: number): number => Math.floor(chance() * count);
  const [columns, rows, wires] = [2 + below(4), 2 + below(3), 2 + below(23)];
  const supports = Array.from({ length: columns * rows }, (_, index) =>
    support(
      `k${index}`,
      (index % columns) * 90 + (chance() - 0.5) * 24,
      Math.floor(index / columns) * 80 + (chance() - 0.5) * 24
    )
  );
  /** A terminal somewhere around a support, but not back along the way. */
  const end = (key: string, at: WayNode, next: WayNode | undefined): WayNode => {
    const from = next ? Math.atan2(at.at.y - next.at.y, at.at.x - next.at.x) : chance() * 6.28;
    const side = from + (chance() - 0.5) * 4.4;
    const far = 22 + chance() * 14;
    return terminal(key, at.at.x + far * Math.cos(side), at.at.y + far * Math.sin(side));
  };
  return Array.from({ length: wires }, (_, rank) => {
    const [start, goal] = [below(supports.length), below(supports.length)];
    let [column, row] = [start % columns, Math.floor(start / columns)];
    const nodes = [supports[start]!];
    const level = (): void => {
      while (column !== goal % columns) {
        column += Math.sign((goal % columns) - column);
        nodes.push(supports[row * columns + column]!);
      }
    };
    const upright = (): void => {
      const last = Math.floor(goal / columns);
      while (row !== last) {
        row += Math.sign(last - row);
        nodes.push(supports[row * columns + column]!);
      }
    };
    if (chance() < 0.5) level();
    upright();
    level();
    const first = end(`a${rank}`, nodes[0]!, nodes[1]);
    const last = end(`b${rank}`, nodes.at(-1)!, nodes.at(-2));
    return way(rank, first, ...nodes, last);
  });
};

describe('lane order, over 400 networks from seeds 1 to 400', () => {
  const networks = Array.from({ length: 400 }, (_, index) => network(index + 1));

  it('crosses little more than half as often as order by number, and next to never more', () => {
    let [ours, plain, worse] = [0, 0, 0];
    for (const ways of networks) {
      const mine = crossingsOf(layLines(ways, options));
      const byRank = crossingsOf(layLines(ways, { ...options, order: 'rank' }));
      ours += mine;
      plain += byRank;
      if (mine > byRank) worse++;
      // Where wires double back at a support, two lines may touch more than once within a millimetre of it.
      expect(mine).toBeLessThanOrEqual(byRank + 4);
    }
    expect(ours).toBeLessThan(plain * 0.6);
    expect(worse).toBeLessThanOrEqual(networks.length * 0.01);
  });

  it('keeps every wire at its own ends, and no two wires of a bundle in one lane', () => {
    for (const ways of networks) {
      const lines = layLines(ways, options);
      lines.forEach((line, index) => {
        expect(line[0]).toEqual(ways[index]!.nodes[0]!.at);
        expect(line.at(-1)).toEqual(ways[index]!.nodes.at(-1)!.at);
        for (const { x, y } of line) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
      });
      const middles = new Map<string, Spot[]>();
      const corners = layCorners(ways, options);
      ways.forEach(({ nodes }, index) =>
        nodes.slice(1).forEach((node, place) => {
          const before = nodes[place]!;
          if (node.kind !== 'support' || before.kind !== 'support') return;
          const key = [before.key, node.key].sort().join(' ');
          const [a, b] = [corners[index]![place]!.at(-1)!, corners[index]![place + 1]![0]!];
          const here = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
          const taken = middles.get(key) ?? [];
          for (const { x, y } of taken) {
            expect(Math.hypot(x - here.x, y - here.y)).toBeGreaterThan(1.2);
          }
          middles.set(key, [...taken, here]);
        })
      );
    }
  });
});
