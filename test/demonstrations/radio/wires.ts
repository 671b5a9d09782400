// The radio's wires, as they are numbered on their tags: line and heaters, B+, B-, signals.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import type { WireOptions } from '../../helpers/chassis-options.ts';
import { bare, newWire, pigtail, pushBack, thermoplastic } from '../wire-stock.ts';

export const addRadioWires = (set: ChassisBuilder): void => {
  addLine(set);
  addHeaters(set);
  addSupply(set);
  addMinus(set);
  addRadioFrequency(set);
  addAudio(set);
};

const cord: WireOptions = {
  awg: 18,
  insulation: 'rubber zip cord',
  colour: 'brown',
  ratingV: 300,
  condition: 'cracked at the plug',
  found: { stranding: 'stranded' },
  function: 'line',
  acV: 117,
  amps: 0.22,
  outsideMm: 1500,
  tapedMm: 1700
};

const addLine = (set: ChassisBuilder): void => {
  set
    .wire(1, 'P1-1', 'TS1-1', {
      ...cord,
      route: ['G1'],
      planned: { ...newWire('brown', 18), style: 'UL 1015' }
    })
    .wire(2, 'P1-2', 'S1-1', {
      ...cord,
      route: ['G1'],
      planned: { ...newWire('brown', 18), style: 'UL 1015' },
      notes:
        'Switch is in the return: off, the chassis side still hangs on the line through the heaters.'
    })
    .wire(3, 'S1-2', 'TS2-1', {
      ...thermoplastic('black'),
      function: 'line return, B-',
      dcV: 0,
      amps: 0.22,
      tapedMm: 125,
      state: 'tagged'
    });
};

const addHeaters = (set: ChassisBuilder): void => {
  const string: WireOptions = {
    ...pushBack('brown'),
    function: 'heater string',
    amps: 0.15
  };
  set
    .wire(4, 'TS1-1', 'V5-4', {
      ...string,
      function: 'line to heater string',
      amps: 0.22,
      tapedMm: 55
    })
    .wire(5, 'V5-3', 'V4-4', { ...string, tapedMm: 60, state: 'tagged' })
    .wire(6, 'V4-3', 'V2-4', { ...string, route: ['K1'], tapedMm: 110, state: 'tagged' })
    .wire(7, 'V2-3', 'V1-4', { ...string, tapedMm: 75 })
    .wire(8, 'V1-3', 'V3-4', {
      ...string,
      route: ['K2'],
      tapedMm: 150,
      notes: 'First audio is last in the string, next to B-, for hum.'
    })
    .wire(9, 'V3-3', 'TS2-1', { ...string, function: 'heater string to B-', tapedMm: 45 })
    .wire(10, 'V5-4', 'I1-1', {
      ...pushBack('brown'),
      tracer: 'yellow',
      function: 'dial lamp, line',
      amps: 0.15,
      route: ['K1'],
      tapedMm: 145,
      condition: 'stripped bare at the lamp socket'
    })
    .wire(11, 'V5-6', 'I1-2', {
      ...pushBack('brown'),
      tracer: 'black',
      function: 'dial lamp, line',
      amps: 0.15,
      route: ['K1'],
      tapedMm: 140
    })
    .wire(12, 'V5-5', 'V5-6', {
      ...bare(22),
      function: 'rectifier plate to heater tap, line',
      tapedMm: 12
    });
};

const addSupply = (set: ChassisBuilder): void => {
  const rail: WireOptions = { ...thermoplastic('red'), function: 'B+ 90 V', dcV: 93 };
  set
    .wire(13, 'V5-7', 'TS1-3', {
      ...thermoplastic('red'),
      function: 'B+ 122 V',
      dcV: 122,
      amps: 0.065,
      tapedMm: 45
    })
    .wire(14, 'T2 red', 'TS1-3', {
      ...pigtail('red', 600),
      function: 'B+ 122 V',
      dcV: 122,
      amps: 0.038,
      tapedMm: 90
    })
    .wire(15, 'TS1-4', 'V4-6', { ...rail, amps: 0.024, tapedMm: 65, planned: newWire('red') })
    .wire(16, 'V4-6', 'T4-2', { ...rail, amps: 0.021, route: ['K1'], tapedMm: 90 })
    .wire(17, 'T4-2', 'V2-6', { ...rail, amps: 0.013, tapedMm: 55 })
    .wire(18, 'V2-6', 'T3-2', { ...rail, amps: 0.01, tapedMm: 60 })
    .wire(19, 'T3-2', 'V1-6', { ...rail, amps: 0.0075, tapedMm: 65 });
};

