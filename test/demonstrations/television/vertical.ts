// Sync amplifier and vertical oscillator in one 6CG7, a 6AQ5A as vertical output.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import { addControl, draws, leads, winding } from '../set-parts.ts';
import { pigtail, pushBack, thermoplastic } from '../wire-stock.ts';

export const addVertical = (set: ChassisBuilder): void => {
  set
    .in('Main chassis')
    .tube('V10', '6CG7', {
      at: [218, 148],
      function: 'sync amplifier, vertical oscillator',
      grounded: ['3', '5', '8', '9'],
      elements: [draws('1', '3', 4), draws('6', '8', 0.5)]
    })
    .strip('TS10', 5, { at: [180, 120], grounded: [3] })
    .capacitor('C26', '0.01 uF', 'TS10-1', 'V10-2', { ratedV: 400 })
    .resistor('R59', '1M', 'V10-2', 'V10-3', { watts: 0.5 })
    .resistor('R42', '22k', 'V10-1', 'TS10-4', { watts: 1 })
    .capacitor('C37', '0.005 uF', 'V10-1', 'V10-7', { ratedV: 600 })
    .capacitor('C38', '0.1 uF', 'V10-6', 'TS10-5', { ratedV: 600 })
    .resistor('R45', '1M', 'TS10-5', 'TS10-3', { watts: 0.5 })
    .tube('V11', '6AQ5A', {
      at: [235, 222],
      function: 'vertical output',
      grounded: ['4'],
      elements: [draws('5', '2', 18), draws('6', '2', 2)]
    })
    .part(
      'transformer',
      'T3',
      [...leads(['blue', 'red'], -12), ...leads(['yellow', 'black'], 12)],
      {
        at: [222, 290],
        function: 'vertical output',
        elements: [winding('blue', 'red', 400), winding('yellow', 'black', 4)]
      }
    );
  addControl(set, 'R6', 800_000, {
    at: [205, 318],
    value: '1M',
    function: 'height',
    rotation: 180
  });
  addControl(set, 'R7', 1500, {
    at: [240, 318],
    value: '1.5k',
    function: 'vertical linearity',
    rotation: 180,
    grounded: ['1']
  });
  addWires(set);
};

const addWires = (set: ChassisBuilder): void => {
  set
    .wire(96, 'V6-3', 'TS10-1', {
      ...thermoplastic('white'),
      function: 'separated sync',
      route: ['K3']
    })
    .wire(97, 'V10-7', 'R5-2', {
      ...thermoplastic('green'),
      tracer: 'white',
      function: 'vertical hold',
      route: ['K3', 'G3', 'K9'],
      outsideMm: 90,
      tapedMm: 320
    })
    .wire(98, 'TS13-2', 'R6-1', {
      ...thermoplastic('red'),
      tracer: 'yellow',
      function: 'boosted B+ to height control',
      dcV: 325,
      route: ['G1'],
      tapedMm: 215
    })
    .wire(99, 'R6-2', 'V10-6', {
      ...thermoplastic('blue'),
      tracer: 'white',
      function: 'vertical oscillator plate',
      dcV: 125,
      acV: 45,
      route: ['K6', 'K5']
    })
    .wire(100, 'TS10-5', 'V11-1', {
      ...thermoplastic('green'),
      function: 'vertical output grid',
      dcV: 0,
      acV: 40,
      route: ['K5']
    })
    .wire(101, 'T3 blue', 'V11-5', {
      ...pigtail('blue', 2000),
      function: 'vertical output plate',
      dcV: 278,
      acV: 60,
      pulseV: 1100,
      amps: 0.018,
      tapedMm: 80,
      notes: 'Retrace spike of about 1.1 kV.'
    })
    .wire(102, 'T3 red', 'TS4-1', {
      ...pigtail('red', 600),
      function: 'B+ 285 V',
      dcV: 285,
      amps: 0.018,
      route: ['K6']
    })
    .wire(103, 'V11-6', 'TS4-1', {
      ...thermoplastic('orange'),
      function: 'vertical output screen, B+',
      dcV: 285,
      amps: 0.002,
      tapedMm: 75
    })
    .wire(104, 'V11-2', 'R7-2', {
      ...pushBack('yellow'),
      function: 'vertical output cathode',
      dcV: 15,
      amps: 0.02,
      tapedMm: 100
    })
    .wire(105, 'T3 yellow', 'J1-5', {
      ...pigtail('yellow', 600),
      function: 'vertical yoke',
      dcV: 0,
      acV: 12,
      amps: 0.35,
      tapedMm: 150,
      notes: 'Retrace pulse not measured yet.'
    })
    .wire(106, 'T3 black', 'J1-7', {
      ...pigtail('black', 600),
      function: 'vertical yoke return, ground',
      amps: 0.35,
      tapedMm: 150
    });
};
