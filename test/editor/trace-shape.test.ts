import { describe, expect, it } from 'vitest';
import type { Shape } from '#drawing/display-list.ts';
import { roundedPath } from '#drawing/to-svg.ts';
import { traceShape, type PathContext } from '#editor/sheet/trace-shape.ts';

const number = (value: number): string => String(Math.round(value * 1000) / 1000 + 0);

/** Writes what a canvas is told as SVG path data. */
const record = (shape: Shape): string => {
  const calls: string[] = [];
  const note =
    (letter: string) =>
    (...values: number[]): void => {
      const pairs: string[] = [];
      for (let at = 0; at < values.length; at += 2) {
        pairs.push(`${number(values[at]!)} ${number(values[at + 1]!)}`);
      }
      calls.push(letter + pairs.join(' '));
    };
  const context: PathContext = {
    beginPath: () => undefined,
    moveTo: note('M'),
    lineTo: note('L'),
    quadraticCurveTo: note('Q'),
    arc: (x, y, radius) => note('A')(x, y, radius, 0),
    rect: note('R'),
    roundRect: (x, y, width, height, round) =>
      void calls.push(`RR${x} ${y} ${width} ${height} ${String(round)}`),
    closePath: () => void calls.push('Z')
  };
  traceShape(context, shape);
  return calls.join('');
};

describe('a shape on the canvas', () => {
  // The drawing's own SVG writer is the reference: the two must not differ.
  it.each([
    [[0, 0, 10, 0, 10, 10, 30, 10], 1.3],
    [[0, 0, 1, 0, 1, 1, 30, 1], 2],
    [[0, 0, 50, 0], 2],
    [[5, 5, 5, 5, 5, 20, 40, 20], 1]
  ])('turns the corners of %j as the SVG does', (points, round) => {
    expect(record({ kind: 'line', points, round })).toBe(roundedPath(points, false, round));
  });

  it('closes what is closed', () => {
    expect(record({ kind: 'line', points: [0, 0, 4, 0, 4, 4], closed: true })).toBe(
      'M0 0L4 0L4 4Z'
    );
  });

  it('traces boxes with and without round corners', () => {
    expect(record({ kind: 'box', x: 1, y: 2, width: 3, height: 4, round: 0.5 })).toBe(
      'RR1 2 3 4 0.5'
    );
    expect(record({ kind: 'box', x: 1, y: 2, width: 3, height: 4 })).toBe('R1 2 3 4');
  });
});
