// How volts spread: over nets, by windings, heaters and sources; and what counts as missing.
import { buildStudy, type WireStudy } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import { chassis, type ChassisBuilder } from '../helpers/chassis.ts';

const wiresOf = (set: ChassisBuilder): Record<string, WireStudy> =>
  Object.fromEntries(buildStudy(set.build()).wires);

describe('declared volts', () => {
  it('spread over the net, the largest magnitude wins and says where it is from', () => {
    const { w1, w2, w3 } = wiresOf(
      chassis()
        .strip('TS1', 4)
        .wire(1, 'TS1-1', 'TS1-2', { dcV: 235 })
        .wire(2, 'TS1-2', 'TS1-3', { dcV: -285 })
        .wire(3, 'TS1-3', 'TS1-4', { acV: 6 })
    );
    expect(w1!.carries.dcV).toEqual({ value: -285, how: 'net', basis: 'declared on wire 2' });
    expect(w2!.carries.dcV).toEqual({
      value: -285,
      how: 'declared',
      basis: 'declared on this wire'
    });
    expect(w3!.carries.dcV!.value).toBe(-285);
    expect(w1!.carries.acV).toMatchObject({ value: 6, how: 'net' });
    expect(w1!.stress!.volts).toBeCloseTo(285 + 6 * Math.SQRT2, 9);
    expect(w1!.stress!.basis).toBe('-285 V dc + 1.414 x 6 V ac');
  });

  it('know nothing where nobody declared anything', () => {
    const { w1 } = wiresOf(chassis().strip('TS1', 2).wire(1, 'TS1-1', 'TS1-2'));
    expect(w1).toMatchObject({ stress: null, need: null });
    expect(w1!.carries).toEqual({ dcV: null, acV: null, pulseV: null, amps: null });
  });

  it('on the chassis stay with their own wire', () => {
    const { w1, w2 } = wiresOf(
      chassis()
        .strip('TS1', 2)
        .ground('G1')
        .ground('G2')
        .wire(1, 'TS1-1', 'G1', { dcV: 285 })
        .wire(2, 'TS1-2', 'G2')
    );
    expect(w1!.stress!.volts).toBe(285);
    expect(w2!.stress).toMatchObject({ volts: 0, atLeast: false, basis: 'at chassis potential' });
    expect(w2!.need).toMatchObject({ requiredV: 300, atLeast: false });
  });

  it('of a wire that does not join its ends are the worse of both', () => {
    const { w2 } = wiresOf(
      chassis()
        .strip('TS1', 4)
        .wire(1, 'TS1-1', 'TS1-2', { function: 'ac line', acV: 117 })
        .wire(2, 'TS1-2', 'TS1-3', { isPart: 'resistance cord', function: 'ac line' })
        .wire(3, 'TS1-3', 'TS1-4', { acV: 40 })
    );
    expect(w2!.carries.acV!.value).toBe(117);
  });
});

