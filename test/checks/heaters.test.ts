// Rules on heaters: along a trunk, in a string, against their cathodes, and beside audio.
import { heaterCathode } from '#checks/rules/heater-cathode.ts';
import { heaterDrop } from '#checks/rules/heater-drop.ts';
import { heaterString } from '#checks/rules/heater-string.ts';
import { heaterUntwisted } from '#checks/rules/heater-untwisted.ts';
import { chassis, type ChassisBuilder } from '../helpers/chassis.ts';
import type { ElementSpec } from '../helpers/chassis-options.ts';
import { ruleTester } from '../helpers/rule-tester.ts';

const winding = (volts: number): ElementSpec[] => [
  { kind: 'source', current: 'ac', volts, from: 'a', to: 'b' }
];

/** One 6CG7 (6.3 V, 0.6 A by its data sheet) behind two lengths of wire. */
const trunk = (volts: number, tapedMm: number, awg = 22): ChassisBuilder =>
  chassis('Trunk', { ambientC: 20 })
    .ground('G1')
    .ground('G2')
    .tube('V1', '6CG7')
    .part('transformer', 'T1', ['a', 'b'], { elements: winding(volts) })
    .wire(1, 'T1 a', 'V1-4', { function: 'heaters', awg, tapedMm })
    .wire(2, 'T1 b', 'G1', { awg, tapedMm: 10 })
    .wire(3, 'V1-5', 'G2', { awg, tapedMm: 10 });

ruleTester(heaterDrop, {
  valid: {
    'a short trunk': () => trunk(6.3, 300),
    // 22 AWG is 52.96 ohm/km: 9 m and 0.6 A lose 0.27 V, 4.4 %.
    'a long one within the limit': () => trunk(6.3, 9000),
    'a trunk that nothing feeds': () =>
      chassis()
        .ground('G1')
        .tube('V1', '6CG7')
        .strip('TS1', 1)
        .wire(1, 'TS1-1', 'V1-4')
        .wire(2, 'V1-5', 'G1'),
    'limits of the policy': () => {
      const set = trunk(6.3, 16_000).build();
      return { ...set, policy: { ...set.policy, heaterLow: -0.2 } };
    }
  },
  invalid: {
    // 16 m of 22 AWG: 0.847 ohm against 10.5 ohm, 7.5 % lost.
    'more than a twentieth lost': [
      () => trunk(6.3, 16_000),
      {
        severity: 'caution',
        says: /The heater of V1 gets 5\.82\d V of its 6\.3 V \(-7\.\d %\); the limit is -5 %\. Most is lost in wire 1/,
        at: ['V1']
      }
    ],
    'more than a tenth lost': [
      () => trunk(6.3, 30_000),
      { severity: 'fault', says: 'the limit is -5 %' }
    ],
    'too much': [() => trunk(6.8, 300), { severity: 'caution', says: '(+7.', hasEdit: false }],
    'several tubes on one trunk are one finding': [
      () => trunk(6.3, 16_000).tube('V2', '6CG7').wire(4, 'V1-4', 'V2-4').wire(5, 'V2-5', 'G2'),
      {
        severity: 'fault',
        says: 'V1 and V2 lie outside of the limit; at worst the heater of V',
        at: ['V1', 'V2']
      }
    ]
  }
});

const string = (
  line: number,
  types: readonly string[],
  dropper?: { ohms: string; watts?: number }
) => {
  const set = chassis()
    .ground('G1')
    .strip('TS1', 2)
    .part('plug', 'P1', ['a', 'b'], { elements: winding(line) })
    .wire(1, 'P1 b', 'G1')
    .wire(2, 'P1 a', 'TS1-1');
  if (dropper) set.resistor('R1', dropper.ohms, 'TS1-1', 'TS1-2', dropper);
  else set.wire(3, 'TS1-1', 'TS1-2');
  let at = 'TS1-2';
  types.forEach((type, n) => {
    set.tube(`V${n + 1}`, type).wire(10 + n, at, `V${n + 1}-3`);
    at = `V${n + 1}-4`;
  });
  return set.wire(99, at, 'G1');
};

