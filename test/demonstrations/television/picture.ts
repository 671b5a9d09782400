// Three IF stages, the detector in the can of T10, video output and sync separator.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import { addTunedCan, draws, winding } from '../set-parts.ts';
import { newWire, pushBack, thermoplastic } from '../wire-stock.ts';

export const addPicture = (set: ChassisBuilder): void => {
  addStrip(set);
  addVideoParts(set);
  addIfWires(set);
  addVideoWires(set);
};

const addStrip = (set: ChassisBuilder): void => {
  const stage = { function: 'picture IF', grounded: ['4', '7'] };
  const current = [draws('5', '2', 8), draws('6', '2', 2.4)];
  set.in('Main chassis');
  addTunedCan(set, 'T7', { at: [32, 42], function: 'IF input', grounded: ['2'] });
  set
    .tube('V3', '6CB6A', { at: [70, 42], ...stage, elements: current })
    .tube('V4', '6CB6A', { at: [145, 42], ...stage, elements: current })
    .tube('V5', '6CB6A', {
      at: [220, 42],
      ...stage,
      elements: [draws('5', '2', 9), draws('6', '2', 2.5)]
    });
  const can = { grounded: ['4'] };
  addTunedCan(set, 'T8', { at: [108, 42], ...can, function: '1st IF', leadTwoOn: 'V3-6' });
  addTunedCan(set, 'T9', { at: [183, 42], ...can, function: '2nd IF', leadTwoOn: 'V4-6' });
  addTunedCan(set, 'T10', {
    at: [258, 42],
    ...can,
    function: '3rd IF and video detector',
    leadTwoOn: 'V5-6',
    elements: [
      winding('1', '2', 3),
      { kind: 'source', current: 'dc', from: '3', to: '4', volts: -2.5, noLoadVolts: 0 }
    ],
    notes: 'Crystal diode inside the can; 2.5 V of it on a good station.'
  });
  set
    .strip('TS5', 5, { at: [150, 82], grounded: [3] })
    .strip('TS9', 3, { at: [70, 92], grounded: [2] })
    .resistor('R20', '47', 'V3-2', 'V3-7', { watts: 0.5 })
    .resistor('R22', '47', 'V4-2', 'V4-7', { watts: 0.5 })
    .resistor('R24', '150', 'V5-2', 'V5-7', { watts: 0.5 })
    .capacitor('C20', '1000 pF', 'V3-6', 'V3-7', { ratedV: 500 })
    .resistor('R21', '1k', 'TS5-1', 'V3-6', { watts: 0.5 })
    .resistor('R23', '1k', 'TS5-1', 'V4-6', { watts: 0.5 })
    .resistor('R25', '1k', 'TS5-5', 'V5-6', { watts: 0.5 })
    .resistor('R26', '3.9k', 'T10-3', 'T10-4', { watts: 0.5 })
    .resistor('R40', '1M', 'T10-3', 'TS8-6', { watts: 0.5 })
    .capacitor('C34', '0.22 uF', 'TS9-1', 'TS9-2', { ratedV: 200 });
};

const addVideoParts = (set: ChassisBuilder): void => {
  set
    .tube('V6', '6AW8A', {
      at: [302, 55],
      function: 'video output, sync separator',
      grounded: ['1', '5'],
      elements: [draws('9', '6', 12), draws('8', '6', 3), draws('3', '1', 4)]
    })
    .strip('TS8', 6, { at: [285, 108], grounded: [3] })
    .part(
      'coil',
      'L2',
      [
        { name: 'A', on: 'TS8-1' },
        { name: 'B', on: 'TS8-2' }
      ],
      {
        function: 'peaking',
        value: '250 uH',
        elements: [winding('A', 'B', 8)]
      }
    )
    .resistor('R27', '4.7k', 'TS8-2', 'TS8-4', { watts: 5 })
    .resistor('R28', '15k', 'V6-8', 'TS8-4', { watts: 1 })
    .capacitor('C23', '0.1 uF', 'V6-8', 'TS8-3', { ratedV: 400 })
    .resistor('R30', '10k', 'TS8-1', 'TS8-5', { watts: 0.5 })
    .capacitor('C25', '0.05 uF', 'TS8-5', 'V6-2', { ratedV: 400 })
    .resistor('R31', '1M', 'V6-2', 'V6-1', { watts: 0.5 })
    .resistor('R32', '22k', 'V6-3', 'TS8-4', { watts: 1 })
    .capacitor('C27', '2.2 pF', 'TS8-1', 'T5-1', { ratedV: 500 });
};

