import { describe, expect, test } from 'vitest';
import {
  cableTypes,
  classLadder,
  findCableKind,
  findCableType,
  findLoopClamp,
  findWireStyle,
  heatShrinksOver,
  hookUpGauges,
  strandings,
  strandingsOf,
  wireDiameters,
  wireStyles
} from '#handbook/index.ts';

describe('hook-up wire', () => {
  // Source: published guide to UL 1007, 1015 and 1061; UL AWM style pages of the others.
  test.each([
    ['1007', 300, 80, 0.406],
    ['1015', 600, 105, 0.762],
    ['1001', 300, 80, 0.229],
    ['1331', 600, 150, 0.508],
    ['10203', 1000, 150, 0.508],
    ['10236', 300, 105, 0.381],
    ['1638', 300, 90, 0.381],
    ['10127', 300, 60, 0.457]
  ])('UL %s: %i V, %i C, wall %f mm', (style, volts, celsius, wallMm) => {
    expect(findWireStyle(style)).toMatchObject({ volts, celsius, wallMm, mark: 'verified' });
  });

  // Source: as marked from memory in the table itself; a lead whose style gives no volts has none.
  test('a style without volts of its own gives none', () => {
    expect(findWireStyle('UL 1213')?.volts).toBeNull();
    expect(findWireStyle('UL3239')?.volts).toBeNull();
  });

  test.each([
    'UL 1015',
    'ul1015',
    '1015',
    'AWM 1015',
    'AWM STYLE 1015 VW-1 105C 600V',
    'UL style 1015'
  ])('%s is UL 1015', (text) => expect(findWireStyle(text)?.name).toBe('UL 1015'));
  test.each(['', 'cloth', '600', '9999', 'rubber 1925'])('"%s" is no style', (text) =>
    expect(findWireStyle(text)).toBeNull()
  );

  test('each style stands once', () => {
    expect(new Set(wireStyles.map((row) => row.style)).size).toBe(wireStyles.length);
  });

  // Source: published stranded wire chart. Its resistances follow its strands to ten per cent,
  // save the two rows that repeat the solid value: copper at 20 C has 10.371 ohm per circular mil foot.
  test('a strand count agrees with the printed resistance', () => {
    const checked = strandings.filter(({ name }) => name !== '7/38' && name !== '7/36');
    expect(checked.length).toBe(strandings.length - 2);
    for (const { strands, strandAwg, ohmsPer1000Ft } of checked) {
      const mils = 5 * 92 ** ((36 - strandAwg) / 39);
      const computed = 10_371 / (strands * mils ** 2);
      expect(Math.abs(computed / ohmsPer1000Ft - 1)).toBeLessThan(0.14);
    }
  });

  test('22 AWG is sold as 7/30, 0.030 in over the strands', () => {
    expect(strandingsOf(22)[0]).toMatchObject({ name: '7/30', conductorMm: 0.762 });
    expect(hookUpGauges).toContain(22);
  });

  // Source: published overall diameters; derived check: conductor 7/30 + 2 x 16 mil = 1.57 mm.
  test('published diameters are conductor + 2 walls, to the printed digit', () => {
    const wall = findWireStyle('1007')!.wallMm!;
    const printed = wireDiameters.find((row) => row.awg === 22)!.outsideMm;
    expect(strandingsOf(22)[0]!.conductorMm + 2 * wall).toBeCloseTo(printed, 1);
  });

  // Common practice, no source.
  test('the ladder rises from 300 V to 40 kV', () => {
    const steps = classLadder.map(({ volts }) => volts);
    expect(steps).toEqual(steps.toSorted((a, b) => a - b));
    expect([steps[0], steps[steps.length - 1]]).toEqual([300, 40_000]);
  });
});

describe('cables', () => {
  // Source: published coaxial cable specifications.
  test('RG-59 as printed', () => {
    const cable = findCableType('RG59/U')!;
    expect(cable).toMatchObject({ velocity: 0.66, picofaradsPerFoot: 21, impedanceOhm: 75 });
    expect(cable.spacingMm! / 25.4).toBeCloseTo(0.146, 3);
    expect(cable.loss[0]).toEqual({ mhz: 10, dbPer100Ft: 1.1 });
  });

  // Source: coax formulae of line theory (138 log10 D/d over root er), er = 2.26 from memory.
  test.each(['RG-59', 'RG-11A'])('%s: geometry gives the nominal impedance within 6 %%', (name) => {
    const cable = cableTypes.find((row) => row.name === name)!;
    const ohms = (138 * Math.log10(cable.spacingMm! / cable.conductorMm!)) / Math.sqrt(2.26);
    expect(Math.abs(ohms / cable.impedanceOhm! - 1)).toBeLessThan(0.06);
  });

  test.each([
    ['coax to IF', 'coax'],
    ['75 ohm', 'coax'],
    ['twin lead', 'twin lead'],
    ['300-ohm line', 'twin lead'],
    ['shielded pair to volume control', 'shielded pair'],
    ['shielded grid lead', 'shielded wire']
  ])('%s is %s', (text, kind) => expect(findCableKind(text)).toBe(kind));

  test('words that name no kind of cable name none', () => {
    expect(findCableKind('yoke harness')).toBeNull();
    expect(findCableType('yoke harness')).toBeNull();
    expect(findCableType('RG-99')).toBeNull();
  });

  test('twin lead comes in two gauges', () => {
    expect(findCableType('300 ohm twin lead, 22 AWG')?.name).toContain('22 AWG');
    expect(findCableType('twin-lead')?.impedanceOhm).toBe(300);
  });
});

describe('sleeves and clamps', () => {
  // Source: 2:1 heat-shrink data sheet; rule recovered < outside < supplied.
  test('a 2.0 mm lead takes the 3.2/1.6 sleeve, or the tighter 2.4/1.2', () => {
    expect(heatShrinksOver(2).map((row) => `${row.suppliedMm}/${row.recoveredMm}`)).toEqual([
      '2.4/1.2',
      '3.2/1.6'
    ]);
    expect(heatShrinksOver(50)).toEqual([]);
  });

  // Source: from memory: the dash number counts sixteenths of an inch; -4 is 1/4 in.
  test('loop clamps', () => {
    expect(findLoopClamp(6.35)?.dash).toBe(4);
    expect(findLoopClamp(6.4)?.dash).toBe(5);
    expect(findLoopClamp(200)).toBeNull();
  });
});
