// A set in one screen that shows a bit of everything the diagram draws.
import type { ChassisDocument } from '#document/index.ts';
import { chassis } from '../helpers/chassis.ts';

export const buildSmallSet = (): ChassisDocument => {
  const pins = ['1', '2', '3', '4'];
  return chassis({ title: 'Bench set', chassis: 'B-1', tracedBy: 'the bench', setsChecked: 1 })
    .cable('audio pair', 'shielded pair', { signal: 'audio' })
    .unit('Main chassis')
    .tube('V1', '6AV6', { pins: 7, function: 'first audio' })
    .tube('V2', '6AQ5A', { pins: 7, function: 'audio output' })
    .strip('TS1', 4, { grounded: [2] })
    .ground('GL1')
    .part('transformer', 'T1', ['blue', 'red', 'green', 'black'], { function: 'audio output' })
    .resistor('R1', '220k', 'V1-7', 'TS1-1')
    .capacitor('C1', '0.01 uF', 'V1-7', 'V2-1')
    .capacitor('C2', '20 uF', 'V2-2', 'TS1-2')
    .part('jack', 'J1', pins)
    .wire(1, 'TS1-3', 'V1-3', { function: 'heater', acV: 6.3 })
    .wire(2, 'V1-3', 'V2-3', { function: 'heater', acV: 6.3 })
    .wire(3, 'V2-4', 'GL1')
    .wire(4, 'TS1-1', 'T1 red', { function: 'B+ 250 V', dcV: 250, colour: 'red' })
    .wire(5, 'V2-5', 'T1 blue', { dcV: 240, pulseV: 900, colour: 'blue' })
    .wire(6, 'TS1-4', null, { toEnd: { as: 'into the loom' } })
    .wire(7, null, null)
    .wire(8, 'V1-1', 'J1-1', { cable: 'audio pair', dcV: 1 })
    .wire(9, 'T1 green', 'J1-3')
    .unit('Front')
    .part('plug', 'P1', pins, { mates: 'J1' })
    .part('control', 'R9', ['1', '2', '3'], { value: '500k', function: 'volume' })
    .part('picture tube', 'V3', ['1', '2', '12', { name: 'anode', ending: 'cap' }], {
      type: '21ALP4'
    })
    .wire(10, 'P1-1', 'R9-2', { dcV: 1 })
    .wire(11, 'V2-6', 'V3 anode', { dcV: 18_000, ratingV: 10_000, ratingKind: 'any' })
    .build();
};