describe('heaters', () => {
  const supply = (set: ChassisBuilder) =>
    set
      .tube('V1', '6CG7')
      .ground('G1')
      .ground('G2')
      .part('transformer', 'T1', ['green 1', 'green 2'], {
        elements: [{ kind: 'source', current: 'ac', volts: 6.3, from: 'green 1', to: 'green 2' }]
      });

  it('a trunk with chassis return stands at 6.3 V and no dc, with nothing declared', () => {
    const { w1, w2 } = wiresOf(
      supply(chassis())
        .wire(1, 'T1 green 1', 'V1-4', { function: 'heaters' })
        .wire(2, 'T1 green 2', 'G1')
        .wire(3, 'V1-5', 'G2')
    );
    expect(w1!.carries.dcV).toMatchObject({ value: 0, how: 'part' });
    expect(w1!.carries.acV).toMatchObject({ value: 6.3, how: 'part', basis: 'winding of T1' });
    expect(w1!.stress).toMatchObject({ atLeast: false, basis: '1.414 x 6.3 V ac' });
    // 6.3 V rms peaks at 8.9095 V.
    expect(w1!.stress!.volts).toBeCloseTo(8.90955, 5);
    expect(w2!.stress!.volts).toBe(0);
  });

  it('a heater pin whose other side is on the chassis tells the same without any winding', () => {
    const { w1 } = wiresOf(
      chassis()
        .tube('V1', '6CG7')
        .ground('G2')
        .strip('TS1', 1)
        .wire(1, 'TS1-1', 'V1-4')
        .wire(3, 'V1-5', 'G2')
    );
    expect(w1!.carries.acV).toMatchObject({ value: 6.3, basis: 'rated heater of V1' });
    expect(w1!.stress!.atLeast).toBe(false);
  });

  it('declared 6.3 V that nothing ties to the chassis ride on unknown dc', () => {
    const { w1 } = wiresOf(
      chassis().strip('TS1', 2).wire(1, 'TS1-1', 'TS1-2', { function: 'heaters', acV: 6.3 })
    );
    expect(w1!.stress).toMatchObject({ atLeast: true, missing: ['the dc that it rides on'] });
  });

  it('a floating winding counts whole on both of its sides', () => {
    const { w1, w2 } = wiresOf(
      supply(chassis()).wire(1, 'T1 green 1', 'V1-4', { dcV: 100 }).wire(2, 'T1 green 2', 'V1-5')
    );
    // The dc that one side declares holds that side; the other is above it by the winding.
    expect(w1!.stress!.volts).toBe(100);
    expect(w2!.stress!.volts).toBeCloseTo(100 + 6.3 * Math.SQRT2, 9);
    const floating = wiresOf(
      supply(chassis()).wire(1, 'T1 green 1', 'V1-4').wire(2, 'T1 green 2', 'V1-5')
    );
    expect(floating['w1']!.carries.acV).toMatchObject({
      value: 6.3,
      basis: 'winding of T1, either side'
    });
    expect(floating['w2']!.stress!.atLeast).toBe(true);
  });

  it('a rectifier filament stands at its rail, loop and winding too', () => {
    const { w1, w2, w3 } = wiresOf(
      chassis()
        .tube('V7', '5U4GB')
        .strip('TS1', 2)
        .part('transformer', 'T1', ['y1', 'y2'], {
          elements: [{ kind: 'source', current: 'ac', volts: 5, from: 'y1', to: 'y2' }]
        })
        .wire(1, 'T1 y1', 'V7-2')
        .wire(2, 'T1 y2', 'V7-8')
        .wire(3, 'V7-8', 'TS1-1', { function: 'B+', dcV: 230 })
    );
    expect(w3!.carries.dcV).toMatchObject({ value: 230, how: 'declared' });
    // 230 V x 1.25 would be content with 300 V wire; the rail's floor holds for its filament as well.
    expect(w1!.carries.dcV!.value).toBe(230);
    for (const wire of [w1, w2, w3]) expect(wire!.need!.requiredV).toBe(600);
  });

  it('a filament loop at 18 kV inherits the second anode', () => {
    const { w1, w2 } = wiresOf(
      chassis()
        .tube('V10', '1B3GT', { pins: 8 })
        .part('transformer', 'T3', ['F1', 'F2'])
        .part('picture tube', 'V11', ['anode'])
        .wire(1, 'T3 F1', 'V10-2', { isPart: 'filament loop' })
        .wire(2, 'T3 F2', 'V10-7', { isPart: 'filament loop' })
        .wire(3, 'V10-2', 'V11 anode', { function: 'second anode', dcV: 18_000 })
    );
    expect(w1!.carries.dcV!.value).toBe(18_000);
    // 1B3GT: filament pins 2 and 7, from memory; the other end stands at the same dc through it.
    expect(w2!.carries.dcV).toMatchObject({ value: 18_000, how: 'part' });
    for (const wire of [w1, w2]) expect(wire!.need!.requiredV).toBe(25_000);
  });

  it('in a series string every junction may see the whole line when a heater opens', () => {
    const { w1, w2, w3 } = wiresOf(
      chassis()
        .ground('G1')
        .strip('TS1', 2)
        .tube('V1', '12BE6', { pins: 7 })
        .tube('V2', '50C5', { pins: 7 })
        .wire(1, 'TS1-1', 'V2-3', { function: 'line', acV: 117 })
        .wire(2, 'V2-4', 'V1-3')
        .wire(3, 'V1-4', 'G1')
    );
    expect(w1!.stress!.volts).toBeCloseTo(117 * Math.SQRT2, 9);
    expect(w2!.carries.acV!.value).toBe(117);
    expect(w2!.carries.dcV!.value).toBe(0);
    expect(w3!.stress!.volts).toBe(0);
  });
});

