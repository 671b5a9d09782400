// The counts are held against drawings small enough to count by eye.
import { describe, expect, it } from 'vitest';
import type { Geometry } from '#drawing/layout/geometry.ts';
import {
  countBends,
  countCrossings,
  countSlanted,
  findOverlaps,
  findPartClashes,
  findWiresThroughParts,
  totalLengthMm
} from '#drawing/proofs.ts';

type Way = readonly (readonly [number, number])[];

const line = (id: string, from: string, to: string, way: Way) => ({
  link: {
    id,
    kind: 'wire' as const,
    from: { part: from, terminal: 't1' },
    to: { part: to, terminal: 't1' },
    wires: [id]
  },
  route: way.map(([x, y]) => ({ x, y })),
  fromPath: [],
  toPath: []
});

const figure = { width: 0, height: 0, ports: [], items: [] };

const geometry = (
  lines: Geometry['lines'],
  boxes: readonly (readonly [number, number, number, number])[] = []
): Geometry => ({
  x: 0,
  y: 0,
  width: 100,
  height: 100,
  frames: [],
  parts: boxes.map(([x, y, width, height], index) => ({
    id: `p${index}`,
    figure,
    box: { x, y, width, height }
  })),
  lines
});

const level = line('a', 'p1', 'p2', [
  [0, 10],
  [50, 10]
]);
const upright = line('b', 'p3', 'p4', [
  [20, 0],
  [20, 40]
]);

describe('crossings', () => {
  it('are counted once for each place where two lines cross', () => {
    expect(countCrossings(geometry([level, upright]))).toBe(1);
    const zigzag = line('c', 'p5', 'p6', [
      [5, 0],
      [5, 20],
      [15, 20],
      [15, 0]
    ]);
    expect(countCrossings(geometry([level, zigzag]))).toBe(2);
  });

  it('are none where lines only touch, or share a terminal', () => {
    const touching = line('d', 'p7', 'p8', [
      [30, 10],
      [30, 40]
    ]);
    expect(countCrossings(geometry([level, touching]))).toBe(0);
    const related = line('e', 'p1', 'p9', [
      [20, 0],
      [20, 40]
    ]);
    expect(countCrossings(geometry([level, related]))).toBe(0);
  });
});

describe('overlaps', () => {
  it('are stretches on one line, or too close to tell apart', () => {
    const same = line('f', 'p5', 'p6', [
      [40, 10],
      [70, 10]
    ]);
    expect(findOverlaps(geometry([level, same]))).toEqual([{ a: 'a', b: 'f', lengthMm: 10 }]);
    const beside = line('g', 'p5', 'p6', [
      [0, 10.4],
      [50, 10.4]
    ]);
    expect(findOverlaps(geometry([level, beside]))).toHaveLength(1);
    const apart = line('h', 'p5', 'p6', [
      [0, 13],
      [50, 13]
    ]);
    expect(findOverlaps(geometry([level, apart]))).toEqual([]);
  });

  it('are none between lines of one terminal', () => {
    const related = line('i', 'p1', 'p6', [
      [0, 10],
      [30, 10]
    ]);
    expect(findOverlaps(geometry([level, related]))).toEqual([]);
  });
});

describe('lines and parts', () => {
  it('tells a line through a part from one along its border', () => {
    expect(findWiresThroughParts(geometry([level], [[10, 5, 10, 10]]))).toEqual([
      { line: 'a', part: 'p0' }
    ]);
    expect(findWiresThroughParts(geometry([level], [[10, 10, 10, 10]]))).toEqual([]);
    expect(findWiresThroughParts(geometry([level], [[50, 5, 10, 10]]))).toEqual([]);
  });

  it('finds parts on parts', () => {
    const side: [number, number, number, number] = [10, 0, 10, 10];
    expect(findPartClashes(geometry([], [[0, 0, 10, 10], side]))).toEqual([]);
    expect(findPartClashes(geometry([], [[0, 0, 11, 10], side]))).toEqual([{ a: 'p0', b: 'p1' }]);
  });
});

describe('bends, lengths and slants', () => {
  it('are added up over all lines', () => {
    const corner = line('j', 'p5', 'p6', [
      [0, 0],
      [30, 0],
      [30, 40]
    ]);
    const slant = line('k', 'p7', 'p8', [
      [0, 0],
      [3, 4]
    ]);
    expect(countBends(geometry([level, corner]))).toBe(1);
    expect(totalLengthMm(geometry([level, corner]))).toBe(120);
    expect(countSlanted(geometry([level, corner]))).toBe(0);
    expect(countSlanted(geometry([slant]))).toBe(1);
  });
});
