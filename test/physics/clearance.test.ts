import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airGap, creepage, SumError, touchLimit } from '#physics/index.ts';

describe('air gap', () => {
  const volts = fc.double({ min: 0, max: 100_000, noNaN: true });
  test('never falls as the volts rise, and the advice is never below the IEC figure', () => {
    fc.assert(
      fc.property(volts, volts, fc.constantFrom(1, 2, 3), (a, b, pollution) => {
        const at = (peakV: number) => airGap({ peakV, field: 'inhomogeneous', pollution });
        const [low, high] = [at(Math.min(a, b)), at(Math.max(a, b))];
        expect(high.clearanceMm).toBeGreaterThanOrEqual(low.clearanceMm);
        expect(high.adviceMm).toBeGreaterThanOrEqual(low.adviceMm);
        expect(low.adviceMm).toBeGreaterThanOrEqual(low.clearanceMm);
      }),
      { seed: 5 }
    );
  });
  test('a homogeneous field never asks for more', () => {
    fc.assert(
      fc.property(volts, (peakV) => {
        const even = airGap({ peakV, field: 'homogeneous', pollution: 1 }).clearanceMm;
        const uneven = airGap({ peakV, field: 'inhomogeneous', pollution: 1 }).clearanceMm;
        expect(even).toBeLessThanOrEqual(uneven);
      }),
      { seed: 6 }
    );
  });
  test('the height above the sea counts from 2000 m', () => {
    const at = (altitudeM: number) =>
      airGap({ peakV: 2500, field: 'inhomogeneous', pollution: 2, altitudeM }).clearanceMm;
    expect(at(-100)).toBe(1.5);
    expect(at(2000)).toBe(1.5);
    expect(at(2500)).toBeCloseTo(1.5 * 1.07, 10);
    expect(() => at(20_001)).toThrow(SumError);
  });
});

describe('creepage', () => {
  test('takes the next row up and says so', () => {
    const found = creepage({ rmsV: 251, pollution: 2, group: 'II' });
    expect(found).toMatchObject({ creepageMm: 2.2, rowV: 320 });
    expect(found.basis).toMatch(/next row up, not interpolated/);
  });
  test('binary fractions push nothing to the next row', () => {
    expect(creepage({ rmsV: 2500 * 0.1 + 1e-10, pollution: 2, group: 'I' }).rowV).toBe(250);
  });
  test('pollution degree 1 is never less than 2', () => {
    const clean = creepage({ rmsV: 500, pollution: 1, group: 'I' });
    expect(clean.creepageMm).toBe(2.5);
    expect(clean.basis).toMatch(/taken as 2/);
  });
});

// IEC 60335-1 clause 8.1.4 as quoted: 42.4 V; 0.1 uF to 450 V; 45 uC to 15 kV; 350 mJ above.
describe('touch limits', () => {
  test.each([
    [1, 42.4, false],
    [1, 42.5, true],
    [1e-7, 450, false],
    [1.1e-7, 450, true],
    [3e-9, 15_000, false],
    [3.1e-9, 15_000, true],
    [2e-9, 16_000, false],
    [2e-9, 20_000, true]
  ])('%s F at %s V is over: %s', (farads, volts, isOver) => {
    const limit = touchLimit(farads, volts);
    expect(limit.isOver).toBe(isOver);
    expect(limit.words).not.toMatch(/safe/);
  });
});
