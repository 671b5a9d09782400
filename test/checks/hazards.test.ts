// Rules on what can hurt: a live chassis, charge that stays, the second anode; and steps out of order.
import { anodeResistorRule } from '#checks/rules/anode-resistor.ts';
import { chargeKept } from '#checks/rules/charge-kept.ts';
import { hotChassis } from '#checks/rules/hot-chassis.ts';
import { workOrder } from '#checks/rules/work-order.ts';
import { chassis, type ChassisBuilder } from '../helpers/chassis.ts';
import { ruleTester } from '../helpers/rule-tester.ts';

/** A plug with 117 V, one side by way of a switch. */
const plugged = (): ChassisBuilder =>
  chassis('Bench set', { highLine: 0 })
    .ground('G1')
    .strip('TS1', 6)
    .part('plug', 'P1', ['1', '2'], {
      elements: [{ kind: 'source', current: 'ac', volts: 117, from: '1', to: '2' }]
    })
    .part('switch', 'S1', ['1', '2'], {
      elements: [{ kind: 'link', what: 'switch', from: '1', to: '2', closed: true }]
    })
    .wire(1, 'P1-1', 'TS1-1', { function: 'line' })
    .wire(2, 'P1-2', 'S1-1', { function: 'line' })
    .wire(3, 'S1-2', 'TS1-2', { function: 'line' });

ruleTester(hotChassis, {
  valid: {
    'a transformer that nothing else bridges': () =>
      plugged().part(
        'transformer',
        'T1',
        [
          { name: 'a', on: 'TS1-1' },
          { name: 'b', on: 'TS1-2' }
        ],
        {
          elements: [{ kind: 'resistor', from: 'a', to: 'b', ohms: 5 }]
        }
      ),
    // 0.001 uF at 60 Hz: 2.65 megohm, 44 microamperes.
    'a capacitor too small to bite': () => plugged().capacitor('C1', '0.001 uF', 'TS1-1', 'G1'),
    'no line at all': () => chassis().ground('G1').strip('TS1', 2).wire(1, 'TS1-1', 'G1')
  },
  invalid: {
    'a chassis on one side of the line': [
      () => plugged().wire(4, 'TS1-2', 'G1'),
      {
        severity: 'danger',
        says: /joined to the power line at P1 2: .* It is so while P1 2 is the live side\. Measure the leakage first/,
        hasEdit: false
      }
    ],
    'a switch in the return leg leaves it live when off': [
      // 117 V through 800 ohm of heaters and 1500 ohm of a person: 51 mA.
      () =>
        plugged()
          .part(
            'other',
            'V1',
            [
              { name: '3', on: 'TS1-1' },
              { name: '4', on: 'TS1-2' }
            ],
            {
              elements: [{ kind: 'heater', from: '3', to: '4', volts: 120, amps: 0.15 }]
            }
          )
          .wire(4, 'TS1-2', 'G1'),
      {
        severity: 'danger',
        says: 'Switched on it is so while P1 2 is the live side, switched off while P1 1 is the live side.'
      }
    ],
    // 0.01 uF at 60 Hz is 265 k: 117 V / 265.3 k = 441 uA; two of them 882 uA.
    'capacitors that bite': [
      () =>
        plugged()
          .capacitor('C1', '0.01 uF', 'TS1-1', 'G1')
          .capacitor('C2', '0.01 uF', 'TS1-1', 'G1'),
      { severity: 'caution', says: /through C1 and C2: about 880 µA .*as good as new/ }
    ],
    // 0.1 uF beside 220 k: |Z| of the two is 26.3 k, with the person 26.7 k: 4.4 mA.
    'a resistor and a capacitor, as in sets without transformer': [
      () =>
        plugged().capacitor('C1', '0.1 uF', 'TS1-2', 'G1').resistor('R1', '220k', 'TS1-2', 'G1'),
      { severity: 'danger', says: 'about 4.4 mA' }
    ],
    'a wire list that says no more than line': [
      () =>
        chassis()
          .ground('G1')
          .part('plug', 'P1', ['1', '2'])
          .strip('TS1', 2)
          .wire(1, 'P1-1', 'TS1-1', { function: 'ac line' })
          .wire(2, 'P1-2', 'G1', { function: 'ac line' }),
      { severity: 'danger', says: 'joined to the power line at P1 2' }
    ]
  }
});

const filter = (more: (set: ChassisBuilder) => ChassisBuilder) => () =>
  more(
    chassis()
      .ground('G1')
      .strip('TS1', 4)
      .capacitor('C1', '40 uF', 'TS1-1', 'G1')
      .wire(1, 'TS1-1', 'TS1-2', { function: 'B+', dcV: 350 })
  );

