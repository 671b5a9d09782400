// Rules of the trade that the study must keep. Common practice, no source, unless a line names one.
import { buildStudy, type WireStudy } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import type { WireOptions } from '../helpers/chassis-options.ts';
import { chassis } from '../helpers/chassis.ts';

const heater = (amps: number) => [{ kind: 'heater', from: '1', to: '2', volts: 6.3, amps }];

const studyOf = (options: WireOptions, policy = {}): WireStudy => {
  const document = chassis('Bench set', policy)
    .strip('TS1', 2)
    .strip('TS2', 2)
    .wire(1, 'TS1-1', 'TS2-1', options)
    .build();
  return buildStudy(document).wires.get('w1')!;
};

describe('insulation class: common practice, no source', () => {
  it('a rail of 400 V dc needs the 600 V class, and 300 V wire is not enough', () => {
    const { need, stress } = studyOf({ function: 'B+', dcV: 400 });
    expect(stress).toMatchObject({ volts: 400, atLeast: false });
    expect(need).toMatchObject({ requiredV: 600, preferredV: 600 });
    expect(need!.askedV).toBeGreaterThan(300);
  });

  it('nothing on a supply rail goes below 600 V, however low the rail', () => {
    expect(studyOf({ function: 'B+', dcV: 90 }).need).toMatchObject({ requiredV: 600 });
    expect(studyOf({ function: 'audio', dcV: 90 }).need).toMatchObject({ requiredV: 300 });
  });

  it('a second-anode lead at 16 kV needs 20 kV at least and 25 kV by preference', () => {
    // 16 x 1.25 = 20.0 exactly, no step above it; 16 x 1.5 = 24, the next step is 25.
    const { need } = studyOf({ function: 'second anode', dcV: 16_000 });
    expect(need).toMatchObject({ requiredV: 20_000, preferredV: 25_000, beyondLadder: false });
    expect(need!.basis).toBe('16 kV x 1.25 = 20 kV');
  });

  it('a few kilovolts of pulse on a yoke lead ask for the 5 kV class, counted from dc + pulse', () => {
    // 285 V + 3.4 kV = 3685 V; x 1.25 = 4606.25 V.
    const { need, stress } = studyOf({ function: 'horizontal yoke', dcV: 285, pulseV: 3400 });
    expect(stress).toMatchObject({ volts: 3685, atLeast: false });
    expect(need!.askedV).toBe(4606.25);
    expect(need).toMatchObject({ requiredV: 5000, preferredV: 10_000 });
  });

  it('the same lead with its dc alone is a lower bound, not a 600 V wire', () => {
    const { need, stress, recommended } = studyOf({ function: 'horizontal yoke', dcV: 285 });
    expect(stress).toMatchObject({ volts: 285, atLeast: true });
    expect(need).toMatchObject({ requiredV: 600, atLeast: true });
    expect(recommended!.atLeast).toBe(true);
  });

  it('alternating volts count by their peak: 1.414 x 275 V is 389 V and past 300 V wire', () => {
    const { stress, need } = studyOf({ function: 'ac to rectifier plate, line', acV: 275 });
    expect(stress!.volts).toBeCloseTo(388.9087, 3);
    expect(need!.requiredV).toBe(600);
  });

  it('follows the policy of the document', () => {
    const strict = studyOf({ function: 'B+', dcV: 400 }, { marginRequired: 2, supplyFloorV: 1000 });
    expect(strict.need).toMatchObject({
      requiredV: 1000,
      basis: 'supply rail: 1 kV at least (400 V x 2 = 800 V)'
    });
    const short = studyOf({ dcV: 400 }, { ladderV: [300] });
    expect(short.need).toMatchObject({ requiredV: 300, beyondLadder: true });
  });
});