ruleTester(heaterString, {
  valid: {
    // 50 + 12.6 x 5 = 113 V: 117 V is 3.5 % more.
    'tubes that add up to the line': () =>
      string(117, ['50C5', '12BE6', '12BA6', '12AV6', '12BA6', '12BA6']),
    // 87.8 V of heaters; 195 ohm at 150 mA take 29.25 V.
    'the rest in a dropper': () =>
      string(117, ['50C5', '12BE6', '12BA6', '12AV6'], { ohms: '195', watts: 10 }),
    'heaters side by side are no string': () =>
      trunk(6.3, 100).tube('V2', '6AL5').wire(4, 'V1-4', 'V2-4').wire(5, 'V2-3', 'G2')
  },
  invalid: {
    'a dropper that is missing': [
      () => string(117, ['50C5', '12BE6', '12BA6', '12AV6']),
      {
        severity: 'fault',
        says: /asks for 87\.8 V at 150 mA; V\d gets .* \(\+33 %\), and the limit is \+5 %/
      }
    ],
    'a tube of another current': [
      () => string(117, ['50C5', '12BE6', '6AL5', '12BA6', '12AV6', '12BA6']),
      {
        severity: 'fault',
        says: 'V3 is made for 300 mA, but is in series with tubes of 150 mA',
        at: ['V3']
      },
      { severity: 'fault', says: 'V3 gets' }
    ],
    // 195 ohm in series with 585.3 ohm of heaters on 117 V: 29.2 V, 4.38 W.
    'a dropper of too few watts': [
      () => string(117, ['50C5', '12BE6', '12BA6', '12AV6'], { ohms: '195', watts: 2 }),
      { severity: 'fault', says: 'turns 4.38 W into heat and is rated 2 W', at: ['R1'] }
    ]
  }
});

ruleTester(heaterCathode, {
  valid: {
    'a cathode near the chassis': () =>
      trunk(6.3, 100).strip('TS1', 1).wire(9, 'V1-3', 'TS1-1', { dcV: 8 }),
    'a cathode of which nothing is known': () =>
      trunk(6.3, 100).strip('TS1', 1).wire(9, 'V1-3', 'TS1-1'),
    'a damper of which no limit is known': () =>
      chassis()
        .ground('G1')
        .tube('V1', '6AX4GT')
        .strip('TS1', 1)
        .wire(1, 'V1-7', 'G1')
        .wire(9, 'V1-3', 'TS1-1', { dcV: 560, pulseV: 3400 })
  },
  invalid: {
    // 6CG7: 200 V by its data sheet.
    'more than the tube data allows': [
      () => trunk(6.3, 100).strip('TS1', 1).wire(9, 'V1-3', 'TS1-1', { dcV: 220 }),
      { severity: 'fault', says: 'the 6CG7 stands 200 V', at: ['V1'] }
    ],
    'a type without a published limit': [
      () =>
        chassis()
          .ground('G1')
          .tube('V1', '6AU6A')
          .strip('TS1', 1)
          .wire(1, 'V1-3', 'G1')
          .wire(2, 'V1-4', 'G1')
          .wire(9, 'V1-7', 'TS1-1', { dcV: 250 }),
      { severity: 'note', says: 'from memory' }
    ]
  }
});

const pair = (dress?: string) =>
  chassis()
    .support('K1', 'clamp', [0, 0])
    .strip('TS1', 4)
    .tube('V1', '6CG7')
    .part('transformer', 'T1', ['a', 'b'], { elements: winding(6.3) })
    .wire(1, 'T1 a', 'V1-4', {
      function: 'heaters',
      route: ['K1'],
      ...(dress === undefined ? {} : { dress })
    })
    .wire(2, 'T1 b', 'V1-5', { function: 'heaters' })
    .wire(3, 'TS1-1', 'TS1-2', { function: 'audio from volume control', route: ['K1'] });

ruleTester(heaterUntwisted, {
  valid: {
    'twisted, as its dress says': () => pair('Twisted with 2.'),
    'a chassis return has nothing to be twisted with': () =>
      trunk(6.3, 100)
        .support('K1', 'clamp', [0, 0])
        .strip('TS1', 2)
        .wire(8, 'T1 a', 'V1-4', { function: 'heaters', route: ['K1'] })
        .wire(9, 'TS1-1', 'TS1-2', { function: 'audio from volume control', route: ['K1'] })
  },
  invalid: {
    'one of two leads beside the volume control': [
      () => pair(),
      {
        severity: 'note',
        says: 'Wire 1 is one of two heater leads and runs beside wire 3',
        at: ['wire 1', 'wire 3']
      }
    ]
  }
});
