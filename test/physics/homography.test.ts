import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  invertHomography,
  mapPoint,
  measuredMm,
  rectangleToMm,
  SumError,
  twoPointsToMm,
  type PlanePoint
} from '#physics/index.ts';

type Corners = readonly [PlanePoint, PlanePoint, PlanePoint, PlanePoint];
const at = (x: number, y: number): PlanePoint => ({ x, y });
const tilted: Corners = [at(412, 305), at(2710, 188), at(2895, 2010), at(265, 1874)];

describe('a rectangle of known sides', () => {
  // OpenCV 5.0.0, getPerspectiveTransform and perspectiveTransform, on the same corners and 330 x 254.
  test.each([
    [at(1500, 1000), 167.90909440172362, 121.36067861246886],
    [at(700, 1700), 60.54536320088579, 226.40304340832571],
    [at(2600, 400), 313.81835063213066, 32.746381761612554],
    [at(1234.5, 567.25), 129.95175524359252, 51.82078135762993]
  ])('%o comes to lie where OpenCV puts it', (pixel, x, y) => {
    const point = mapPoint(rectangleToMm(tilted, 330, 254), pixel);
    expect(point.x).toBeCloseTo(x, 8);
    expect(point.y).toBeCloseTo(y, 8);
  });

  const jitter = fc.double({ min: -300, max: 300, noNaN: true });
  const corners = fc
    .tuple(jitter, jitter, jitter, jitter, jitter, jitter, jitter, jitter)
    .map(([a, b, c, d, e, f, g, h]): Corners => [
      at(500 + a, 500 + b),
      at(2500 + c, 500 + d),
      at(2500 + e, 2000 + f),
      at(500 + g, 2000 + h)
    ]);
  const side = fc.double({ min: 20, max: 900, noNaN: true });
  const inside = fc.double({ min: 0, max: 1, noNaN: true });

  test('its corners come out at its sides, and every place in it comes back', () => {
    fc.assert(
      fc.property(corners, side, side, inside, inside, (quad, width, height, u, v) => {
        const toMm = rectangleToMm(quad, width, height);
        const wanted = [at(0, 0), at(width, 0), at(width, height), at(0, height)];
        for (const [index, corner] of quad.entries()) {
          const point = mapPoint(toMm, corner);
          expect(point.x).toBeCloseTo(wanted[index]!.x, 6);
          expect(point.y).toBeCloseTo(wanted[index]!.y, 6);
        }
        const place = at(u * width, v * height);
        const back = mapPoint(toMm, mapPoint(invertHomography(toMm), place));
        expect(back.x).toBeCloseTo(place.x, 6);
        expect(back.y).toBeCloseTo(place.y, 6);
      }),
      { seed: 51 }
    );
  });

  test('what is straight on the chassis is straight again', () => {
    fc.assert(
      fc.property(corners, inside, (quad, t) => {
        const [p, q] = quad;
        const edge = at(p.x + t * (q.x - p.x), p.y + t * (q.y - p.y));
        expect(mapPoint(rectangleToMm(quad, 330, 254), edge).y).toBeCloseTo(0, 6);
      }),
      { seed: 52 }
    );
  });

  test.each<[string, Corners]>([
    ['three in a line', [at(0, 0), at(500, 0), at(1000, 0), at(0, 700)]],
    ['one dented inward', [at(0, 0), at(1000, 0), at(200, 200), at(0, 1000)]],
    ['crossed', [at(0, 0), at(1000, 1000), at(1000, 0), at(0, 1000)]],
    ['the wrong way round', [at(0, 0), at(0, 1000), at(1000, 1000), at(1000, 0)]],
    ['all in one place', [at(5, 5), at(5, 5), at(5, 5), at(5, 5)]],
    ['not a number', [at(NaN, 0), at(1000, 0), at(1000, 1000), at(0, 1000)]]
  ])('%s is refused', (_, quad) => {
    expect(() => rectangleToMm(quad, 330, 254)).toThrow(SumError);
  });

  test.each([0, -1, Infinity, NaN])('a side of %s mm is refused', (width) => {
    expect(() => rectangleToMm(tilted, width, 254)).toThrow(SumError);
  });

  test('nothing is measured beyond the horizon', () => {
    expect(() => mapPoint(rectangleToMm(tilted, 330, 254), at(-20_000, 0))).toThrow(/horizon/);
  });
});

describe('two places and a distance', () => {
  // The 3-4-5 triangle: 500 pixels that are 100 mm.
  test('sets the scale, along a path too', () => {
    const toMm = twoPointsToMm(at(100, 100), at(400, 500), 100);
    expect(measuredMm(toMm, [at(0, 0), at(50, 0)])).toBeCloseTo(10, 10);
    expect(measuredMm(toMm, [at(0, 0), at(50, 0), at(50, 100)])).toBeCloseTo(30, 10);
    expect(measuredMm(toMm, [at(7, 7)])).toBe(0);
  });
  test('places too near to each other are refused', () => {
    expect(() => twoPointsToMm(at(1, 1), at(4, 5), 100)).toThrow(/further apart/);
  });
});