const addIfWires = (set: ChassisBuilder): void => {
  const grid = { ...pushBack('green'), dcV: 0, acV: 0.1, critical: { keepPlace: true } };
  const plate = { ...pushBack('blue'), dcV: 225, acV: 1, amps: 0.008 };
  set
    .wire(77, 'T7-3', 'V3-1', {
      ...grid,
      dcV: -2.5,
      function: '1st IF grid',
      critical: { keepLength: true, keepPlace: true },
      tapedMm: 36,
      dress: 'Straight across, 1/4 in off the deck. Alignment moves with it.',
      notes: '36 mm lug to lug, checked twice.'
    })
    .wire(78, 'V3-5', 'T8-1', { ...plate, function: '1st IF plate', tapedMm: 38 })
    .wire(79, 'T8-3', 'V4-1', { ...grid, function: '2nd IF grid', tapedMm: 36 })
    .wire(80, 'V4-5', 'T9-1', { ...plate, function: '2nd IF plate', tapedMm: 38 })
    .wire(81, 'T9-3', 'V5-1', { ...grid, function: '3rd IF grid', tapedMm: 36 })
    .wire(82, 'V5-5', 'T10-1', { ...plate, amps: 0.009, function: '3rd IF plate', tapedMm: 38 })
    .wire(83, 'T10-3', 'V6-7', {
      ...pushBack('green'),
      function: 'detected video, grid',
      dcV: -2.5,
      acV: 1.5,
      critical: { keepShort: true },
      tapedMm: 50
    })
    .wire(86, 'TS8-6', 'TS9-1', {
      ...thermoplastic('white'),
      function: 'AGC',
      dcV: -2.5,
      route: ['K3', 'K4'],
      tapedMm: 285,
      state: 'tagged'
    })
    .wire(87, 'TS9-1', 'T7-4', { ...pushBack('white'), function: 'AGC to 1st IF', tapedMm: 65 })
    .wire(88, 'TS9-1', 'TS16-3', {
      ...thermoplastic('white'),
      function: 'AGC to tuner',
      toEnd: { known: 'metered' },
      route: ['G2'],
      outsideMm: 60,
      tapedMm: 185
    });
};

const addVideoWires = (set: ChassisBuilder): void => {
  set
    .wire(90, 'V6-9', 'TS8-1', {
      ...thermoplastic('blue'),
      function: 'video output plate',
      dcV: 180,
      acV: 30,
      amps: 0.012,
      critical: { keepShort: true },
      tapedMm: 75,
      state: 'tagged',
      planned: newWire('blue')
    })
    .wire(91, 'V6-6', 'R3-2', {
      ...thermoplastic('yellow'),
      function: 'video output cathode, contrast',
      dcV: 3,
      acV: 1,
      route: ['K3', 'G3', 'K9'],
      outsideMm: 90,
      tapedMm: 355
    })
    .wire(92, 'TS8-1', 'V18-11', {
      ...thermoplastic('yellow'),
      function: 'picture tube cathode, video',
      dcV: 180,
      acV: 30,
      critical: { keepPlace: true },
      route: ['K2', 'K5', 'K6', 'G4'],
      outsideMm: 420,
      tapedMm: 730,
      dress: 'Alone, clear of the bundle and of the deck: every inch beside metal costs definition.'
    })
    .wire(93, 'TS8-4', 'R4-3', {
      ...thermoplastic('black'),
      origin: 'earlier repair',
      function: 'brightness, B+ 235 V',
      dcV: 236,
      amps: 0.0024,
      route: ['K3', 'G3', 'K9'],
      outsideMm: 90,
      tapedMm: 320,
      planned: { ...newWire('red'), tracer: 'white' },
      notes: 'Black on B+. Not the maker’s work: other solder, no lacquer.'
    })
    .wire(94, 'R4-2', 'V18-2', {
      ...thermoplastic('green'),
      function: 'picture tube grid, brightness',
      dcV: 118,
      route: ['K9', 'G3', 'K3', 'K2', 'K5', 'K6', 'G4'],
      outsideMm: 510,
      tapedMm: 960
    });
};
