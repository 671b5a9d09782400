// Coax, twin lead, shields and splices.
import { lineMismatch } from '#checks/rules/line-mismatch.ts';
import { shieldGround } from '#checks/rules/shield-ground.ts';
import { spliceBare } from '#checks/rules/splice-bare.ts';
import { chassis } from '../helpers/chassis.ts';
import { ruleTester } from '../helpers/rule-tester.ts';

const lines = (coaxMm: number | undefined) =>
  chassis()
    .strip('TS1', 4)
    .strip('TS2', 4)
    .strip('TS3', 4)
    .cable('75 ohm coax', 'coax', { impedanceOhm: 75, velocity: 0.66 })
    .cable('twin lead', 'twin lead', { impedanceOhm: 300, velocity: 0.82 })
    .wire(1, 'TS1-1', 'TS2-1', {
      cable: '75 ohm coax',
      construction: 'coax',
      ...(coaxMm === undefined ? {} : { tapedMm: coaxMm })
    });

ruleTester(lineMismatch, {
  valid: {
    apart: () => lines(600).wire(2, 'TS2-2', 'TS3-2', { cable: 'twin lead' }),
    'the same': () => lines(600).wire(2, 'TS2-1', 'TS3-1', { cable: '75 ohm coax' }),
    '72 on 75 ohm': () =>
      lines(600)
        .cable('old coax', 'coax', { impedanceOhm: 72 })
        .wire(2, 'TS2-1', 'TS3-1', { cable: 'old coax' }),
    'the shields share the chassis': () =>
      lines(600)
        .ground('G1')
        .wire(2, 'TS2-2', 'G1', { cable: '75 ohm coax', construction: 'shield' })
        .wire(3, 'TS3-2', 'G1', { cable: 'twin lead' })
  },
  invalid: {
    // 0.66 x 299 792 458 m/s / 216 MHz / 10 = 91.6 mm.
    long: [
      () => lines(600).wire(2, 'TS2-1', 'TS3-1', { cable: 'twin lead' }),
      {
        severity: 'caution',
        says: '75 Ω (cable 75 ohm coax) is joined to 300 Ω (cable twin lead), 4 to 1. At 600 mm, over a tenth of a wave at 216 MHz (92 mm)',
        at: ['cable 75 ohm coax', 'cable twin lead']
      }
    ],
    'short: a note': [
      () => lines(60).wire(2, 'TS2-1', 'TS3-1', { cable: 'twin lead' }),
      { severity: 'note', says: 'hardly matters' }
    ],
    'of unknown length': [
      () => lines(undefined).wire(2, 'TS2-1', 'TS3-1', { cable: 'twin lead' }),
      { severity: 'note', says: 'How long they are is not known' }
    ],
    'both conductors of a pair are one finding': [
      () =>
        lines(600)
          .wire(2, 'TS2-1', 'TS3-1', { cable: 'twin lead' })
          .wire(3, 'TS1-2', 'TS2-2', { cable: '75 ohm coax' })
          .wire(4, 'TS2-2', 'TS3-2', { cable: 'twin lead' }),
      { severity: 'caution', says: '4 to 1' }
    ],
    'on an antenna': [
      () =>
        lines(600)
          .part('antenna', 'A1', ['1', '2'], { value: '300 ohm' })
          .wire(2, 'TS2-1', 'A1-1', { cable: '75 ohm coax' }),
      { severity: 'caution', says: '75 Ω (cable 75 ohm coax) is joined to 300 Ω (A1)' }
    ]
  }
});

const volume = () =>
  chassis()
    .strip('TS1', 4, { grounded: [4] })
    .part('control', 'R41', ['1', '2', '3'])
    .ground('G1')
    .cable('volume lead', 'shielded pair', { signal: 'audio' })
    .wire(22, 'TS1-1', 'R41-2', { cable: 'volume lead', function: 'audio' });
const shield = { construction: 'shield', cable: 'volume lead' } as const;

ruleTester(shieldGround, {
  valid: {
    'at one end; the other goes on to the control': () =>
      volume().wire(23, 'TS1-4', 'R41-1', shield),
    'at one end; the other is cut back': () =>
      volume().wire(23, 'TS1-4', null, { ...shield, toEnd: { as: 'cut back' } }),
    'nobody has found the other end': () => volume().wire(23, 'TS1-1', null, shield),
    'coax for radio frequencies': () =>
      chassis()
        .ground('G1')
        .ground('G2')
        .cable('IF lead', 'coax', { signal: 'radio frequency' })
        .wire(1, 'G1', 'G2', { construction: 'shield', cable: 'IF lead' })
  },
  invalid: {
    'at both ends': [
      () => volume().wire(23, 'TS1-4', 'G1', shield),
      {
        severity: 'caution',
        says: 'The shield of volume lead is grounded at both ends (TS1-4 and chassis at G1)',
        at: ['cable volume lead', 'wire 23']
      }
    ],
    'at both ends, by way of another wire': [
      () => volume().wire(23, 'TS1-4', 'R41-1', shield).wire(24, 'R41-1', 'G1'),
      { severity: 'caution', says: 'grounded at both ends' }
    ],
    'at neither': [
      () => volume().wire(23, 'TS1-2', null, { ...shield, toEnd: { as: 'left open' } }),
      { severity: 'caution', says: 'grounded at neither end (TS1-2 and the open end)' }
    ],
    'what the wires inside carry tells that it is audio': [
      () =>
        chassis()
          .strip('TS1', 4, { grounded: [3, 4] })
          .cable('lead 5', 'shielded wire')
          .wire(1, 'TS1-1', 'TS1-2', { cable: 'lead 5', function: 'phono' })
          .wire(2, 'TS1-3', 'TS1-4', { construction: 'shield', cable: 'lead 5' }),
      { severity: 'caution', says: 'grounded at both ends' }
    ]
  }
});

const spliced = (dcV: number | undefined, sleeve?: string) => () =>
  chassis()
    .strip('TS1', 4)
    .part('splice', 'X1', ['1'])
    .wire(1, 'TS1-1', 'X1', dcV === undefined ? {} : { dcV })
    .wire(2, 'X1', 'TS1-2', sleeve === undefined ? {} : { fromEnd: { sleeve } });

ruleTester(spliceBare, {
  valid: {
    sleeved: spliced(285, 'PVC 3 mm'),
    'no splice': () => chassis().strip('TS1', 2).wire(1, 'TS1-1', 'TS1-2', { dcV: 285 }),
    'spliced in under a sleeve': () =>
      chassis()
        .strip('TS1', 2)
        .wire(1, 'TS1-1', 'TS1-2', {
          planned: { way: 'splice in' },
          toEnd: { sleeve: 'heat-shrink' }
        })
  },
  invalid: {
    'on a rail': [
      spliced(285),
      {
        severity: 'fault',
        says: 'The splice X1 has no sleeve over it; it stands at 285 V.',
        at: ['X1', 'wire 1', 'wire 2']
      }
    ],
    'at kilovolts': [spliced(18_000), { severity: 'danger', says: 'it stands at 18 kV' }],
    'nobody knows at what': [
      spliced(undefined),
      { severity: 'fault', says: 'what it carries is not known' }
    ],
    'a few volts': [spliced(6, 'none'), { severity: 'note', says: 'it stands at 6 V' }],
    'planned without a sleeve': [
      () =>
        chassis()
          .strip('TS1', 2)
          .wire(1, 'TS1-1', 'TS1-2', { dcV: 285, planned: { way: 'splice in' } }),
      { severity: 'caution', says: 'no sleeve is planned for either end' }
    ]
  }
});
