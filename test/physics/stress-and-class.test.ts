import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { insulationClass, stressV, defaultLadderV, SumError } from '#physics/index.ts';

describe('stress', () => {
  test('adds the peaks, whatever the sign of the dc', () => {
    expect(stressV({ dcV: -285, acRmsV: 6.3, pulsePeakV: 100 })).toBeCloseTo(393.9095, 3);
    expect(stressV({})).toBe(0);
  });
  test.each([{ dcV: NaN }, { acRmsV: -1 }, { pulsePeakV: -5 }, { dcV: 3e5 }])('%o', (bad) => {
    expect(() => stressV(bad)).toThrow(SumError);
  });
});

describe('insulation class', () => {
  // Common practice, no source.
  test.each([
    { stress: 400, required: 600, preferred: 600, why: 'a 400 V rail: 300 V wire is not enough' },
    { stress: 240, required: 300, preferred: 600, why: '240 x 1.25 is 300 exactly' },
    { stress: 16_000, required: 20_000, preferred: 25_000, why: 'a second anode at 16 kV' },
    { stress: 3500, required: 5000, preferred: 10_000, why: 'dc + pulse on a yoke lead' },
    { stress: 0, required: 300, preferred: 300, why: 'the lowest step, never none' }
  ])('$why', ({ stress, required, preferred }) => {
    const found = insulationClass({ stressV: stress });
    expect(found.required.stepV).toBe(required);
    expect(found.preferred.stepV).toBe(preferred);
    expect(found.preferred.beyondLadder).toBe(false);
  });

  test('fractions in the computer push nothing over a step', () => {
    expect(insulationClass({ stressV: 0.1 + 0.2, ladderV: [0.45, 1] }).preferred.stepV).toBe(0.45);
    expect(
      insulationClass({ stressV: 200 * 1.1 * 3, marginRequired: 1, ladderV: [660, 700] }).required
        .stepV
    ).toBe(660);
  });

  test('beyond the ladder is told, not clamped in silence', () => {
    const found = insulationClass({ stressV: 30_000 });
    expect(found.required).toEqual({ askedV: 37_500, stepV: 40_000, beyondLadder: false });
    expect(found.preferred).toEqual({ askedV: 45_000, stepV: 40_000, beyondLadder: true });
  });

  test('a floor lifts both', () => {
    expect(insulationClass({ stressV: 5, floorV: 600 }).required.stepV).toBe(600);
  });

  test.each([{ ladderV: [] }, { ladderV: [600, 300] }, { marginRequired: 0.5 }, { stressV: -1 }])(
    'refuses %o',
    (bad) => {
      expect(() => insulationClass({ stressV: 1, ...bad })).toThrow(SumError);
    }
  );

  test('never below the stress times the margin, and rises with the stress', () => {
    const volts = fc.double({ min: 0, max: 26_000, noNaN: true });
    fc.assert(
      fc.property(volts, volts, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const below = insulationClass({ stressV: low });
        const above = insulationClass({ stressV: high });
        expect(above.required.stepV).toBeGreaterThanOrEqual(below.required.stepV);
        expect(above.required.stepV * (1 + 1e-8)).toBeGreaterThanOrEqual(high * 1.25);
        expect(defaultLadderV).toContain(above.preferred.stepV);
      }),
      { seed: 1 }
    );
  });
});
