// Line, power transformer, 5U4GB, filter, and the two B+ rails that go out from it. The filament
// rectifier is hot long before the set draws: until then both rails stand near the peak of the winding.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import type { WireOptions } from '../../helpers/chassis-options.ts';
import { acSource, leads, lugs, octalLugs, winding } from '../set-parts.ts';
import { inPowerCable, newWire, pigtail, thermoplastic, thinWall } from '../wire-stock.ts';

const line = {
  ...thermoplastic('gray'),
  awg: 18,
  function: 'ac line',
  acV: 117,
  amps: 2.2
};
const toSwitch = {
  ...line,
  route: ['K1', 'K2', 'K3', 'G3', 'K9'],
  outsideMm: 90,
  tapedMm: 640
};

export const addPower = (set: ChassisBuilder): void => {
  addPowerUnit(set);
  addFilter(set);
  addLine(set);
  addRectifier(set);
  addRails(set);
};

const addPowerUnit = (set: ChassisBuilder): void => {
  set
    .in('Power unit')
    .part(
      'transformer',
      'T1',
      [
        ...leads(['green 1', 'green 2', 'brown 1', 'brown 2', 'black 1', 'black 2'], 34),
        ...leads(['red 1', 'red/yellow', 'red 2', 'yellow 1', 'yellow 2'], -34)
      ],
      {
        at: [52, 66],
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
    .strip('TS1', 3, { at: [60, 132], grounded: [2] })
    .strip('TS3', 3, { at: [108, 112], grounded: [2] })
    .part('fuse', 'F1', lugs({ '1': [-12, 0], '2': [12, 0] }), {
      at: [118, 138],
      value: '3 A slow',
      elements: [{ kind: 'link', what: 'fuse', closed: true, from: '1', to: '2' }]
    })
    .part('jack', 'J3', lugs({ '1': [-5, 0], '2': [5, 0] }), {
      at: [165, 140],
      function: 'line interlock',
      elements: [acSource('1', '2', 117)]
    })
    .tube('V17', '5U4GB', {
      at: [130, 42],
      function: 'rectifier',
      elements: [{ kind: 'source', current: 'dc', from: '8', volts: 297, noLoadVolts: 389 }]
    })
    .part('capacitor', 'C1', lugs({ A: [-8, 5], B: [8, 5], can: [0, -8] }, ['can']), {
      at: [165, 80],
      value: '40-80 uF, 450 V',
      function: 'filter',
      elements: [
        { kind: 'capacitor', from: 'A', to: 'can', farads: 40e-6, ratedV: 450 },
        { kind: 'capacitor', from: 'B', to: 'can', farads: 80e-6, ratedV: 450 }
      ]
    })
    .part('coil', 'L1', leads(['1', '2'], 14), {
      at: [190, 30],
      function: 'filter choke',
      value: '1.5 H, 45 ohm',
      elements: [winding('1', '2', 45)]
    })
    .part('plug', 'P4', octalLugs('plug pin'), {
      at: [210, 110],
      function: 'to main chassis',
      mates: 'J4'
    })
    .cable('power cable', 'multi-conductor', { signal: 'supply', jacket: 'cotton loom' });
};

const addFilter = (set: ChassisBuilder): void => {
  set
    .in('Main chassis')
    .part('jack', 'J4', octalLugs('solder lug'), { at: [390, 312], function: 'from power unit' })
    .part('capacitor', 'C2', lugs({ A: [-8, 5], B: [0, -8], C: [8, 5], can: [-8, -5] }, ['can']), {
      at: [330, 175],
      value: '80-10-50 uF',
      function: 'filter',
      elements: [
        { kind: 'capacitor', from: 'A', to: 'can', farads: 80e-6, ratedV: 450 },
        { kind: 'capacitor', from: 'B', to: 'can', farads: 10e-6, ratedV: 450 },
        { kind: 'capacitor', from: 'C', to: 'can', farads: 50e-6, ratedV: 25 }
      ],
      notes: 'Section B leaks and has been left open by somebody.'
    })
    .strip('TS4', 4, { at: [285, 190], grounded: [3] })
    .resistor('R55', '500', 'TS4-1', 'TS4-4', { at: [285, 200], watts: 10 })
    .resistor('R56', '22k', 'TS4-4', 'TS4-3', { at: [294, 208], watts: 5 });
};

const addLine = (set: ChassisBuilder): void => {
  const primary = {
    ...pigtail('black', 600, 18),
    function: 'ac line, primary',
    acV: 117,
    amps: 2.2
  };
  set
    .wire(26, 'J3-1', 'F1-1', { ...line, tapedMm: 70 })
    .wire(27, 'T1 black 1', 'F1-2', { ...primary, tapedMm: 85 })
    .wire(28, 'T1 black 2', 'TS3-1', { ...primary, tapedMm: 45 })
    .wire(29, 'TS3-1', 'P4-7', { ...line, ...inPowerCable('gray') })
    .wire(30, 'J3-2', 'P4-8', { ...line, ...inPowerCable('gray') })
    .wire(31, 'J4-7', 'S1-1', { ...toSwitch, dress: 'Twisted with 32.' })
    .wire(32, 'S1-2', 'J4-8', {
      ...toSwitch,
      route: [...toSwitch.route].reverse(),
      dress: 'Twisted with 31.'
    });
};

const addRectifier = (set: ChassisBuilder): void => {
  const plate = {
    ...pigtail('red', 1000),
    function: 'ac to rectifier plate',
    acV: 275,
    amps: 0.19
  };
  set
    .wire(33, 'T1 red 1', 'V17-4', { ...plate, tapedMm: 120 })
    .wire(34, 'T1 red 2', 'V17-6', { ...plate, tapedMm: 110 })
    .wire(35, 'T1 red/yellow', 'GL1', {
      ...pigtail('red/yellow', 1000),
      function: 'high voltage centre tap, ground',
      amps: 0.26,
      tapedMm: 130
    })
    .wire(36, 'T1 yellow 1', 'V17-2', {
      ...pigtail('yellow', 1000, 18),
      function: 'rectifier filament',
      amps: 3,
      tapedMm: 85
    })
    .wire(37, 'T1 yellow 2', 'V17-8', {
      ...pigtail('yellow', 1000, 18),
      function: 'rectifier filament, B+',
      dcV: 297,
      acV: 5,
      amps: 3,
      tapedMm: 90,
      condition: 'cotton gone where it passes the tube',
      planned: { way: 're-sleeve', colour: 'yellow', insulation: 'glass sleeve', ratingV: 1000 }
    })
    .wire(38, 'V17-8', 'C1 A', {
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
    .wire(39, 'L1-1', 'C1 A', {
      ...pigtail('red', 1000),
      function: 'B+ 297 V, ahead of choke',
      dcV: 297,
      amps: 0.26,
      tapedMm: 60
    })
    .wire(40, 'L1-2', 'C1 B', {
      ...pigtail('red', 1000),
      function: 'B+ 285 V',
      dcV: 285,
      amps: 0.26,
      tapedMm: 60
    })
    .wire(41, 'C1 B', 'P4-4', { ...main, ...inPowerCable('red'), awg: 20, amps: 0.26 })
    .wire(42, 'J4-4', 'TS4-1', { ...main, awg: 20, amps: 0.26, tapedMm: 200 })
    .wire(43, 'TS4-1', 'TS7-3', {
      ...main,
      amps: 0.042,
      route: ['K1'],
      tapedMm: 210,
      state: 'tagged',
      planned: newWire('red')
    })
    .wire(44, 'TS4-1', 'TS2-2', {
      ...main,
      amps: 0.1,
      route: ['K5', 'K6'],
      planned: newWire('red')
    })
    .wire(45, 'TS4-4', 'C2 A', { ...second, tapedMm: 40 })
    .wire(46, 'TS4-4', 'TS8-4', {
      ...second,
      amps: 0.065,
      route: ['K2'],
      tapedMm: 120,
      state: 'tagged',
      planned: { ...newWire('red'), tracer: 'white' }
    })
    .wire(47, 'TS8-4', 'TS5-5', {
      ...bus,
      amps: 0.042,
      tapedMm: 135,
      dress: 'Stiff tinned wire, keep it low along the deck; half the IF stays put because of it.'
    })
    .wire(48, 'TS5-5', 'TS5-1', { ...bus, amps: 0.031, tapedMm: 42 })
    .wire(49, 'TS5-1', 'TS16-2', {
      ...second,
      function: 'B+ 235 V to tuner',
      amps: 0.01,
      route: ['K7', 'G2'],
      outsideMm: 60,
      tapedMm: 265
    })
    .wire(50, 'TS4-4', 'TS6-4', { ...second, amps: 0.011, route: ['K2'] })
    .wire(51, 'TS4-4', 'TS10-4', { ...second, amps: 0.012 })
    .wire(52, 'TS10-4', 'TS12-1', { ...second, amps: 0.008, state: 'tagged' })
    .wire(53, 'GL1', 'P4-3', {
      ...thermoplastic('black'),
      ...inPowerCable('black'),
      awg: 14,
      function: 'chassis return of the power unit',
      dcV: 0,
      amps: 8.6
    })
    .wire(54, 'J4-3', 'GL2', {
      ...thermoplastic('black'),
      awg: 14,
      function: 'chassis return of the power unit',
      dcV: 0,
      amps: 8.6,
      tapedMm: 45
    });
};