ruleTester(chargeKept, {
  valid: {
    // 40 uF x 100 k x ln(350 / 60) = 7 s.
    'a bleeder': filter((set) => set.resistor('R1', '100k', 'TS1-2', 'G1')),
    'a coupling capacitor holds too little': () =>
      chassis()
        .ground('G1')
        .strip('TS1', 2)
        .capacitor('C1', '0.05 uF', 'TS1-1', 'G1')
        .wire(1, 'TS1-1', 'TS1-2', { dcV: 250 }),
    'a cathode bypass at 15 V': () =>
      chassis()
        .ground('G1')
        .strip('TS1', 2)
        .capacitor('C1', '50 uF', 'TS1-1', 'G1')
        .wire(1, 'TS1-1', 'TS1-2', { dcV: 15 })
  },
  invalid: {
    'nothing across it': [
      filter((set) => set),
      {
        severity: 'caution',
        says: 'C1 holds 40 µF up to 350 V (2.5 J): no known resistor discharges it. Assume that it is charged.',
        at: ['C1']
      }
    ],
    'a tube and its heater are no bleeder': [
      filter((set) =>
        set.part('other', 'V1', [{ name: 'p', on: 'TS1-2' }], {
          elements: [
            { kind: 'load', from: 'p', amps: 0.05 },
            { kind: 'heater', from: 'p', volts: 50, amps: 0.15 }
          ]
        })
      ),
      { severity: 'caution', says: 'no known resistor' }
    ],
    // 40 uF x 10 M x ln(350 / 60) = 705 s.
    'a bleeder that takes too long': [
      filter((set) => set.resistor('R1', '10M', 'TS1-2', 'G1')),
      {
        severity: 'caution',
        says: 'known resistors (10 MΩ) take 710 s down to 60 V, if they are good'
      }
    ],
    'the second anode': [
      () =>
        chassis()
          .strip('TS1', 1)
          .part('picture tube', 'V11', ['anode', '11'])
          .wire(1, 'TS1-1', 'V11 anode', { dcV: 16_000 }),
      { severity: 'caution', says: 'The second anode of V11 stands at 16 kV', at: ['V11'] }
    ]
  }
});

ruleTester(anodeResistorRule, {
  valid: {
    'a resistor of an ordinary rail': () =>
      chassis()
        .strip('TS1', 4)
        .resistor('R1', '1M', 'TS1-1', 'TS1-2')
        .wire(1, 'TS1-1', 'TS1-3', { dcV: 560 })
  },
  invalid: {
    // 18 kV over 1 M: 18 mA and 324 W; 0.3 mA drop 300 V.
    'one in the second-anode lead': [
      () =>
        chassis()
          .strip('TS1', 4)
          .part('other', 'V16', ['7'], {
            elements: [{ kind: 'source', current: 'dc', volts: 18_000, from: '7' }]
          })
          .part('picture tube', 'V18', ['anode'], {
            elements: [{ kind: 'load', from: 'anode', amps: 0.0003 }]
          })
          .resistor('R1', '1M', 'V16-7', 'V18 anode', { watts: 2 }),
      {
        severity: 'note',
        says: 'R1 (1 MΩ) drops 300 V at 300 µA, and has all 18 kV across it while the anode is shorted: up to 18 mA and 320 W. Its 2 W are for normal use.'
      }
    ]
  }
});

const held = (first: 'fitted' | 'found', second: 'found' | 'fitted') => () =>
  chassis()
    .support('K1', 'tie', [0, 0])
    .strip('TS1', 4)
    .wire(1, 'TS1-1', 'TS1-2', { route: ['K1'], state: first, planned: { way: 'new wire' } })
    .wire(2, 'TS1-3', 'TS1-4', { route: ['K1'], state: second, planned: { way: 'new wire' } });

ruleTester(workOrder, {
  valid: {
    'a bundle of which nothing is done': held('found', 'found'),
    'a bundle that is done': held('fitted', 'fitted'),
    'a wire that is out, numbered and planned': () =>
      chassis()
        .strip('TS1', 2)
        .wire(1, 'TS1-1', 'TS1-2', { state: 'removed', planned: { way: 'new wire' } })
  },
  invalid: {
    'new wire tied up with old': [
      held('fitted', 'found'),
      {
        severity: 'note',
        says: 'At the tie K1 wire 1 is new, but wire 2 is still to be replaced',
        at: ['wire 2', 'wire 1']
      }
    ],
    'out, and nothing planned': [
      () => chassis().strip('TS1', 2).wire(1, 'TS1-1', 'TS1-2', { state: 'removed' }),
      { severity: 'caution', says: 'Wire 1 was taken out, but nothing is planned in its place.' }
    ],
    'out without a number': [
      () => chassis().strip('TS1', 2).wire('', 'TS1-1', 'TS1-2', { state: 'removed' }),
      { severity: 'caution', says: 'it bore no number and nothing is planned' }
    ]
  }
});
