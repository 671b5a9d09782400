// What joins the metal of the units, and a lead that nobody has followed to its end.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import { braid, thermoplastic } from '../wire-stock.ts';

export const addReturns = (set: ChassisBuilder): void => {
  set
    .wire(142, 'V18-12', 'GL3', {
      ...thermoplastic('black'),
      awg: 20,
      function: 'picture tube heater return',
      dcV: 0,
      amps: 0.6,
      route: ['G4'],
      outsideMm: 420,
      tapedMm: 470
    })
    .wire(143, 'GL6', 'GL4', { ...braid, function: 'control panel to chassis', tapedMm: 160 })
    .wire(144, 'TS16-4', 'GL5', { ...braid, function: 'tuner to chassis', tapedMm: 110 })
    .wire(145, 'E2', 'GL3', { ...braid, function: 'outer coating to chassis', tapedMm: 600 })
    .wire(147, 'TS9-3', null, {
      ...thermoplastic('gray'),
      route: ['K4', 'K2'],
      toEnd: { as: 'goes into the bundle at K2' },
      notes: 'Not AGC: 1 M to everything with the set off. Follow it when the bundle is open.'
    });
};
