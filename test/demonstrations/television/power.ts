// Line, power transformer, 5U4GB, filter, and the two B+ rails that go out from it. The filament
// rectifier is hot long before the set draws: until then both rails stand near the peak of the winding.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import type { WireOptions } from '../../helpers/chassis-options.ts';
import { acSource, leads, lugs, winding } from '../set-parts.ts';
import { newWire, pigtail, thermoplastic, thinWall } from '../wire-stock.ts';

const line = {
  ...thermoplastic('gray'),
  awg: 18,
  function: 'ac line',
  acV: 117,
  amps: 2.2
} as const;

export const addPower = (set: ChassisBuilder): void => {
  addParts(set);
  addLine(set);
  addRectifier(set);
  addRails(set);
};

const addParts = (set: ChassisBuilder): void => {
  set
    .in('Main chassis')
    .part(
      'transformer',
      'T1',
      [
        ...leads(['green 1', 'green 2', 'brown 1', 'brown 2'], -36),
        ...leads(['red 1', 'red/yellow', 'red 2', 'yellow 1', 'yellow 2', 'black 1', 'black 2'], 36)
      ],
      {
        at: [410, 262],
        function: 'power',
        elements: [
          acSource('green 1', 'green 2', 6.3),
          acSource('brown 1', 'brown 2', 6.3),
          acSource('red 1', 'red/yellow', 275),
          acSource('red/yellow', 'red 2', 275),
          acSource('yellow 1', 'yellow 2', 5)
        ],
        notes: 'Primary 117 V, 60 cycles, about 200 W.'
      }
    )
    .part('jack', 'J3', lugs({ '1': [-5, 0], '2': [5, 0] }), {
      at: [330, 322],
      function: 'line interlock',
      elements: [acSource('1', '2', 117)]
    })
    .part('fuse', 'F1', lugs({ '1': [-12, 0], '2': [12, 0] }), {
      at: [420, 322],
      value: '3 A slow',
      elements: [{ kind: 'link', what: 'fuse', closed: true, from: '1', to: '2' }]
    })
    .strip('TS3', 3, { at: [440, 215], grounded: [2] })
    .tube('V17', '5U4GB', {
      at: [325, 270],
      function: 'rectifier',
      elements: [{ kind: 'source', current: 'dc', from: '8', volts: 297, noLoadVolts: 389 }]
    })
    .part('coil', 'L1', leads(['1', '2'], -14), {
      at: [270, 290],
      function: 'filter choke',
      value: '1.5 H, 45 ohm',
      elements: [winding('1', '2', 45)]
    })
    .part('capacitor', 'C1', lugs({ A: [-7, 6], B: [7, 6] }), {
      at: [300, 235],
      value: '40-80 uF, 450 V',
      function: 'filter',
      elements: [
        { kind: 'capacitor', from: 'A', farads: 40e-6, ratedV: 450 },
        { kind: 'capacitor', from: 'B', farads: 80e-6, ratedV: 450 }
      ]
    })
    .part('capacitor', 'C2', lugs({ A: [-8, 5], B: [0, -8], C: [8, 5] }), {
      at: [330, 175],
      value: '80-10-50 uF',
      function: 'filter',
      elements: [
        { kind: 'capacitor', from: 'A', farads: 80e-6, ratedV: 450 },
        { kind: 'capacitor', from: 'B', farads: 10e-6, ratedV: 450 },
        { kind: 'capacitor', from: 'C', farads: 50e-6, ratedV: 25 }
      ],
      notes: 'Section B leaks and has been left open by somebody.'
    })
    .strip('TS4', 4, { at: [285, 190], grounded: [3] })
    .resistor('R55', '500', 'TS4-1', 'TS4-4', { at: [285, 200], watts: 10 })
    .resistor('R56', '22k', 'TS4-4', 'TS4-3', { at: [294, 208], watts: 5 });
};

const addLine = (set: ChassisBuilder): void => {
  set
    .wire(24, 'J3-1', 'F1-1', { ...line, tapedMm: 110 })
    .wire(25, 'T1 black 1', 'F1-2', {
      ...pigtail('black', 600, 18),
      function: 'ac line, primary',
      acV: 117,
      amps: 2.2,
      tapedMm: 60
    })
    .wire(26, 'T1 black 2', 'TS3-1', {
      ...pigtail('black', 600, 18),
      function: 'ac line, primary',
      acV: 117,
      amps: 2.2,
      tapedMm: 120
    })
    .wire(27, 'TS3-1', 'S1-1', {
      ...line,
      route: ['K1', 'K2', 'K3', 'G3', 'K9'],
      outsideMm: 90,
      tapedMm: 560,
      dress: 'Twisted with 28.'
    })
    .wire(28, 'S1-2', 'J3-2', {
      ...line,
      route: ['K9', 'G3', 'K3', 'K2', 'K1'],
      outsideMm: 90,
      tapedMm: 640,
      dress: 'Twisted with 27.'
    });
};

