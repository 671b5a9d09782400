// From the 4.5 Mc take-off to the voice coil. The ratio detector's diodes sit in the can of T6. The
// audio goes out to the volume control and back in one shielded pair, grounded here alone.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import { addTunedCan, draws, leads, lugs, winding } from '../set-parts.ts';
import { newWire, pigtail, pushBack, thermoplastic } from '../wire-stock.ts';

export const addSound = (set: ChassisBuilder): void => {
  addParts(set);
  addWires(set);
};

const addParts = (set: ChassisBuilder): void => {
  set
    .in('Main chassis')
    .part('coil', 'T5', lugs({ '1': [-6, 6], '2': [6, 6], '3': [0, -6] }, ['3']), {
      at: [330, 80],
      function: '4.5 Mc take-off',
      elements: [winding('1', '2', 4), winding('2', '3', 4)]
    });
  addTunedCan(set, 'T6', {
    at: [395, 35],
    function: 'ratio detector',
    grounded: ['4'],
    leadTwoOn: 'V7-6'
  });
  set
    .tube('V7', '6AU6A', {
      at: [360, 80],
      function: 'sound IF',
      grounded: ['2', '4'],
      elements: [draws('5', '7', 7.6), draws('6', '7', 3)]
    })
    .resistor('R33', '68', 'V7-7', 'V7-2', { watts: 0.5 })
    .resistor('R34', '1k', 'V7-6', 'TS6-4', { watts: 0.5 })
    .strip('TS6', 4, { at: [375, 108], grounded: [3] })
    .capacitor('C30', '0.001 uF', 'TS6-1', 'TS6-3', { ratedV: 500 })
    .tube('V8', '6AV6', {
      at: [432, 70],
      function: 'first audio',
      grounded: ['2', '4', '5', '6'],
      elements: [draws('7', '2', 0.5)]
    })
    .capacitor('C31', '0.01 uF', 'TS6-2', 'V8-1', { ratedV: 400 })
    .resistor('R36', '10M', 'V8-1', 'V8-2', { watts: 0.5 })
    .resistor('R37', '220k', 'V8-7', 'TS6-4', { watts: 0.5 })
    .strip('TS7', 3, { at: [412, 112], grounded: [2] })
    .capacitor('C32', '0.01 uF', 'V8-7', 'TS7-1', { ratedV: 600 })
    .resistor('R38', '470k', 'TS7-1', 'TS7-2', { watts: 0.5 })
    .tube('V9', '6AQ5A', {
      at: [430, 142],
      function: 'audio output',
      grounded: ['4'],
      elements: [draws('5', '2', 38), draws('6', '2', 4)]
    })
    .resistor('R39', '270', 'V9-2', 'TS7-2', { watts: 1 })
    .part('transformer', 'T4', [...leads(['blue', 'red'], -12), ...leads(['green', 'black'], 12)], {
      at: [435, 180],
      function: 'audio output',
      elements: [winding('blue', 'red', 330), winding('green', 'black', 0.6)]
    })
    .part('jack', 'J2', lugs({ '1': [-5, 0], '2': [5, 0] }, ['2']), {
      at: [445, 205],
      function: 'speaker'
    });
};

const addWires = (set: ChassisBuilder): void => {
  const pair = {
    cable: 'volume pair',
    awg: 24,
    insulation: 'rubber',
    ratingV: 300,
    found: { stranding: 'stranded' as const },
    route: ['K2', 'K3', 'G3', 'K9'],
    outsideMm: 90,
    tapedMm: 500
  };
  set
    .cable('volume pair', 'shielded pair', {
      signal: 'audio',
      jacket: 'cotton braid over the shield',
      diameterMm: 5.5,
      notes: 'Shield soldered at TS6 only; at the control it is the return of the low end.'
    })
    .wire(60, 'TS6-1', 'R1-3', {
      ...pair,
      conductor: 'red',
      colour: 'red',
      function: 'audio to volume control',
      dcV: 0,
      acV: 2
    })
    .wire(61, 'R1-2', 'TS6-2', {
      ...pair,
      route: ['K9', 'G3', 'K3', 'K2'],
      conductor: 'white',
      colour: 'white',
      function: 'audio from volume control',
      dcV: 0,
      acV: 2
    })
    .wire(62, 'TS6-3', 'R1-1', {
      ...pair,
      construction: 'shield',
      conductor: 'shield',
      insulation: 'cotton braid',
      function: 'shield, audio return',
      dress: 'Insulated from the bracket of the control. Do not ground it there as well.'
    })
    .wire(63, 'TS7-1', 'V9-1', {
      ...thermoplastic('green'),
      function: 'audio output grid',
      dcV: 0,
      acV: 8,
      tapedMm: 50
    })
    .wire(64, 'T4 blue', 'V9-5', {
      ...pigtail('blue', 600),
      function: 'audio output plate',
      dcV: 272,
      acV: 95,
      amps: 0.038,
      tapedMm: 60
    })
    .wire(65, 'T4 red', 'TS7-3', {
      ...pigtail('red', 600),
      function: 'B+ 285 V',
      dcV: 285,
      amps: 0.038,
      tapedMm: 75
    })
    .wire(66, 'V9-6', 'TS7-3', {
      ...thermoplastic('orange'),
      function: 'audio output screen, B+',
      dcV: 285,
      amps: 0.004,
      tapedMm: 50
    })
    .wire(67, 'V9-2', 'C2-C', {
      ...thermoplastic('yellow'),
      function: 'audio output cathode',
      dcV: 11.5,
      route: ['K1']
    })
    .wire(68, 'T4 green', 'J2-1', {
      ...pigtail('green', 300),
      function: 'voice coil',
      dcV: 0,
      acV: 3,
      amps: 0.9,
      tapedMm: 40
    })
    .wire(69, 'T4 black', 'J2-2', {
      ...pigtail('black', 300),
      function: 'voice coil, ground',
      amps: 0.9,
      tapedMm: 40
    })
    .wire(70, 'T5-2', 'V7-1', {
      ...pushBack('green'),
      function: 'sound IF grid',
      critical: { keepPlace: true, keepShort: true },
      dcV: 0,
      acV: 1,
      tapedMm: 30
    })
    .wire(71, 'V7-5', 'T6-1', {
      ...pushBack('blue'),
      function: 'sound IF plate',
      dcV: 225,
      acV: 10,
      tapedMm: 50,
      planned: newWire('blue')
    })
    .wire(72, 'T6-3', 'TS6-1', {
      ...pushBack('white'),
      function: 'detected audio',
      tapedMm: 80
    });
};
