// Pulling a block together: gaps close, nothing changes sides, nothing comes too near.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compactBlock, room } from '#drawing/layout/compact.ts';
import type { PlacedBlock } from '#drawing/layout/placed.ts';
import { findAbove, type Band } from '#drawing/layout/skyline.ts';
import { transposeBlock } from '#drawing/layout/transpose.ts';

const padding = { top: 10, side: 6, bottom: 6 };

const block = (fields: Partial<PlacedBlock>): PlacedBlock => ({
  id: 'u',
  width: 200,
  height: 200,
  nodes: [],
  routes: new Map(),
  exits: new Map(),
  ...fields
});

describe('a block', () => {
  it('loses the room between two parts that stand above each other', () => {
    const packed = compactBlock(
      block({
        nodes: [
          { id: 'a', x: 20, y: 30, width: 30, height: 20 },
          { id: 'b', x: 20, y: 150, width: 30, height: 20 }
        ]
      }),
      padding
    );
    const [a, b] = packed.nodes;
    expect(a).toMatchObject({ x: 6, y: 10 });
    expect(b!.y - (a!.y + a!.height)).toBeCloseTo(room.nodes, 9);
    expect(packed).toMatchObject({ width: 42 });
    expect(packed.height).toBeCloseTo(10 + 20 + room.nodes + 20 + 6, 9);
  });

  it('keeps its lines joined to parts and border', () => {
    const packed = compactBlock(
      block({
        nodes: [
          { id: 'a', x: 20, y: 30, width: 30, height: 20 },
          { id: 'b', x: 120, y: 130, width: 30, height: 20 }
        ],
        routes: new Map([
          [
            'line',
            [
              { x: 50, y: 40 },
              { x: 80, y: 40 },
              { x: 80, y: 140 },
              { x: 120, y: 140 }
            ]
          ],
          [
            'out',
            [
              { x: 150, y: 140 },
              { x: 200, y: 140 }
            ]
          ]
        ]),
        exits: new Map([['out', { x: 200, y: 140, side: 'east' as const }]])
      }),
      padding
    );
    const [a, b] = packed.nodes;
    const line = packed.routes.get('line')!;
    expect(line[0]).toEqual({ x: a!.x + 30, y: a!.y + 10 });
    expect(line.at(-1)).toEqual({ x: b!.x, y: b!.y + 10 });
    const out = packed.routes.get('out')!;
    expect(out.at(-1)).toEqual({ x: packed.width, y: b!.y + 10 });
    expect(packed.exits.get('out')).toEqual({ x: packed.width, y: b!.y + 10, side: 'east' });
  });

  it('of any parts keeps them apart and in their order', () => {
    // Parts on a coarse grid, so that none lies on another to begin with.
    const cells = fc.uniqueArray(fc.integer({ min: 0, max: 35 }), { minLength: 2, maxLength: 18 });
    fc.assert(
      fc.property(cells, fc.infiniteStream(fc.integer({ min: 5, max: 25 })), (places, sizes) => {
        const nodes = places.map((cell) => ({
          id: `n${cell}`,
          x: (cell % 6) * 40 + 10,
          y: Math.floor(cell / 6) * 40 + 12,
          width: sizes.next().value as number,
          height: sizes.next().value as number
        }));
        const packed = compactBlock(block({ width: 260, height: 260, nodes }), padding);
        packed.nodes.forEach((one, index) => {
          expect(one.x).toBeGreaterThanOrEqual(padding.side - 1e-6);
          expect(one.y).toBeGreaterThanOrEqual(padding.top - 1e-6);
          for (const two of packed.nodes.slice(index + 1)) {
            const gap = Math.max(
              two.x - one.x - one.width,
              one.x - two.x - two.width,
              two.y - one.y - one.height,
              one.y - two.y - two.height
            );
            expect(gap).toBeGreaterThanOrEqual(room.nodes - 2 - 1e-9);
          }
        });
        expect(packed.width).toBeLessThanOrEqual(260 + padding.side);
      }),
      { seed: 8, numRuns: 100 }
    );
  });

  it('transposed twice is itself', () => {
    const one = block({
      nodes: [{ id: 'a', x: 1, y: 2, width: 3, height: 4 }],
      routes: new Map([['l', [{ x: 1, y: 2 }]]]),
      exits: new Map([['l', { x: 0, y: 5, side: 'west' as const }]])
    });
    expect(transposeBlock(transposeBlock(one))).toEqual(one);
    expect(transposeBlock(one).exits.get('l')).toEqual({ x: 5, y: 0, side: 'north' });
  });
});

describe('the skyline', () => {
  const reaches = (a: Band, b: Band, reach: number) => a.x1 - reach < b.x2 && b.x1 - reach < a.x2;

  it('finds a way of neighbours from every band to all below it that it reaches', () => {
    const band = fc
      .tuple(
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 0, max: 60 })
      )
      .map(([x1, width, y]): Band => ({ x1, x2: x1 + width, y1: y, y2: y }));
    fc.assert(
      fc.property(fc.array(band, { maxLength: 20 }), (bands) => {
        const below = new Map<number, number[]>();
        for (const { upper, lower } of findAbove(bands, 1)) {
          expect(bands[upper]!.y1).toBeLessThanOrEqual(bands[lower]!.y1);
          below.set(upper, [...(below.get(upper) ?? []), lower]);
        }
        const reached = (from: number): Set<number> => {
          const seen = new Set<number>();
          const next = [from];
          for (const one of next) {
            for (const other of below.get(one) ?? []) {
              if (seen.has(other)) continue;
              seen.add(other);
              next.push(other);
            }
          }
          return seen;
        };
        bands.forEach((one, index) => {
          const seen = reached(index);
          bands.forEach((two, other) => {
            if (one.y1 < two.y1 && reaches(one, two, 1)) expect(seen.has(other)).toBe(true);
          });
        });
      }),
      { seed: 4, numRuns: 200 }
    );
  });
});
