// Rules on what lies beside what: kilovolts, pulses, hum, tight supports and bends.
import { bendTight } from '#checks/rules/bend-tight.ts';
import { hvNear } from '#checks/rules/hv-near.ts';
import { mixedBundle } from '#checks/rules/mixed-bundle.ts';
import { noisyNeighbour } from '#checks/rules/noisy-neighbour.ts';
import { supportSize } from '#checks/rules/support-size.ts';
import { buildStudy } from '#study/index.ts';
import { expect, it } from 'vitest';
import { chassis, type ChassisBuilder } from '../helpers/chassis.ts';
import type { WireOptions } from '../helpers/chassis-options.ts';
import { ruleTester } from '../helpers/rule-tester.ts';

/** Two wires through one grommet. */
const beside =
  (first: WireOptions, second: WireOptions, route = ['G1']) =>
  (): ChassisBuilder =>
    chassis()
      .support('G1', 'grommet', [50, 0])
      .support('G2', 'grommet', [250, 0])
      .strip('TS1', 4, { at: [0, 0] })
      .strip('TS2', 4, { at: [300, 0] })
      .wire(1, 'TS1-1', 'TS2-1', { route, ...first })
      .wire(2, 'TS1-2', 'TS2-2', { route: ['G1', 'G2'], ...second });

/** The same two as conductors of one cable. */
const inOneJacket = (first: WireOptions, second: WireOptions) => (): ChassisBuilder =>
  chassis()
    .cable('lead', 'multi-conductor')
    .cable('another', 'multi-conductor')
    .support('G1', 'grommet', [50, 0])
    .support('G2', 'grommet', [250, 0])
    .strip('TS1', 4, { at: [0, 0] })
    .strip('TS2', 4, { at: [300, 0] })
    .wire(1, 'TS1-1', 'TS2-1', { route: ['G1', 'G2'], cable: 'lead', ...first })
    .wire(2, 'TS1-2', 'TS2-2', { route: ['G1', 'G2'], cable: 'lead', ...second });

const heater = { function: 'heaters', acV: 6.3, dcV: 0, ratingV: 600 };
const anode = { function: 'second anode', dcV: 18_000, ratingV: 25_000 };

it('a heater beside an 18 kV lead keeps its own class', () => {
  const { wires } = buildStudy(beside(anode, heater)().build());
  expect(wires.get('w1')!.need!.requiredV).toBe(25_000);
  expect(wires.get('w2')!.need!.requiredV).toBe(300);
});

ruleTester(hvNear, {
  valid: {
    'a lead on its own': beside(anode, heater, ['G2'].slice(1)),
    'its filament loop beside it': beside(anode, { dcV: 18_000, acV: 1.25 }),
    'a neighbour that is rated for it': beside(anode, { ...heater, ratingV: 25_000 }),
    'conductors of one cable are as their maker made them': () =>
      chassis()
        .cable('lead', 'multi-conductor')
        .strip('TS1', 4)
        .wire(1, 'TS1-1', 'TS1-2', { ...anode, cable: 'lead' })
        .wire(2, 'TS1-3', 'TS1-4', { ...heater, cable: 'lead' }),
    'nor are they where their jacket goes through a clamp': inOneJacket(anode, heater)
  },
  invalid: {
    // 1 inch for each 10 kV: 45.7 mm; the IEC 60950 reprint has 49.3 mm at 18 kV.
    'a heater lead in the same grommet': [
      beside(anode, heater),
      {
        severity: 'danger',
        says: 'Wire 1 carries 18 kV dc and runs beside wire 2 at G1. Keep them 50 mm apart at least.',
        at: ['wire 1', 'wire 2']
      }
    ],
    'a wire of which nothing is known': [
      beside(anode, {}),
      { severity: 'danger', says: 'beside wire 2' }
    ]
  }
});

const yoke = { function: 'horizontal yoke', dcV: 285, pulseV: 3400, ratingV: 5000 };

ruleTester(mixedBundle, {
  valid: {
    'ordinary wires': beside(heater, { function: 'B+', dcV: 285 }),
    'two of a kind': beside(yoke, { ...yoke, pulseV: 3000 }),
    'a neighbour that is rated for it': beside(yoke, { ...heater, ratingV: 5000 }),
    'kilovolts are the affair of another rule': beside(anode, heater),
    'conductors of one jacket through a clamp': inOneJacket(yoke, heater)
  },
  invalid: {
    'a yoke lead of a cable beside a heater that is not in it': [
      inOneJacket(yoke, { ...heater, cable: 'another' }),
      { severity: 'caution', says: 'is bundled with wire 2 at G1 and G2.' }
    ],
    'a yoke lead among heaters': [
      beside(yoke, heater),
      {
        severity: 'caution',
        says: 'Wire 1 carries 285 V dc with a pulse of 3.4 kV and is bundled with wire 2 at G1.',
        at: ['wire 1', 'wire 2']
      }
    ]
  }
});

