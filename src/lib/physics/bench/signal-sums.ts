// Bench sums of what a run does to a signal.
import * as z from 'zod';
import { coupling, trebleCornerHz } from '../pick-up.ts';
import { amount } from './input.ts';
import { defineSum } from './sum.ts';

const ohmsInput = (words: string, example: string) =>
  amount('resistance', { min: 0, max: 1e12, above: true, unit: 'ohm', words, example });

const sizeInput = (words: string, example: string) =>
  amount('length', { min: 0, max: 1000, above: true, unit: 'mm', words, example });

export const trebleCorner = defineSum({
  id: 'treble-corner',
  title: 'Treble lost in a shielded run',
  inputs: z.object({
    resistance: ohmsInput('resistance that drives the run', '500k'),
    capacitance: amount('capacitance', {
      min: 0,
      max: 1,
      above: true,
      unit: 'F',
      words: 'capacitance of the run to its shield',
      example: '100pF'
    })
  }),
  results: { corner: 'Hz' },
  formula: 'f = 1 / (2 pi R C)',
  basis:
    'Where 3 dB are lost. A volume control drives with at most a quarter of its track, at its middle.',
  source: 'RC low-pass',
  find: ({ resistance, capacitance }) => ({
    results: { corner: trebleCornerHz(resistance, capacitance) }
  })
});

export const couplingSum = defineSum({
  id: 'coupling',
  title: 'Pick-up between two wires',
  inputs: z.object({
    spacing: sizeInput('between the centres of the wires', '2mm'),
    diameter: sizeInput('of the bare conductors', '0.64mm'),
    length: amount('length', {
      min: 0,
      max: 1000,
      unit: 'm',
      words: 'over which they run together',
      example: '0.3m'
    }),
    er: amount('number', {
      min: 1,
      max: 100,
      unit: '',
      words: 'effective permittivity round them',
      example: '2',
      fallback: 1
    }),
    volts: amount('voltage', {
      min: 0,
      max: 200_000,
      unit: 'V',
      words: 'on the wire that disturbs',
      example: '6.3V'
    }),
    frequency: amount('frequency', {
      min: 0,
      max: 1e10,
      unit: 'Hz',
      words: 'of the disturbance',
      example: '60Hz'
    }),
    impedance: ohmsInput('from the disturbed wire to chassis', '500k')
  }),
  results: { capacitance: 'pF', pickup: 'V' },
  formula: 'C = 27.82 er l / acosh(D / d) pF; pickup = V w C Z / sqrt(1 + (w C Z)^2)',
  basis:
    'A note, no limit. Two wires alone: a chassis or other wires nearby take part of the field and leave less. Z is resistive.',
  source: 'two-wire line; capacitive divider',
  find: ({ spacing, diameter, length, er, volts, frequency, impedance }) => {
    const found = coupling({
      spacingMm: spacing,
      diameterMm: diameter,
      lengthM: length,
      er,
      volts,
      frequencyHz: frequency,
      impedanceOhm: impedance
    });
    return { results: { capacitance: found.capacitancePf, pickup: found.pickUpV } };
  }
});
