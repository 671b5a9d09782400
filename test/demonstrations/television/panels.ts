// The controls and the speaker in the wooden front, the antenna board on the back.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import { addControl, lugs, winding } from '../set-parts.ts';
import { thermoplastic } from '../wire-stock.ts';

export const addControls = (set: ChassisBuilder): void => {
  set.in('Front and rear panels');
  addControl(set, 'R8', 50_000, {
    at: [25, 152],
    value: '50k',
    function: 'horizontal hold',
    grounded: ['1']
  });
  addControl(set, 'R5', 1_000_000, {
    at: [75, 152],
    value: '1M',
    function: 'vertical hold',
    grounded: ['1']
  });
  addControl(set, 'R4', 100_000, {
    at: [125, 152],
    value: '100k',
    function: 'brightness',
    grounded: ['1']
  });
  addControl(set, 'R3', 400, {
    at: [175, 152],
    value: '500',
    function: 'contrast',
    grounded: ['1']
  });
  addControl(set, 'R1', 500_000, { at: [222, 152], value: '500k', function: 'volume' });
  set.part('switch', 'S1', lugs({ '1': [-5, 0], '2': [5, 0] }), {
    at: [248, 150],
    function: 'off-on, on the volume control',
    elements: [{ kind: 'link', what: 'switch', closed: true, from: '1', to: '2' }]
  });
};

export const addFrontAndBack = (set: ChassisBuilder): void => {
  const voiceCoil = { awg: 20, amps: 0.9, tapedMm: 480 };
  set
    .in('Front and rear panels')
    .part('plug', 'P2', lugs({ '1': [-5, 0], '2': [5, 0] }), {
      at: [60, 85],
      function: 'speaker',
      mates: 'J2'
    })
    .part('speaker', 'LS1', lugs({ '1': [-12, 0], '2': [12, 0] }), {
      at: [150, 55],
      value: '10 in, 3.2 ohm',
      elements: [winding('1', '2', 2.6)]
    })
    .part('terminal strip', 'TS17', lugs({ '1': [-10, 0], '2': [10, 0] }), {
      at: [40, 30],
      function: 'antenna board, 300 ohm'
    })
    .wire(73, 'P2-1', 'LS1-1', { ...thermoplastic('green'), ...voiceCoil, function: 'voice coil' })
    .wire(74, 'P2-2', 'LS1-2', {
      ...thermoplastic('black'),
      ...voiceCoil,
      function: 'voice coil, ground'
    });
};