const addMinus = (set: ChassisBuilder): void => {
  const minus: WireOptions = { ...pushBack('black'), function: 'B-' };
  set
    .wire(20, 'TS2-1', 'TS2-2', { ...bare(20), function: 'B-', tapedMm: 14 })
    .wire(21, 'V3-2', 'TS2-2', { ...minus, tapedMm: 40 })
    .wire(22, 'V2-2', 'V2-7', { ...bare(22), function: 'B-', tapedMm: 17 })
    .wire(23, 'V2-7', 'V3-2', { ...minus, tapedMm: 60 })
    .wire(24, 'L2-3', 'TS4-3', { ...minus, tapedMm: 85 })
    .wire(25, 'TS4-3', 'TS2-2', { ...minus, route: ['K2'], tapedMm: 70 })
    .wire(26, 'V3-5', 'V3-2', { ...bare(22), function: 'B-, spare diode', tapedMm: 17 });
};

const addRadioFrequency = (set: ChassisBuilder): void => {
  const dress = 'As short as it lies, away from the oscillator.';
  const grid: WireOptions = {
    dress,
    ...pushBack('green'),
    dcV: -1.5,
    acV: 0.1,
    critical: { keepPlace: true }
  };
  set
    .wire(27, 'L1-1', 'C2-A', {
      ...pushBack('green'),
      function: 'antenna, loop',
      dcV: -1.5,
      acV: 0.1,
      route: ['G2'],
      outsideMm: 60,
      tapedMm: 150,
      critical: { keepLength: true },
      dress: 'Loop leads are part of the tuning: same length, same place.'
    })
    .wire(28, 'L1-2', 'TS4-1', {
      ...pushBack('black'),
      function: 'antenna, AVC side',
      route: ['G2'],
      outsideMm: 60,
      tapedMm: 240,
      critical: { keepLength: true }
    })
    .wire(29, 'C2-A', 'V1-7', { ...grid, function: 'signal grid', tapedMm: 65 })
    .wire(30, 'C2-B', 'L2-1', {
      ...pushBack('yellow'),
      function: 'oscillator, signal',
      tapedMm: 90,
      critical: { keepPlace: true },
      dress: 'Stiff, straight from gang to coil: the dial moves with it.'
    })
    .wire(31, 'L2-2', 'V1-2', {
      ...pushBack('yellow'),
      function: 'oscillator cathode',
      dcV: 0,
      acV: 2,
      tapedMm: 50
    })
    .wire(32, 'V1-5', 'T3-1', {
      ...pushBack('blue'),
      function: 'converter plate',
      dcV: 93,
      acV: 1,
      tapedMm: 45
    })
    .wire(33, 'T3-3', 'V2-1', { ...grid, function: 'IF grid', tapedMm: 45 })
    .wire(34, 'T3-4', 'TS4-1', { ...pushBack('white'), function: 'AVC', dcV: -1.5, tapedMm: 75 })
    .wire(35, 'V2-5', 'T4-1', {
      ...pushBack('blue'),
      function: 'IF plate',
      dcV: 93,
      acV: 10,
      tapedMm: 45
    })
    .wire(36, 'T4-3', 'V3-6', {
      ...pushBack('green'),
      function: 'detector diode, IF signal',
      tapedMm: 50
    });
};

const addAudio = (set: ChassisBuilder): void => {
  set
    .wire(37, 'T4-4', 'R1-3', {
      ...pushBack('white'),
      function: 'detected audio to volume control',
      dcV: -1.5,
      acV: 1,
      tapedMm: 65
    })
    .wire(38, 'R1-1', 'TS2-2', {
      ...pushBack('black'),
      function: 'B-, volume control',
      tapedMm: 100
    })
    .wire(39, 'T2 blue', 'V4-7', {
      ...pigtail('blue', 600),
      function: 'audio output plate',
      dcV: 115,
      acV: 50,
      amps: 0.038,
      tapedMm: 60
    })
    .wire(40, 'T2 green', 'LS1-1', {
      ...pigtail('green', 300),
      function: 'voice coil',
      dcV: 0,
      acV: 2,
      amps: 0.6,
      outsideMm: 60,
      tapedMm: 150
    })
    .wire(41, 'T2 black', 'LS1-2', {
      ...pigtail('black', 300),
      function: 'voice coil',
      dcV: 0,
      acV: 2,
      amps: 0.6,
      outsideMm: 60,
      tapedMm: 150
    })
    .wire(42, 'V3-1', null, {
      ...pushBack('gray'),
      toEnd: { as: 'cut off under the tone plate' },
      origin: 'modification',
      function: 'audio',
      notes: 'Somebody had a record player on it. Remove with its end, once sure.'
    });
};