const volume = { function: 'audio from volume control', dcV: 0, acV: 0.5 };

ruleTester(noisyNeighbour, {
  valid: {
    'only a support is shared': beside(volume, heater, ['G1']),
    'a shielded lead': () => {
      const set = beside({ ...volume, construction: 'coax' }, heater, ['G1', 'G2']);
      return set();
    },
    'a twisted heater': beside(volume, { ...heater, dress: 'Twisted with 3.' }, ['G1', 'G2']),
    'a quiet neighbour': beside(volume, { function: 'B+', dcV: 285 }, ['G1', 'G2'])
  },
  invalid: {
    // 200 mm of 6.3 V at 60 Hz into 500 k: some millivolts.
    'a heater along a stretch of 200 mm': [
      beside(volume, heater, ['G1', 'G2']),
      {
        severity: 'note',
        says: /up to [3-9](\.\d)? mV of hum may get into a grid circuit/,
        at: ['wire 1', 'wire 2']
      }
    ],
    'a pulse lead': [
      beside(volume, { function: 'sweep', pulseV: 250, dcV: 0 }, ['G1', 'G2']),
      { severity: 'note', says: 'of whistle' }
    ]
  }
});

const through = (boreMm: number, count: number, diameterMm?: number) => (): ChassisBuilder => {
  const set = chassis()
    .support('K1', 'clamp', [0, 0], { boreMm })
    .strip('TS1', 20)
    .strip('TS2', 20);
  for (let n = 1; n <= count; n++) {
    const found = diameterMm === undefined ? {} : { diameterMm };
    set.wire(n, `TS1-${n}`, `TS2-${n}`, { awg: 22, route: ['K1'], found });
  }
  return set;
};

// Seven equal circles pack into three diameters exactly; nineteen into 4.863 (published optimum).
ruleTester(supportSize, {
  valid: {
    'seven wires of 2 mm through 6 mm': through(6, 7, 2),
    'nineteen of 2 mm through 9.8 mm': through(9.8, 19, 2),
    'bare conductors that fit': through(5, 7)
  },
  invalid: {
    'seven wires of 2 mm through 5.9 mm': [
      through(5.9, 7, 2),
      {
        severity: 'fault',
        says: '7 wires run through the clamp K1; their bundle measures 6 mm, its bore 5.9 mm.'
      }
    ],
    'nineteen of 2 mm through 9.6 mm': [
      through(9.6, 19, 2),
      { severity: 'fault', says: 'measures 9.73 mm' }
    ],
    // Seven times the bare 0.644 mm of 22 AWG.
    'at least as thick as the bare conductors': [
      through(1.8, 7),
      { severity: 'fault', says: 'measures at least 1.93 mm' }
    ]
  }
});

const round =
  (options: WireOptions, x = 20) =>
  () =>
    chassis()
      .support('K1', 'corner', [100, 0])
      .support('K2', 'corner', [100, x])
      .strip('TS1', 1, { at: [0, 0] })
      .strip('TS2', 1, { at: [200, x] })
      .wire(1, 'TS1-1', 'TS2-1', { route: ['K1', 'K2'], ...options });

// Two right angles 20 mm apart leave 10 mm for each bend: 10 mm to the middle of the wire.
ruleTester(bendTight, {
  valid: {
    'hook-up wire is bent round a lug every day': round({ awg: 22, found: { diameterMm: 2 } }),
    'coax with room to turn': round({ construction: 'coax', found: { diameterMm: 6 } }, 100),
    'a diameter that nobody knows': round({ construction: 'coax' })
  },
  invalid: {
    // 6 x 6 mm = 36 mm; 10 - 3 = 7 mm inside.
    'coax round two corners 20 mm apart': [
      round({ construction: 'coax', found: { diameterMm: 6 } }),
      {
        severity: 'caution',
        says: 'turns at K1 within a radius of 7 mm at most; with 6 mm over all it may be bent to 36 mm'
      }
    ],
    'thick wire': [
      round({ found: { diameterMm: 4 } }),
      { severity: 'note', says: 'within a radius of 8 mm' }
    ]
  }
});
