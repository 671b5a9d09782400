// Packings are checked as geometry: nothing overlaps, all is enclosed. How small they are is held
// against published packings in test/reference.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bundle, bundleEstimate, packCircles, sleeveOver, SumError } from '#physics/index.ts';
import { minimise } from '#physics/packing/minimise.ts';
import { overlapEnergy } from '#physics/packing/overlap.ts';

function checkPacking(diameters: readonly number[]): void {
  const { diameter, circles } = packCircles(diameters);
  const slack = 1e-9 * diameter;
  expect(circles.map((circle) => circle.diameter)).toEqual(
    diameters.map((d) => expect.closeTo(d, 8))
  );
  circles.forEach((a, index) => {
    expect(Math.hypot(a.x, a.y) + a.diameter / 2).toBeLessThanOrEqual(diameter / 2 + slack);
    for (const b of circles.slice(index + 1)) {
      const apart = Math.hypot(a.x - b.x, a.y - b.y);
      expect(apart).toBeGreaterThanOrEqual((a.diameter + b.diameter) / 2 - slack);
    }
  });
}

describe('packing', () => {
  test('of equal wires', () => {
    for (const count of [1, 2, 3, 7, 12, 19, 30, 37, 61]) {
      checkPacking(new Array<number>(count).fill(1.6));
    }
  });

  test('of any wires, in any order', () => {
    const wires = fc.array(fc.double({ min: 0.8, max: 6, noNaN: true }), {
      minLength: 1,
      maxLength: 14
    });
    fc.assert(
      fc.property(wires, (diameters) => {
        checkPacking(diameters);
      }),
      { seed: 3, numRuns: 25 }
    );
  });

  test('is never below what the wires need at the least, and not far from the estimate', () => {
    const wires = fc.array(fc.constantFrom(1.3, 1.6, 1.8, 2.1, 2.4, 4.1), {
      minLength: 3,
      maxLength: 30
    });
    fc.assert(
      fc.property(wires, (diameters) => {
        const packed = packCircles(diameters).diameter;
        const [first = 0, second = 0] = [...diameters].sort((a, b) => b - a);
        const area = Math.sqrt(diameters.reduce((sum, d) => sum + d * d, 0));
        expect(packed).toBeGreaterThanOrEqual(first + second);
        expect(packed).toBeGreaterThan(area);
        expect(packed).toBeLessThan(Math.max(1.25 * area, 1.02 * (first + second)));
      }),
      { seed: 4, numRuns: 20 }
    );
  });

  test('a few thin wires lie on one side of a thick cable, not all round it', () => {
    const thin = new Array<number>(6).fill(1);
    expect(packCircles([10, ...thin]).diameter).toBeLessThan(11.1);
  });

  test('gives the same answer every time, whatever the order', () => {
    const diameters = [1.3, 1.6, 1.6, 2.4, 4.1, 1.8];
    const once = packCircles(diameters).diameter;
    expect(packCircles([...diameters].reverse()).diameter).toBe(once);
    expect(packCircles(diameters.map((d) => d + 1e-13)).diameter).toBe(once);
  });

  test.each([
    [[]],
    [[0]],
    [[1, -1]],
    [[1, NaN]],
    [[1, Infinity]],
    [[1, 0.001]],
    [new Array<number>(401).fill(1)]
  ])('refuses %j', (diameters) => {
    expect(() => packCircles(diameters)).toThrow(SumError);
  });
});

describe('the search', () => {
  // The slope that the search goes by, against differences of the energy itself.
  test('has the right slope', () => {
    const radii = Float64Array.of(1, 0.8, 1.2, 0.5);
    const at = Float64Array.of(0.1, 0.2, 1, 0.4, -0.9, 0.3, 0.2, -1.1);
    const energy = overlapEnergy(radii, 1.5);
    const slope = new Float64Array(at.length);
    energy(at, slope);
    const step = 1e-6;
    at.forEach((_, index) => {
      const nudged = (by: number): number => {
        const moved = at.slice();
        moved[index]! += by;
        return energy(moved, new Float64Array(at.length));
      };
      expect(slope[index]).toBeCloseTo((nudged(step) - nudged(-step)) / (2 * step), 5);
    });
  });

  // Rosenbrock's valley, a standard trial of such methods: least at (1, 1).
  test('walks a curved valley to its end', () => {
    const found = minimise(
      (at, slope) => {
        const [x = 0, y = 0] = at;
        slope[0] = -2 * (1 - x) - 400 * x * (y - x * x);
        slope[1] = 200 * (y - x * x);
        return (1 - x) ** 2 + 100 * (y - x * x) ** 2;
      },
      Float64Array.of(-1.2, 1),
      { maxSteps: 500, enough: 1e-14, leastGain: 0 }
    );
    expect(found[0]).toBeCloseTo(1, 5);
    expect(found[1]).toBeCloseTo(1, 5);
  });
});

describe('round a bundle', () => {
  test('the clamp is rounded up to a sixteenth, and an exact fit stays', () => {
    expect(bundle([6.35])).toMatchObject({ clampSixteenths: 4, clampMm: 6.35 });
    expect(bundle([6.36])).toMatchObject({ clampSixteenths: 5 });
  });
  test('a sleeve slips over and still grips, or there is none', () => {
    expect(sleeveOver(2)).toBe(3.2);
    expect(sleeveOver(0.5)).toBeNull();
    expect(sleeveOver(40)).toBeNull();
  });
  test('too thick for any clamp is said', () => {
    expect(() => bundle([60, 60])).toThrow(/4 in/);
  });
  // "Calculating wire and cable bundle size", its mixed example prints 4.95 mm; exact is 4.914.
  test('the estimate stands beside it', () => {
    const wires = [1.19, 1.19, 1.19, 1.4, 1.4, 1.4, 1.4, 1.4, 1.65];
    expect(bundleEstimate(wires)).toBeCloseTo(4.914, 3);
    expect(() => bundleEstimate([1, NaN])).toThrow(SumError);
    expect(() => bundleEstimate([])).toThrow(SumError);
  });
});