describe('the line side: common practice, no source', () => {
  const line = chassis()
    .part('plug', 'P1', ['1', '2'], {
      elements: [{ kind: 'source', current: 'ac', from: '1', to: '2', volts: 117 }]
    })
    .part('switch', 'S1', ['1', '2'], {
      elements: [{ kind: 'link', what: 'switch', from: '1', to: '2', closed: false }]
    })
    .part('transformer', 'T1', ['black', 'black 2', 'red', 'red 2'])
    .wire(1, 'P1-1', 'S1-1')
    .wire(2, 'S1-2', 'T1 black', { acV: 117 })
    .wire(3, 'P1-2', 'T1 black 2')
    .wire(4, 'T1 red', 'T1 red 2', { acV: 117, dcV: 0, function: 'winding' })
    .build();

  it('is 600 V at least from the plug to the primary, past a switch that is open', () => {
    const { wires } = buildStudy(line);
    // 117 V x 1.414 x 1.25 = 206.8 V: by its volts alone 300 V wire would do, as on the winding.
    for (const id of ['w1', 'w2', 'w3']) {
      expect(wires.get(id)!.need).toMatchObject({
        requiredV: 600,
        basis: expect.stringMatching(
          /^line side: 600 V at least \(165\.\d+ V x 1\.25 = 206\.8 V\)$/
        )
      });
    }
    expect(wires.get('w4')!.need!.requiredV).toBe(300);
  });

  it('goes by its function where no part says that it is the line', () => {
    expect(studyOf({ function: 'power transformer primary', acV: 117 }).need!.requiredV).toBe(600);
    expect(studyOf({ function: 'audio plate', acV: 117, dcV: 0 }).need!.requiredV).toBe(300);
  });

  it('follows the policy of the document', () => {
    const { need } = studyOf({ function: 'line cord', acV: 117 }, { lineFloorV: 300 });
    expect(need).toMatchObject({ requiredV: 300 });
  });
});

