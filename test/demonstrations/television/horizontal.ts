// Phase detector, oscillator and drive of the horizontal sweep, up to the cage.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import { draws, winding } from '../set-parts.ts';
import { bare, newWire, thermoplastic } from '../wire-stock.ts';

export const addHorizontal = (set: ChassisBuilder): void => {
  set
    .in('Main chassis')
    .tube('V12', '6AL5', {
      at: [188, 172],
      function: 'horizontal phase detector',
      grounded: ['4', '6']
    })
    .capacitor('C39', '150 pF', 'V10-1', 'V12-2', { ratedV: 500 })
    .resistor('R46', '47k', 'TS11-1', 'V12-5', { watts: 0.5 })
    .resistor('R47', '1M', 'V12-1', 'V13-7', { watts: 0.5 })
    .resistor('R48', '100k', 'V12-2', 'V12-6', { watts: 0.5 })
    .resistor('R58', '1M', 'V13-7', 'V13-9', { watts: 0.5 })
    .strip('TS11', 2, { at: [150, 172], grounded: [2] })
    .tube('V13', '6CG7', {
      at: [165, 215],
      function: 'horizontal oscillator',
      grounded: ['5', '9'],
      elements: [draws('6', '8', 5), draws('1', '3', 3)]
    })
    .resistor('R49', '1k', 'V13-8', 'V13-9', { watts: 0.5 })
    .part(
      'coil',
      'L4',
      [
        { name: 'A', on: 'V13-6' },
        { name: 'B', on: 'TS12-1' }
      ],
      {
        function: 'ringing coil',
        elements: [winding('A', 'B', 60)]
      }
    )
    .strip('TS12', 3, { at: [190, 240], grounded: [2] })
    .resistor('R50', '33k', 'V13-1', 'TS12-1', { watts: 1 })
    .capacitor('C42', '820 pF', 'V13-1', 'TS12-3', { ratedV: 500 })
    .resistor('R57', '470k', 'TS12-3', 'TS12-2', { watts: 0.5 })
    .strip('TS2', 4, { at: [175, 290], grounded: [3] })
    .resistor('R51', '10k', 'TS2-2', 'TS2-4', { watts: 4 })
    .capacitor('C43', '0.1 uF', 'TS2-4', 'TS2-3', { ratedV: 600 });
  addWires(set);
};

const addWires = (set: ChassisBuilder): void => {
  set
    .wire(108, 'V12-5', 'V12-7', {
      ...bare(22),
      function: 'phase detector, common point',
      tapedMm: 14
    })
    .wire(109, 'V13-3', 'V13-8', {
      ...bare(22),
      function: 'horizontal oscillator cathodes',
      dcV: 8,
      acV: 4,
      tapedMm: 20
    })
    .wire(110, 'T2-7', 'TS11-1', {
      ...thermoplastic('white'),
      tracer: 'red',
      function: 'horizontal pulses to phase detector',
      dcV: 0,
      pulseV: 250,
      route: ['G1']
    })
    .wire(111, 'V13-2', 'R8-2', {
      ...thermoplastic('green'),
      tracer: 'black',
      function: 'horizontal hold',
      route: ['K4', 'K3', 'G3', 'K9'],
      outsideMm: 90,
      tapedMm: 540
    })
    .wire(112, 'TS12-3', 'V14-5', {
      ...thermoplastic('green'),
      function: 'horizontal output grid, drive',
      dcV: -45,
      acV: 40,
      route: ['G1'],
      critical: { keepShort: true }
    })
    .wire(113, 'TS2-4', 'V14-4', {
      ...thermoplastic('orange'),
      function: 'horizontal output screen',
      dcV: 165,
      amps: 0.012,
      route: ['G1']
    })
    .wire(114, 'TS2-2', 'V15-5', {
      ...thermoplastic('red'),
      function: 'B+ 285 V to damper plate',
      dcV: 285,
      amps: 0.088,
      route: ['G1'],
      tapedMm: 95,
      // Beside the drive's negative volts it is more than a 600 V wire is passed for.
      planned: { ...newWire('red', 20), style: 'UL 10203', ratingV: 1000 }
    });
};