describe('windings and sources', () => {
  it('add up from the chassis on', () => {
    const { w1, w2 } = wiresOf(
      chassis()
        .ground('G1')
        .strip('TS1', 2)
        .part('transformer', 'T1', ['a', 'b', 'c'], {
          elements: [
            { kind: 'source', current: 'ac', volts: 100, from: 'a', to: 'b' },
            { kind: 'source', current: 'ac', volts: 250, from: 'b', to: 'c' }
          ]
        })
        .wire(1, 'T1 a', 'TS1-1')
        .wire(2, 'T1 b', 'TS1-2')
        .wire(3, 'T1 c', 'G1')
    );
    expect(w1!.carries.acV!.value).toBe(350);
    expect(w2!.carries.acV!.value).toBe(250);
    expect(w1!.stress!.atLeast).toBe(false);
  });

  it('a dc source stands on what its other side stands at', () => {
    const { w1, w2 } = wiresOf(
      chassis()
        .strip('TS1', 4)
        .part('other', 'B1', ['+', '-'], {
          elements: [{ kind: 'source', current: 'dc', volts: 45, from: '+', to: '-' }]
        })
        .wire(1, 'B1 -', 'TS1-1', { dcV: 100 })
        .wire(2, 'B1 +', 'TS1-2')
    );
    expect(w1!.carries.dcV!.value).toBe(100);
    expect(w2!.carries.dcV).toMatchObject({ value: 145, how: 'part' });
  });

  it('what a rail rises to cold, at high line, is what counts', () => {
    // A loaded 235 V rail whose source gives 300 V without load: x 1.1 = 330 V.
    const { w1 } = wiresOf(
      chassis()
        .strip('TS1', 2)
        .part('transformer', 'T1', ['+'], {
          elements: [{ kind: 'source', current: 'dc', volts: 235, noLoadVolts: 300, from: '+' }]
        })
        .wire(1, 'T1 +', 'TS1-1')
    );
    expect(w1!.carries.dcV!.value).toBe(235);
    expect(w1!.stress).toMatchObject({ volts: 330, basis: '330 V dc cold' });
    expect(w1!.need!.askedV).toBe(600);
  });

  it('rings of sources end', () => {
    const ring = [
      { kind: 'source', current: 'dc', volts: 10, from: '1', to: '2' },
      { kind: 'source', current: 'dc', volts: 10, from: '2', to: '3' },
      { kind: 'source', current: 'dc', volts: 10, from: '3', to: '1' }
    ];
    const { w1 } = wiresOf(
      chassis()
        .ground('G1')
        .part('other', 'B1', ['1', '2', '3'], { elements: ring })
        .wire(1, 'B1-1', 'G1')
    );
    expect(w1!.stress!.volts).toBe(0);
  });

  it('a pulse of a part stands on its net', () => {
    const { w1 } = wiresOf(
      chassis()
        .strip('TS1', 2)
        .part('transformer', 'T2', ['cap'], {
          elements: [{ kind: 'pulse', peakV: 5000, from: 'cap' }]
        })
        .wire(1, 'T2 cap', 'TS1-1', { dcV: 560 })
    );
    // 560 V + 5 kV = 5560 V; x 1.25 = 6950 V.
    expect(w1!.need).toMatchObject({ requiredV: 10_000, askedV: 6950 });
  });
});

describe('current', () => {
  it('is not spread over a net', () => {
    const { w1, w2, w3 } = wiresOf(
      chassis()
        .strip('TS1', 5)
        .wire(1, 'TS1-1', 'TS1-2', { amps: 4.8 })
        .wire(2, 'TS1-2', 'TS1-3')
        .wire(3, 'TS1-2', 'TS1-4')
    );
    expect(w1!.carries.amps).toMatchObject({ value: 4.8, how: 'declared' });
    expect(w2!.carries.amps).toBeNull();
    expect(w3!.carries.amps).toBeNull();
  });

  it('passes on where two wires meet with nothing else, through plug and jack too', () => {
    const { w2, w3 } = wiresOf(
      chassis()
        .strip('TS1', 3)
        .part('jack', 'J1', ['1'])
        .part('plug', 'P1', ['1'], { mates: 'J1' })
        .wire(1, 'TS1-1', 'TS1-2', { amps: 0.45 })
        .wire(2, 'TS1-2', 'J1')
        .wire(3, 'P1', 'TS1-3')
    );
    expect(w2!.carries.amps).toEqual({ value: 0.45, how: 'net', basis: 'in series with wire 1' });
    expect(w3!.carries.amps!.value).toBe(0.45);
  });

  it('does not where a component lead is on the lug, or a tube takes some', () => {
    const { w2, w4 } = wiresOf(
      chassis()
        .strip('TS1', 6)
        .tube('V1', '6CG7')
        .resistor('R1', '1k', 'TS1-2', 'TS1-6')
        .wire(1, 'TS1-1', 'TS1-2', { amps: 1 })
        .wire(2, 'TS1-2', 'TS1-3')
        .wire(3, 'TS1-4', 'V1-4', { amps: 2 })
        .wire(4, 'V1-4', 'TS1-5')
    );
    expect(w2!.carries.amps).toBeNull();
    expect(w4!.carries.amps).toBeNull();
  });
});