describe('conductor: common practice, no source', () => {
  it('ordinary runs are 22 AWG solid tinned', () => {
    expect(studyOf({ function: 'B+', dcV: 285 }).recommended).toMatchObject({
      awg: 22,
      stranding: 'solid',
      plating: 'tinned',
      classV: 600,
      why: 'ordinary run: 22 AWG solid tinned'
    });
  });

  it('heater branches are 20 AWG solid tinned', () => {
    expect(studyOf({ function: 'heaters 6.3 V', acV: 6.3 }).recommended).toMatchObject({
      awg: 20,
      stranding: 'solid',
      plating: 'tinned'
    });
  });

  it('a wire without words that ends at a heater pin is a heater branch', () => {
    const document = chassis()
      .tube('V1', '6CG7')
      .ground('G1')
      .strip('TS1', 2)
      .wire(1, 'V1-4', 'TS1-1')
      .wire(2, 'V1-6', 'TS1-2')
      .build();
    const { wires } = buildStudy(document);
    // 6CG7: heater pins 4 and 5, its data sheet.
    expect(wires.get('w1')!.recommended!.awg).toBe(20);
    expect(wires.get('w2')!.recommended!.awg).toBe(22);
  });

  it('is no thinner than the wire that was there', () => {
    expect(studyOf({ function: 'heaters', acV: 6.3, awg: 16 }).recommended!.awg).toBe(16);
    expect(studyOf({ function: 'B+', dcV: 285, awg: 26 }).recommended!.awg).toBe(22);
  });

  it('a heater trunk goes by the sum of what it feeds, without any length or place', () => {
    const trunk = (found: WireOptions = {}) =>
      chassis()
        .part('transformer', 'T1', ['green', 'green 2'])
        .ground('G1')
        .part('other', 'X1', ['1', '2'], { elements: heater(5.5) })
        .part('other', 'X2', ['1', '2'], { elements: heater(0.9) })
        .wire(1, 'T1 green', 'X1-1', { function: 'heaters', acV: 6.3, ...found })
        .wire(2, 'X1-1', 'X2-1', { function: 'heaters' })
        .wire(3, 'X1-2', 'G1')
        .wire(4, 'X2-2', 'G1')
        .build();
    const { wires } = buildStudy(trunk());
    expect(wires.get('w1')!.current!.amps).toBeCloseTo(6.4, 6);
    expect(wires.get('w2')!.current!.amps).toBeCloseTo(0.9, 6);
    // 6.4 A: 20 AWG has 4 A / 0.615 x (30 / 35)^0.5 x 0.825 = 4.97 A, 18 AWG 7.45 A.
    expect(wires.get('w1')!.recommended).toMatchObject({
      awg: 18,
      why: expect.stringMatching(/^by its 6\.4 A/)
    });
    expect(wires.get('w2')!.recommended!.awg).toBe(20);
    expect(buildStudy(trunk({ awg: 16 })).wires.get('w1')!.recommended!.awg).toBe(16);
  });

  it('is stranded where it flexes', () => {
    const document = chassis()
      .unit('Main chassis')
      .strip('TS1', 2)
      .unit('Neck and yoke')
      .part('yoke', 'L3', ['1', '2'])
      .wire(51, 'TS1-1', 'L3-1', { dcV: 285, pulseV: 3400 })
      .build();
    expect(buildStudy(document).wires.get('w51')!.recommended!.stranding).toBe('stranded');
  });

  it('is not proposed for a wire that is a part, or for a lead of one', () => {
    expect(studyOf({ isPart: 'resistance cord', acV: 117 }).recommended).toBeNull();
    expect(studyOf({ construction: 'component lead', dcV: 285 }).recommended).toBeNull();
  });

  it('what is not known is proposed at the highest rail of its unit and not below', () => {
    const { recommended, need } = (() => {
      const document = chassis()
        .strip('TS1', 4)
        .wire(1, 'TS1-1', 'TS1-2', { function: 'boosted B+', dcV: 560 })
        .wire(2, 'TS1-3', 'TS1-4')
        .build();
      return buildStudy(document).wires.get('w2')!;
    })();
    expect(need).toBeNull();
    // 560 V x 1.25 = 700 V: the 1 kV class.
    expect(recommended).toMatchObject({ classV: 1000, atLeast: true });
  });

  const sweep = () =>
    chassis()
      .strip('TS1', 6)
      .strip('TS2', 6)
      .wire(1, 'TS1-1', 'TS2-1', { function: 'B+', dcV: 285 })
      .wire(2, 'TS1-2', 'TS2-2', { function: 'horizontal output plate', dcV: 560, pulseV: 4500 });

  it('nor below the highest pulse there, unless its function says that none gets to it', () => {
    const { wires } = buildStudy(
      sweep()
        .wire(3, 'TS1-3', 'TS2-3')
        .wire(4, 'TS1-4', 'TS2-4', { function: 'vertical hold' })
        .wire(5, 'TS1-5', 'TS2-5', { function: 'horizontal yoke', dcV: 285 })
        .build()
    );
    // 560 V + 4.5 kV = 5060 V; x 1.25 = 6325 V: the 10 kV class.
    expect(wires.get('w3')!.recommended).toMatchObject({
      classV: 10_000,
      classBasis: 'as the highest pulse there, horizontal output plate'
    });
    expect(wires.get('w4')!.recommended).toMatchObject({ classV: 600 });
    expect(wires.get('w5')!.recommended).toMatchObject({ classV: 10_000, atLeast: true });
  });

  it('nor below the highest class in its cable', () => {
    const { wires } = buildStudy(
      chassis()
        .cable('yoke cable', 'multi-conductor')
        .unit('Main chassis')
        .strip('TS1', 2)
        .unit('Neck')
        .strip('TS2', 2)
        .wire(1, 'TS1-1', 'TS2-1', { dcV: 0, pulseV: 2000, cable: 'yoke cable' })
        .wire(2, 'TS1-2', 'TS2-2', { function: 'audio', cable: 'yoke cable' })
        .build()
    );
    expect(wires.get('w2')!.need).toBeNull();
    // 2 kV x 1.25 = 2.5 kV.
    expect(wires.get('w2')!.recommended).toMatchObject({
      classV: 3000,
      atLeast: true,
      classBasis: 'as wire 1 in the same cable, 2 kV peak'
    });
  });
});
