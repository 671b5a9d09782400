// The radio's parts: places in millimetres, seen from below.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import { acSource, addTunedCan, draws, leads, lugs, winding } from '../set-parts.ts';

export const addRadioParts = (set: ChassisBuilder): void => {
  set
    .unit('Chassis', { size: [240, 120], place: [0, 110] })
    .support('K1', 'clamp', [150, 58], { boreMm: 8 })
    .support('K2', 'corner', [112, 112])
    .support('G1', 'grommet', [232, 100], { boreMm: 8 })
    .support('G2', 'grommet', [8, 60], { boreMm: 8 })
    .unit('Cabinet', { metal: 'none', size: [240, 90], place: [0, 0] });
  addTubes(set);
  addCoils(set);
  addPowerParts(set);
  addCabinetParts(set);
};

const addTubes = (set: ChassisBuilder): void => {
  set
    .in('Chassis')
    .tube('V1', '12BE6', {
      at: [45, 75],
      function: 'converter',
      elements: [draws('5', '2', 2.6), draws('6', '2', 7.5)]
    })
    .tube('V2', '12BA6', {
      at: [95, 70],
      function: 'IF amplifier',
      elements: [draws('5', '7', 8), draws('6', '7', 3)]
    })
    .tube('V3', '12AV6', {
      at: [140, 78],
      function: 'detector, first audio',
      elements: [
        draws('7', '2', 0.1),
        { kind: 'source', current: 'dc', from: '6', to: '2', volts: -1.5, noLoadVolts: 0 }
      ],
      notes: 'The detector puts about 1.5 V on the volume control on a good station.'
    })
    .tube('V4', '50C5', {
      at: [178, 70],
      function: 'audio output',
      elements: [draws('7', '1', 38), draws('6', '1', 3)]
    })
    .tube('V5', '35W4', {
      at: [215, 62],
      function: 'rectifier',
      elements: [
        { kind: 'source', current: 'dc', from: '7', to: '5', volts: 125, noLoadVolts: 160 }
      ]
    });
};

const addCoils = (set: ChassisBuilder): void => {
  set
    .part('capacitor', 'C2', lugs({ A: [-12, 8], B: [12, 8], frame: [0, -10] }, ['frame']), {
      at: [35, 25],
      value: '2 gang',
      function: 'tuning',
      elements: [
        { kind: 'capacitor', from: 'A', to: 'frame', farads: 365e-12 },
        { kind: 'capacitor', from: 'B', to: 'frame', farads: 130e-12 }
      ]
    })
    .part('coil', 'L2', lugs({ '1': [-7, 0], '2': [0, 6], '3': [7, 0] }), {
      at: [30, 104],
      function: 'oscillator',
      elements: [winding('1', '2', 3), winding('2', '3', 1)]
    });
  addTunedCan(set, 'T3', { at: [72, 40], function: '1st IF, 455 kc' });
  addTunedCan(set, 'T4', { at: [118, 40], function: '2nd IF, 455 kc' });
  set
    .part('control', 'R1', lugs({ '1': [-8, 8], '2': [0, 10], '3': [8, 8] }), {
      at: [165, 18],
      value: '500k',
      function: 'volume',
      elements: [winding('1', '2', 250_000), winding('2', '3', 250_000)]
    })
    .part('switch', 'S1', lugs({ '1': [-5, 0], '2': [5, 0] }), {
      at: [195, 18],
      function: 'off-on, on the volume control',
      elements: [{ kind: 'link', what: 'switch', closed: true, from: '1', to: '2' }]
    })
    .part('transformer', 'T2', [...leads(['blue', 'red'], 10), ...leads(['green', 'black'], -10)], {
      at: [205, 95],
      function: 'audio output',
      elements: [winding('blue', 'red', 200), winding('green', 'black', 0.5)]
    })
    .strip('TS4', 3, { at: [100, 98], grounded: [2] })
    .resistor('R3', '22k', 'V1-1', 'V1-2', { watts: 0.5 })
    .capacitor('C3', '56 pF', 'V1-1', 'L2-1', { ratedV: 500 })
    .resistor('R6', '3.3M', 'T4-4', 'TS4-1', { watts: 0.5 })
    .capacitor('C7', '0.05 uF', 'TS4-1', 'TS4-3', { ratedV: 200 })
    .capacitor('C4', '220 pF', 'T4-4', 'TS4-3', { ratedV: 500 })
    .capacitor('C6', '0.005 uF', 'R1-2', 'V3-1', { ratedV: 200 })
    .resistor('R7', '10M', 'V3-1', 'V3-2', { watts: 0.5 })
    .resistor('R8', '470k', 'V3-7', 'TS1-4', { watts: 0.5 })
    .capacitor('C8', '0.01 uF', 'V3-7', 'V4-2', { ratedV: 400 })
    .resistor('R10', '470k', 'V4-2', 'TS2-2', { watts: 0.5 })
    .resistor('R11', '150', 'V4-1', 'TS2-2', { watts: 1 });
};

const addPowerParts = (set: ChassisBuilder): void => {
  set
    .strip('TS1', 4, { at: [195, 42], grounded: [2], function: 'line and B+' })
    .strip('TS2', 4, { at: [140, 104], grounded: [3], function: 'B- tie' })
    .part(
      'capacitor',
      'C1',
      [
        { name: 'A', on: 'TS1-3', ending: 'lead' },
        { name: 'B', on: 'TS1-4', ending: 'lead' },
        { name: 'minus', on: 'TS2-1', ending: 'lead' }
      ],
      {
        value: '50-30 uF, 150 V',
        function: 'filter',
        elements: [
          { kind: 'capacitor', from: 'A', to: 'minus', farads: 50e-6, ratedV: 150 },
          { kind: 'capacitor', from: 'B', to: 'minus', farads: 30e-6, ratedV: 150 }
        ],
        notes: 'Cardboard tube, wax running out of it.'
      }
    )
    .resistor('R2', '1.2k', 'TS1-3', 'TS1-4', { watts: 1 })
    .resistor('R9', '220k', 'TS2-1', 'TS2-3', { watts: 0.5 })
    .capacitor('C9', '0.1 uF', 'TS2-1', 'TS2-3', { ratedV: 400 })
    .part('lamp', 'I1', lugs({ '1': [-4, 0], '2': [4, 0] }), {
      at: [112, 8],
      type: '47',
      value: '6.3 V, 0.15 A',
      function: 'dial lamp',
      elements: [winding('1', '2', 42)]
    });
};

const addCabinetParts = (set: ChassisBuilder): void => {
  set
    .in('Cabinet')
    .part('plug', 'P1', lugs({ '1': [-6, 0], '2': [6, 0] }), {
      at: [215, 70],
      function: 'line plug',
      elements: [acSource('1', '2', 117)]
    })
    .part('antenna', 'L1', lugs({ '1': [-15, 12], '2': [15, 12] }), {
      at: [50, 45],
      function: 'loop on the back cover',
      elements: [winding('1', '2', 2)]
    })
    .part('speaker', 'LS1', lugs({ '1': [-8, 14], '2': [8, 14] }), {
      at: [165, 40],
      value: '5 in, 3.2 ohm',
      elements: [winding('1', '2', 2.6)]
    });
};
