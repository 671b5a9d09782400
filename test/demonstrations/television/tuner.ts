// The turret tuner: what enters and leaves it, and the few inner leads that can be seen.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import { addTunedCan, draws, lugs, winding } from '../set-parts.ts';
import { pushBack, thermoplastic } from '../wire-stock.ts';

export const addTuner = (set: ChassisBuilder): void => {
  set
    .in('Tuner')
    .tube('V1', '6BQ7A', { at: [32, 45], function: 'RF amplifier', grounded: ['5', '9'] })
    .tube('V2', '6U8A', {
      at: [32, 100],
      function: 'mixer, oscillator',
      grounded: ['5', '7', '8'],
      elements: [draws('6', '7', 10)]
    })
    .strip('TS16', 4, { at: [60, 140], grounded: [4], function: 'tuner lugs' })
    .part('transformer', 'T11', lugs({ '1': [-6, -8], '2': [6, -8], '3': [-6, 8], '4': [6, 8] }), {
      at: [72, 35],
      function: 'antenna, 300 ohm',
      elements: [winding('1', '2', 1), winding('3', '4', 1)]
    });
  addTunedCan(set, 'T12', { at: [72, 95], function: 'mixer plate', grounded: ['4'] });
  addWires(set);
};

const addWires = (set: ChassisBuilder): void => {
  const antenna = { construction: 'twin lead', cable: 'antenna lead', awg: 20, route: ['K8'] };
  set
    .cable('antenna lead', 'twin lead', {
      signal: 'radio frequency',
      impedanceOhm: 300,
      velocity: 0.82,
      jacket: 'brown polyethylene'
    })
    .wire(132, 'TS17-1', 'T11-1', {
      ...antenna,
      conductor: '1',
      function: 'antenna',
      dcV: 0,
      acV: 0.1,
      tapedMm: 640
    })
    .wire(133, 'TS17-2', 'T11-2', {
      ...antenna,
      conductor: '2',
      function: 'antenna',
      dcV: 0,
      acV: 0.1,
      tapedMm: 640
    })
    .cable('IF link', 'coax', {
      signal: 'radio frequency',
      impedanceOhm: 75,
      velocity: 0.66,
      diameterMm: 6.1,
      jacket: 'black vinyl'
    })
    .wire(134, 'T12-3', 'T7-1', {
      construction: 'coax',
      cable: 'IF link',
      conductor: 'centre',
      awg: 22,
      insulation: 'polyethylene',
      ratingV: 600,
      function: 'IF from tuner',
      dcV: 0,
      acV: 0.1,
      critical: { keepLength: true },
      tapedMm: 260
    })
    .wire(135, 'T12-4', 'T7-2', {
      construction: 'shield',
      cable: 'IF link',
      conductor: 'shield',
      function: 'shield, ground',
      dcV: 0,
      tapedMm: 260
    })
    .wire(136, 'T11-3', 'V1-2', {
      ...pushBack('green'),
      function: 'RF grid',
      dcV: -2.5,
      acV: 0.1,
      critical: { keepPlace: true },
      tapedMm: 50
    })
    .wire(137, 'V2-6', 'T12-1', {
      ...pushBack('blue'),
      function: 'mixer plate',
      dcV: 235,
      acV: 2,
      amps: 0.01,
      tapedMm: 55
    })
    .wire(138, 'TS16-2', 'T12-2', {
      ...thermoplastic('red'),
      tracer: 'white',
      function: 'B+ 235 V',
      dcV: 236,
      amps: 0.01,
      tapedMm: 65
    })
    .wire(139, 'TS16-3', 'T11-4', {
      ...pushBack('white'),
      function: 'AGC to RF amplifier',
      tapedMm: 130
    });
};