const addRectifier = (set: ChassisBuilder): void => {
  const plate = { function: 'ac to rectifier plate', acV: 275, amps: 0.19, tapedMm: 95 };
  set
    .wire(30, 'T1 red 1', 'V17-4', { ...pigtail('red', 1000), ...plate })
    .wire(31, 'T1 red 2', 'V17-6', { ...pigtail('red', 1000), ...plate, tapedMm: 110 })
    .wire(32, 'T1 red/yellow', 'GL1', {
      ...pigtail('red/yellow', 1000),
      function: 'high voltage centre tap, ground',
      amps: 0.26,
      tapedMm: 45
    })
    .wire(33, 'T1 yellow 1', 'V17-2', {
      ...pigtail('yellow', 1000, 18),
      function: 'rectifier filament',
      amps: 3,
      tapedMm: 115
    })
    .wire(34, 'T1 yellow 2', 'V17-8', {
      ...pigtail('yellow', 1000, 18),
      function: 'rectifier filament, B+',
      dcV: 297,
      acV: 5,
      amps: 3,
      tapedMm: 120,
      condition: 'cotton gone where it passes the tube',
      planned: { way: 're-sleeve', colour: 'yellow', notes: 'Glass sleeve, 1000 V.' }
    })
    .wire(35, 'V17-8', 'C1-A', {
      ...thinWall('blue'),
      insulation: 'PVC',
      found: { stranding: 'stranded', plating: 'tinned', ratingC: 80 },
      origin: 'earlier repair',
      function: 'B+ 297 V, ahead of choke',
      dcV: 297,
      amps: 0.26,
      serviceData: { colour: 'red', awg: 20, ratingV: 600 },
      tapedMm: 60,
      condition: 'sound',
      notes:
        'Somebody had blue bell wire. Print says 300 V; rises to about 390 before the set draws.'
    });
};

const addRails = (set: ChassisBuilder): void => {
  const main = { ...thermoplastic('red'), function: 'B+ 285 V', dcV: 285 };
  const second = { ...thermoplastic('red'), tracer: 'white', function: 'B+ 235 V', dcV: 236 };
  const bus: WireOptions = {
    construction: 'sleeved bus',
    awg: 20,
    insulation: 'varnished cambric sleeve',
    ratingV: 600,
    found: { stranding: 'solid', plating: 'tinned' },
    function: 'B+ 235 V to IF strip',
    dcV: 236
  };
  set
    .wire(36, 'L1-1', 'C1-A', {
      ...pigtail('red', 1000),
      function: 'B+ 297 V, ahead of choke',
      dcV: 297,
      amps: 0.26,
      tapedMm: 60
    })
    .wire(37, 'L1-2', 'C1-B', {
      ...pigtail('red', 1000),
      ...{ function: 'B+ 285 V', dcV: 285 },
      amps: 0.26,
      tapedMm: 60
    })
    .wire(38, 'C1-B', 'TS4-1', { ...main, awg: 20, amps: 0.26, tapedMm: 75 })
    .wire(39, 'TS4-1', 'TS7-3', {
      ...main,
      amps: 0.042,
      route: ['K1'],
      tapedMm: 210,
      state: 'tagged',
      planned: newWire('red')
    })
    .wire(40, 'TS4-1', 'TS2-2', {
      ...main,
      amps: 0.1,
      route: ['K5', 'K6'],
      planned: newWire('red')
    })
    .wire(41, 'TS4-4', 'C2-A', { ...second, tapedMm: 40 })
    .wire(42, 'TS4-4', 'TS8-4', {
      ...second,
      amps: 0.065,
      route: ['K2'],
      tapedMm: 120,
      state: 'tagged',
      planned: { ...newWire('red'), tracer: 'white' }
    })
    .wire(43, 'TS8-4', 'TS5-5', {
      ...bus,
      amps: 0.042,
      tapedMm: 135,
      dress: 'Stiff tinned wire, keep it low along the deck; half the IF stays put because of it.'
    })
    .wire(44, 'TS5-1', 'TS16-2', {
      ...second,
      function: 'B+ 235 V to tuner',
      amps: 0.01,
      route: ['K7', 'G2'],
      outsideMm: 60,
      tapedMm: 265
    })
    .wire(45, 'TS4-4', 'TS6-4', { ...second, amps: 0.011, route: ['K2'] })
    .wire(46, 'TS4-4', 'TS10-4', { ...second, amps: 0.012 })
    .wire(47, 'TS10-4', 'TS12-1', { ...second, amps: 0.008, state: 'tagged' })
    .wire(48, 'TS5-5', 'TS5-1', { ...bus, amps: 0.031, tapedMm: 42 });
};
