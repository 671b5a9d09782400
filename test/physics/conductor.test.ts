import { describe, expect, test } from 'vitest';
import {
  circularMils,
  ohmPerMetre,
  strandedAreaMm2,
  temperatureFactor,
  tinnedFactor,
  wireAreaMm2,
  wireDiameterMm,
  wireResistanceOhm,
  SumError
} from '#physics/index.ts';

const ohmPerKft = (awg: number): number => wireResistanceOhm({ awg, lengthM: 304.8 });

describe('gauge', () => {
  // ASTM B258 fixes two sizes: 36 AWG = 0.0050 in, 4/0 = 0.4600 in.
  test('fixed points', () => {
    expect(wireDiameterMm(36) / 25.4).toBeCloseTo(0.005, 12);
    expect(wireDiameterMm(-3) / 25.4).toBeCloseTo(0.46, 12);
  });

  // GNU units 2.22, `units 'awg(22)' mm` and mil.
  test('22 AWG', () => {
    expect(wireDiameterMm(22)).toBeCloseTo(0.6438033, 6);
    expect(wireDiameterMm(22) / 0.0254).toBeCloseTo(25.346587, 5);
    expect(wireAreaMm2(22)).toBeCloseTo(0.3255, 4);
    expect(circularMils(22)).toBeCloseTo(642.4, 0);
  });

  test.each([22.5, -4, 51, NaN, Infinity])('%s is refused', (awg) => {
    expect(() => wireDiameterMm(awg)).toThrow(SumError);
  });
});

describe('resistance', () => {
  // A published wire table, ohm per 1000 ft at 20 C; 0.2 %, for the tables differ by that much.
  test.each([
    [10, 0.9989],
    [12, 1.588],
    [14, 2.525],
    [16, 4.016],
    [18, 6.385],
    [20, 10.15],
    [22, 16.14],
    [24, 25.67],
    [26, 40.81]
  ])('%s AWG is %s ohm per 1000 ft', (awg, expected) => {
    expect(Math.abs(ohmPerKft(awg) / expected - 1)).toBeLessThan(0.002);
  });

  // 0.00393 per kelvin, annealed copper.
  test('at 65 C', () => {
    expect(temperatureFactor(65)).toBeCloseTo(1.17685, 10);
    expect(ohmPerMetre({ awg: 22, temperatureC: 65 }) * 1000).toBeCloseTo(62.33, 1);
  });

  // ASTM B33-04 Table 2: 0.15940 and 0.16454 over 0.15328 ohm g / m2.
  test('tinned: the band goes by the diameter of the wire or of the strand', () => {
    expect(tinnedFactor(0.0253 * 25.4)).toBeCloseTo(1.0399, 4);
    expect(tinnedFactor(0.01 * 25.4)).toBeCloseTo(1.0735, 4);
    expect(tinnedFactor(wireDiameterMm(24))).toBeCloseTo(1.0399, 4);
    const strands = { strands: 7, strandAwg: 30 };
    const tinned = ohmPerMetre({ awg: 22, stranding: strands, plating: 'tinned' });
    expect(tinned / ohmPerMetre({ awg: 22, stranding: strands })).toBeCloseTo(1.0735, 4);
    expect(() => tinnedFactor(0.05)).toThrow(/outside the table/);
    expect(() => tinnedFactor(12)).toThrow(SumError);
  });

  // 7/30 is 703 circular mils by strand against 642 for solid 22.
  test('stranded', () => {
    const cmil = strandedAreaMm2({ strands: 7, strandAwg: 30 }) / (Math.PI / 4) / 0.0254 ** 2;
    expect(cmil).toBeCloseTo(703.5, 0);
  });

  test('a length below zero is refused with the value and the limit', () => {
    expect(() => wireResistanceOhm({ awg: 22, lengthM: -1 })).toThrow(/-1.*0 to 100000 m/);
  });
});
