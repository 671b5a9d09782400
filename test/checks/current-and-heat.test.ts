// Rules on amperes and degrees.
import { overAmpacity } from '#checks/rules/over-ampacity.ts';
import { tooHot } from '#checks/rules/too-hot.ts';
import { chassis, type ChassisBuilder } from '../helpers/chassis.ts';
import type { WireOptions } from '../helpers/chassis-options.ts';
import { ruleTester } from '../helpers/rule-tester.ts';

const one = (options: WireOptions) => (): ChassisBuilder =>
  chassis()
    .strip('TS1', 8)
    .strip('TS2', 8)
    .wire(1, 'TS1-1', 'TS2-1', { awg: 22, ...options });

/** As many wires as asked for, side by side at one clamp. */
const bundle = (count: number, options: WireOptions) => (): ChassisBuilder => {
  const set = chassis().support('K1', 'clamp', [0, 0]).strip('TS1', 20).strip('TS2', 20);
  for (let n = 1; n <= count; n++) {
    set.wire(n, `TS1-${n}`, `TS2-${n}`, { route: ['K1'], ...options });
  }
  return set;
};

// Limits by FAA AC 43.13-1B Table 11-9 with its bundling undone (/ 0.615), x sqrt(rise / 35):
// 22 AWG of 105 C in 50 C air: 3 / 0.615 x sqrt(55 / 35) = 6.11 A; of 60 C: 2.61 A.
ruleTester(overAmpacity, {
  valid: {
    'a heater branch': one({ amps: 2.4 }),
    'better insulation carries more': one({ amps: 6, found: { style: 'UL 1015' } }),
    'no gauge, no limit': one({ amps: 20, found: {}, awg: undefined as never }),
    'a lead whose current is beside the point': one({ amps: 4, dcV: 18_000 }),
    'mates that carry next to nothing do not count': () =>
      bundle(9, { awg: 22, amps: 0.05 })().wire(20, 'TS1-20', 'TS2-20', {
        awg: 22,
        amps: 2.4,
        route: ['K1']
      })
  },
  invalid: {
    'a little over': [
      one({ amps: 3 }),
      {
        severity: 'caution',
        says: 'Wire 1 carries 3 A; 22 AWG whose insulation is not known (taken as 60 °C) in 50 °C, alone, may carry 2.607 A.',
        hasEdit: true
      }
    ],
    'far over': [one({ amps: 5 }), { severity: 'fault', says: 'may carry 2.607 A', hasEdit: true }],
    'what is planned will do': [
      one({ amps: 5, planned: { way: 'new wire', awg: 16, style: 'UL 1015' } }),
      { severity: 'note', says: 'What is planned for it will do' }
    ],
    'what is planned will not': [
      one({
        amps: 7,
        awg: 14,
        found: { style: 'UL 1015' },
        planned: { way: 'new wire', awg: 24, style: 'UL 1015' }
      }),
      { severity: 'fault', says: '24 AWG of 105 °C' }
    ],
    // Three loaded wires: x 0.725, 1.89 A.
    'loaded wires beside it': [
      bundle(3, { awg: 22, amps: 2.1 }),
      { severity: 'caution', says: 'with 2 loaded wires beside it, may carry 1.89 A' },
      { severity: 'caution', says: 'Wire 2' },
      { severity: 'caution', says: 'Wire 3' }
    ],
    'what the circuit draws, where nobody declared any': [
      () =>
        chassis()
          .part('other', 'B1', ['+'], {
            elements: [{ kind: 'source', current: 'dc', volts: 250, from: '+' }]
          })
          .part('other', 'V1', ['p'], { elements: [{ kind: 'load', from: 'p', amps: 4 }] })
          .wire(1, 'B1 +', 'V1 p', { awg: 22 }),
      { severity: 'fault', says: 'Wire 1 carries 4 A' }
    ]
  }
});

const at = (options: WireOptions) => () =>
  chassis()
    .strip('TS1', 4)
    .tube('V1', '5U4GB')
    .resistor('R1', '5k', 'TS1-2', 'TS1-3', { watts: 10 })
    .wire(1, 'TS1-1', 'V1-8', options);

ruleTester(tooHot, {
  valid: {
    'wire of 105 C at a rectifier': at({ found: { style: 'UL 1015' } }),
    'nothing known of the insulation': at({ insulation: 'rubber' }),
    'wire of 80 C away from the heat': () =>
      chassis()
        .strip('TS1', 2)
        .wire(1, 'TS1-1', 'TS1-2', { found: { style: 'UL 1007' } }),
    'new wire that stands it': at({
      found: { style: 'UL 1007' },
      planned: { way: 'new wire', style: 'UL 1015' }
    })
  },
  invalid: {
    // UL 1007 is rated 80 C.
    'wire of 80 C at a rectifier': [
      at({ found: { style: 'UL 1007' } }),
      {
        severity: 'caution',
        says: 'rated 80 °C; the place at V1 (rectifier, full wave) is reckoned at 85 °C',
        hasEdit: true
      }
    ],
    'at a lug with a power resistor': [
      () =>
        chassis()
          .strip('TS1', 4)
          .resistor('R1', '5k', 'TS1-2', 'TS1-3', { watts: 10 })
          .wire(1, 'TS1-1', 'TS1-2', { found: { ratingC: 60 } }),
      { severity: 'caution', says: 'R1 (10 W)' }
    ],
    'planned wire': [
      at({ planned: { way: 'new wire', ratingC: 80 } }),
      { severity: 'caution', says: 'was planned with insulation rated 80 °C' }
    ],
    'a cabinet hotter than the wire stands': [
      () => {
        const set = chassis()
          .strip('TS1', 2)
          .wire(1, 'TS1-1', 'TS1-2', { found: { ratingC: 60 } })
          .build();
        return { ...set, policy: { ambientC: 70 } };
      },
      { severity: 'caution', says: 'the cabinet is reckoned at 70 °C' }
    ]
  }
});
