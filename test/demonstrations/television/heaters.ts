// Two 6.3 V windings, each with one side on the chassis; the other side goes from socket to socket.
// The amperes of each length are those of every heater further on.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import { heaterTrunk, inPowerCable, newWire, pigtail } from '../wire-stock.ts';

const fitted = { state: 'fitted', planned: newWire('brown', 18) } as const;

export const addHeaters = (set: ChassisBuilder): void => {
  set
    .wire(1, 'T1 green 1', 'TS1-1', {
      ...pigtail('green', 600, 18),
      function: 'heaters 6.3 V',
      acV: 6.3,
      amps: 3.4,
      tapedMm: 60
    })
    .wire(2, 'T1 green 2', 'GL1', {
      ...pigtail('green', 600, 18),
      function: 'heater return',
      amps: 3.4,
      tapedMm: 55
    })
    .wire(3, 'T1 brown 1', 'TS1-3', {
      ...pigtail('brown', 600, 16),
      function: 'heaters 6.3 V',
      acV: 6.3,
      amps: 4.95,
      tapedMm: 65
    })
    .wire(4, 'T1 brown 2', 'GL1', {
      ...pigtail('brown', 600, 16),
      function: 'heater return',
      amps: 4.95,
      tapedMm: 65
    })
    .wire(5, 'TS1-1', 'P4-1', { ...heaterTrunk(3.4), ...inPowerCable('brown'), awg: 16 })
    .wire(6, 'TS1-3', 'P4-2', {
      ...heaterTrunk(4.95),
      ...inPowerCable('brown/white'),
      tracer: 'white',
      awg: 16
    })
    .wire(7, 'J4-1', 'V9-3', { ...heaterTrunk(3.4), ...fitted, route: ['K1'], tapedMm: 255 })
    .wire(8, 'V9-3', 'V8-3', { ...heaterTrunk(2.95), ...fitted, tapedMm: 80 })
    .wire(9, 'V8-3', 'V7-3', { ...heaterTrunk(2.65), ...fitted, tapedMm: 95 })
    .wire(10, 'V7-3', 'V6-4', {
      ...heaterTrunk(2.35),
      state: 'removed',
      planned: newWire('brown', 18),
      tapedMm: 80
    })
    .wire(11, 'V6-4', 'V5-3', { ...heaterTrunk(1.75), state: 'tagged', tapedMm: 105 })
    .wire(12, 'V5-3', 'V4-3', { ...heaterTrunk(1.45), state: 'tagged', tapedMm: 85 })
    .wire(13, 'V4-3', 'V3-3', { ...heaterTrunk(1.15), state: 'tagged', tapedMm: 85 })
    .wire(14, 'V3-3', 'TS16-1', {
      ...heaterTrunk(0.85),
      awg: 20,
      route: ['K7', 'G2'],
      outsideMm: 60,
      tapedMm: 230
    })
    .wire(15, 'J4-2', 'TS2-1', {
      ...heaterTrunk(4.95),
      tracer: 'white',
      awg: 16,
      route: ['K6'],
      tapedMm: 270,
      dress: 'Against the deck, away from the sound strip.'
    })
    .wire(16, 'TS2-1', 'V14-2', { ...heaterTrunk(2.4), route: ['G1'], tapedMm: 120 })
    .wire(17, 'V14-2', 'V15-7', {
      ...heaterTrunk(1.2),
      tapedMm: 95,
      condition: 'baked stiff',
      notes: 'Damper cathode, with its kilovolts, is four pins away: dress it clear.'
    })
    .wire(18, 'TS2-1', 'V13-4', { ...heaterTrunk(2.55), tapedMm: 95 })
    .wire(19, 'V13-4', 'V12-3', { ...heaterTrunk(1.95), tapedMm: 60 })
    .wire(20, 'V12-3', 'V10-4', { ...heaterTrunk(1.65), tapedMm: 50 })
    .wire(21, 'V10-4', 'V11-3', { ...heaterTrunk(1.05), tapedMm: 95 })
    .wire(22, 'V11-3', 'V18-1', {
      ...heaterTrunk(0.6),
      awg: 20,
      route: ['K6', 'G4'],
      outsideMm: 420,
      tapedMm: 560
    })
    .wire(23, 'TS16-1', 'V2-4', { ...heaterTrunk(0.85), awg: 20, tapedMm: 60 })
    .wire(24, 'V2-4', 'V1-4', { ...heaterTrunk(0.4), awg: 20, tapedMm: 75 });
};
