import { describe, expect, test } from 'vitest';
import {
  cutLengthMm,
  postWrap,
  stripFor,
  SumError,
  toEighthsUp,
  twistFactor,
  wireDiameterMm
} from '#physics/index.ts';

describe('post wrap', () => {
  // "The technology of wire wrapping", strip-force chart, which conforms to MIL-STD-1130B.
  test.each([
    [30, 7],
    [28, 7],
    [26, 7],
    [24, 6],
    [22, 5],
    [20, 5],
    [18, 4],
    [16, 4]
  ])('%s AWG takes %s turns', (awg, turns) => {
    expect(postWrap({ awg, postWidthMm: 1.143, postDepthMm: 1.143 }).turns).toBe(turns);
  });

  // Common practice, no source: 30 AWG on a 0.025 in post is stripped about an inch.
  test('an inch for 30 AWG', () => {
    const { stripMm } = postWrap({ awg: 30, postWidthMm: 0.635, postDepthMm: 0.635 });
    expect(stripMm).toBeGreaterThan(22);
    expect(stripMm).toBeLessThan(26);
  });

  test.each([21, 14, 32, NaN])('%s AWG is not in the table', (awg) => {
    expect(() => postWrap({ awg, postWidthMm: 1, postDepthMm: 1 })).toThrow(SumError);
  });
});

describe('strip', () => {
  test('an unknown ending says so and counts as a lug', () => {
    expect(stripFor('hook of some kind', 22).mm).toBe(stripFor('solder lug', 22).mm);
    expect(stripFor(undefined, 22).basis).toMatch(/not known/);
  });
  test('thicker wire takes more', () => {
    for (const ending of ['solder lug', 'tube pin', 'screw', 'pad', 'cap']) {
      expect(stripFor(ending, 18).mm).toBeGreaterThan(stripFor(ending, 22).mm);
    }
  });
  test('a wrap post goes by the wrap, or as a lug for gauges that are not wrapped', () => {
    expect(stripFor('wrap post', 24).basis).toMatch(/6 turns/);
    expect(stripFor('wrap post', 12).basis).toMatch(/too thick/);
  });
});

describe('cut length', () => {
  test('adds slack and strips and rounds up', () => {
    expect(
      cutLengthMm({ pathMm: 200, slackShare: 0.05, slackMm: 10, stripFromMm: 9, stripToMm: 9 })
    ).toBe(240);
    expect(cutLengthMm({ pathMm: 200, roundUpMm: 5 })).toBe(200);
    expect(cutLengthMm({ pathMm: 200.001, roundUpMm: 5 })).toBe(205);
    expect(cutLengthMm({ pathMm: 3 * 0.1, roundUpMm: 0.1 })).toBeCloseTo(0.3, 12);
  });
  test('inches to the next eighth', () => {
    expect(toEighthsUp(25.4)).toBe(1);
    expect(toEighthsUp(25.5)).toBe(1.125);
    expect(toEighthsUp(240)).toBe(9.5);
  });
  // Geometry: unrolled, a helix is the long side of a triangle of the pitch and the circumference.
  test('twist', () => {
    expect(twistFactor({ diameterMm: 10 / Math.PI, twistMm: 10 })).toBeCloseTo(Math.SQRT2, 12);
    expect(() => twistFactor({ diameterMm: 2, twistMm: 3 })).toThrow(SumError);
    expect(twistFactor({ diameterMm: wireDiameterMm(22) + 0.8, twistMm: 25 })).toBeLessThan(1.02);
  });
});
