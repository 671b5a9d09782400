// Numbers on lines: any lines, crowded as they may be.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findNumberClashes, longLineMm, NumberPlacer } from '#drawing/place-numbers.ts';

const route = (...points: (readonly [number, number])[]) => points.map(([x, y]) => ({ x, y }));
const line = (id: string, ...points: (readonly [number, number])[]) => ({
  id,
  route: route(...points),
  widths: [7, 4]
});

describe('a number', () => {
  it('stands in the middle of a line that is free', () => {
    const wish = line('a', [0, 0], [40, 0]);
    const [place] = new NumberPlacer([wish], []).placeAll([wish]);
    expect(place).toMatchObject({ width: 7, y: 0, upright: false });
    expect(place!.x).toBeCloseTo(20, 0);
  });

  it('stands again near both ends of a long line', () => {
    const wish = line('a', [0, 0], [longLineMm + 20, 0]);
    const places = new NumberPlacer([wish], []).placeAll([wish]);
    expect(places).toHaveLength(2);
  });

  it('keeps off parts and crossing wires while there is room', () => {
    const wish = line('a', [0, 0], [40, 0]);
    const crossing = line('b', [20, -10], [20, 10]);
    const part = { x: 24, y: -5, width: 20, height: 10 };
    const [place] = new NumberPlacer([wish, crossing], [part]).placeAll([wish]);
    const { x, width } = place!.box;
    expect(x + width).toBeLessThan(20);
  });

  it('goes without its step where only the number fits', () => {
    const wish = line('a', [0, 0], [5.5, 0]);
    const wall = { x: 5.5, y: -5, width: 5, height: 10 };
    const other = { x: -5, y: -5, width: 5, height: 10 };
    const [place] = new NumberPlacer([wish], [wall, other]).placeAll([wish]);
    expect(place!.width).toBe(4);
  });

  it('is placed on every line, and never on another number', () => {
    const coordinate = fc.integer({ min: 0, max: 60 });
    const way = fc
      .tuple(coordinate, coordinate, coordinate, coordinate)
      .filter(([x1, y1, x2, y2]) => x1 !== x2 || y1 !== y2)
      .map(([x1, y1, x2, y2]) => route([x1, y1], [x2, y1], [x2, y2]));
    fc.assert(
      fc.property(fc.array(way, { minLength: 1, maxLength: 24 }), (ways) => {
        const wishes = ways.map((own, index) => ({ id: `w${index}`, route: own, widths: [7, 4] }));
        const places = new NumberPlacer(wishes, []).placeAll(wishes);
        expect(new Set(places.map(({ id }) => id)).size).toBe(wishes.length);
        expect(findNumberClashes(places)).toEqual([]);
      }),
      { seed: 3, numRuns: 60 }
    );
  });
});

describe('a name', () => {
  it('is left out where it would cover something', () => {
    const wish = line('a', [0, 0], [10, 0]);
    const placer = new NumberPlacer([wish], [{ x: -5, y: -5, width: 20, height: 10 }]);
    expect(placer.placeName([wish])).toBeNull();
    expect(new NumberPlacer([wish], []).placeName([wish])).not.toBeNull();
  });
});
