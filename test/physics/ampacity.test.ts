import { describe, expect, test } from 'vitest';
import { ampacity, bundleShare, SumError } from '#physics/index.ts';

const pvc = { ratingC: 80, ambientC: 50 };

describe('ampacity', () => {
  // "Handbook of Electronic Tables and Formulas": 22 AWG, 7 A in chassis wiring, 0.92 A at 700
  // circular mils per ampere. All other published figures lie between the two.
  test('of 22 AWG in PVC lies between the published extremes', () => {
    const { singleA } = ampacity({ awg: 22, ...pvc });
    expect(singleA).toBeGreaterThan(0.92);
    expect(singleA).toBeLessThan(7);
  });

  test('falls with the gauge number, with company and with heat', () => {
    const gauges = [10, 12, 14, 16, 18, 20, 22, 24].map((awg) => ampacity({ awg, ...pvc }).singleA);
    expect(gauges).toEqual([...gauges].sort((a, b) => b - a));
    const bundles = [1, 2, 5, 11, 15, 16, 40].map(
      (wires) => ampacity({ awg: 22, wires, ...pvc }).allowedA
    );
    expect(bundles).toEqual([...bundles].sort((a, b) => b - a));
    const hot = ampacity({ awg: 22, ratingC: 80, ambientC: 75 });
    expect(hot.singleA).toBeLessThan(ampacity({ awg: 22, ...pvc }).singleA / 2);
  });

  test('odd gauges count as the next thinner, and say so', () => {
    const odd = ampacity({ awg: 21, ...pvc });
    expect(odd.singleA).toBe(ampacity({ awg: 22, ...pvc }).singleA);
    expect(odd.basis).toMatch(/22 AWG, the next thinner/);
  });

  test('prints its basis', () => {
    expect(ampacity({ awg: 22, wires: 6, ...pvc }).basis).toMatch(/four to one.*6 wires/);
  });

  test('the bound for large bundles joins the curve', () => {
    expect(bundleShare(15)).toBe(0.385);
    expect(bundleShare(16)).toBeLessThan(0.385);
    expect(bundleShare(16)).toBeGreaterThan(0.36);
    expect(() => bundleShare(0)).toThrow(SumError);
    expect(() => bundleShare(2.5)).toThrow(SumError);
  });
});
