// What lies beside the television: a few spools, what was left of others, a lead out of another set.
// Prices are for a metre, in whatever money the bench keeps; all of it is invented.
import type { ChassisBuilder } from '../../helpers/chassis.ts';

const metre = 1000;
const hookUp = {
  awg: 22,
  stranding: 'solid',
  plating: 'tinned',
  style: 'UL 1015',
  construction: 'hook-up wire',
  where: 'drawer 2'
} as const;
const flexible = { ...hookUp, stranding: 'stranded', where: 'drawer 3' } as const;

export const addShelf = (set: ChassisBuilder): void => {
  set
    .stock('22 AWG red', 18 * metre, { ...hookUp, colour: 'red', pricePerMetre: 0.42 })
    .stock('22 AWG blue', 7 * metre, { ...hookUp, colour: 'blue', pricePerMetre: 0.42 })
    .stock('22 AWG yellow', 11 * metre, { ...hookUp, colour: 'yellow', pricePerMetre: 0.42 })
    .stock('22 AWG black', 25 * metre, { ...hookUp, colour: 'black', pricePerMetre: 0.42 })
    .stock('22 AWG green, end of a spool', 620, { ...hookUp, kind: 'offcut', colour: 'green' })
    .stock('22 AWG red, offcut', 410, { ...hookUp, kind: 'offcut', colour: 'red' })
    .stock('22 AWG white, stranded', 9 * metre, {
      ...flexible,
      colour: 'white',
      pricePerMetre: 0.48
    })
    .stock('20 AWG brown', 6 * metre, {
      ...hookUp,
      awg: 20,
      colour: 'brown',
      pricePerMetre: 0.55
    })
    .stock('18 AWG brown, end of a spool', 980, {
      ...hookUp,
      awg: 18,
      kind: 'offcut',
      colour: 'brown',
      where: 'drawer 2'
    })
    .stock('1 kV lead, white', 3 * metre, {
      awg: 22,
      stranding: 'stranded',
      plating: 'tinned',
      construction: 'hook-up wire',
      insulation: 'fluoropolymer',
      colour: 'white',
      ratings: { dcV: 1000, acRmsV: 600 },
      ratingC: 200,
      pricePerMetre: 2.6,
      where: 'high-voltage box'
    })
    .stock('Yoke lead out of a scrapped chassis', 850, {
      kind: 'salvage',
      awg: 20,
      stranding: 'stranded',
      plating: 'tinned',
      construction: 'hook-up wire',
      insulation: 'silicone rubber',
      colour: 'red',
      ratings: { dcV: 6000, pulseV: 5000 },
      ratingC: 150,
      where: 'high-voltage box',
      notes: 'no cracks; ratings as printed on it'
    });
};
