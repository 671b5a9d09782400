// Rounded corners, and gaps where wires cross.
import { crossingOf, findCrossingGaps } from '#drawing/pictorial/crossing-gaps.ts';
import { lineLength, smoothLine, stationsAlong } from '#drawing/pictorial/smooth.ts';
import { describe, expect, it } from 'vitest';

const corner = [
  { x: 0, y: 0 },
  { x: 100, y: 0 },
  { x: 100, y: 100 }
];

describe('smoothLine', () => {
  it('keeps both ends, cuts the corner, and stays within the reach of it', () => {
    const line = smoothLine(corner, 10);
    expect(line[0]).toEqual({ x: 0, y: 0 });
    expect(line.at(-1)).toEqual({ x: 100, y: 100 });
    for (const { x, y } of line) expect(x <= 100 && y >= 0).toBe(true);
    const cut = line.filter(({ x, y }) => x < 100 && y > 0);
    expect(cut.length).toBeGreaterThan(2);
    for (const { x, y } of cut) expect(Math.hypot(x - 100, y)).toBeLessThan(10);
  });

  it('is as long as a parabola with these tangents: 180 mm and 10 mm x 1.6232', () => {
    // Arc of a quadratic curve over a right angle with legs of 1: (sqrt 2 + asinh 1) / sqrt 2.
    const arc = (Math.SQRT2 + Math.asinh(1)) / Math.SQRT2;
    expect(arc).toBeCloseTo(1.6232, 4);
    expect(lineLength(smoothLine(corner, 10))).toBeCloseTo(180 + 10 * arc, 0);
  });

  it('never reaches beyond the middle of a short leg', () => {
    const line = smoothLine(
      [
        { x: 0, y: 0 },
        { x: 4, y: 0 },
        { x: 4, y: 4 },
        { x: 8, y: 4 }
      ],
      50
    );
    expect(line).toContainEqual({ x: 4, y: 2 });
  });

  it('drops places that repeat', () => {
    const line = smoothLine([corner[0]!, corner[0]!, corner[1]!], 5);
    expect(line).toEqual([corner[0], corner[1]]);
  });
});

describe('stationsAlong', () => {
  it('finds places and directions at distances from the start', () => {
    expect(stationsAlong(corner, [0, 50, 150])).toEqual([
      { mm: 0, at: { x: 0, y: 0 }, along: { x: 1, y: 0 } },
      { mm: 50, at: { x: 50, y: 0 }, along: { x: 1, y: 0 } },
      { mm: 150, at: { x: 100, y: 50 }, along: { x: 0, y: 1 } }
    ]);
  });
});

describe('crossing gaps', () => {
  const level = {
    line: [
      { x: 0, y: 0 },
      { x: 100, y: 0 }
    ],
    widthMm: 1
  };
  const upright = {
    line: [
      { x: 50, y: -50 },
      { x: 50, y: 50 }
    ],
    widthMm: 0.4
  };

  it('lie on the upper wire and clear the lower one to both sides', () => {
    const [none, gaps] = findCrossingGaps([level, upright]);
    expect(none).toEqual([]);
    expect(gaps).toEqual([
      [
        { x: 50, y: -1 },
        { x: 50, y: 1 }
      ]
    ]);
  });

  it('are left out where wires nearly run together', () => {
    const slanted = {
      line: [
        { x: 0, y: -5 },
        { x: 100, y: 5 }
      ],
      widthMm: 0.4
    };
    expect(findCrossingGaps([level, slanted])[1]).toEqual([]);
    expect(crossingOf(level.line[0]!, level.line[1]!, slanted.line[0]!, slanted.line[1]!)).toEqual({
      x: 50,
      y: 0
    });
  });
});
