// Bench sums of signal lines: coax, twin lead, mismatch.
import * as z from 'zod';
import { coaxLine, twinLine, type LineData } from '../line.ts';
import { mismatch } from '../mismatch.ts';
import { amount } from './input.ts';
import { defineSum } from './sum.ts';

const sizeInput = (words: string, example: string) =>
  amount('length', { min: 0, max: 1000, above: true, unit: 'mm', words, example });

const permittivityInput = (words: string, example: string) =>
  amount('number', { min: 1, max: 100, unit: '', words, example });

const portInput = (words: string, example: string) =>
  amount('resistance', { min: 0.001, max: 1e6, unit: 'ohm', words, example });

const lineResults = { impedance: 'ohm', capacitance: 'pF/m', velocity: '' };
const toResults = (line: LineData) => ({
  impedance: line.impedanceOhm,
  capacitance: line.capacitancePfPerM,
  velocity: line.velocity
});

export const coaxLineSum = defineSum({
  id: 'coax-line',
  title: 'Coaxial line',
  inputs: z.object({
    outer: sizeInput('inside diameter of the shield', '3.71mm'),
    inner: sizeInput('diameter of the centre conductor', '0.58mm'),
    er: permittivityInput('relative permittivity of the dielectric', '2.26')
  }),
  results: lineResults,
  formula: 'Z = 59.96 ln(D / d) / sqrt(er); C = 55.63 er / ln(D / d) pF/m; velocity = 1 / sqrt(er)',
  basis:
    'Solid round conductors, no loss. A braided shield and a stranded centre come out a few per cent off.',
  source: 'line theory',
  find: ({ outer, inner, er }) => ({
    results: toResults(coaxLine({ outerMm: outer, innerMm: inner, er }))
  })
});

export const twinLineSum = defineSum({
  id: 'twin-line',
  title: 'Twin lead',
  inputs: z.object({
    spacing: sizeInput('between the centres of the conductors', '7.5mm'),
    conductor: sizeInput('diameter of a conductor', '0.81mm'),
    er: permittivityInput('effective relative permittivity, between air and the web', '1.5')
  }),
  results: lineResults,
  formula:
    'Z = 119.92 acosh(D / d) / sqrt(er); C = 27.82 er / acosh(D / d) pF/m; velocity = 1 / sqrt(er)',
  basis:
    'Two equal round conductors far from other metal, no loss; er as the field sees it, part air, part web.',
  source: 'line theory',
  find: ({ spacing, conductor, er }) => ({
    results: toResults(twinLine({ spacingMm: spacing, conductorMm: conductor, er }))
  })
});

const mismatchBasis =
  'Resistive impedances. On a lead that is a small part of a wavelength long a mismatch is a note, no fault.';

export const mismatchSum = defineSum({
  id: 'mismatch',
  title: 'Mismatch of two impedances',
  inputs: z.object({
    z1: portInput('impedance of the line', '75'),
    z2: portInput('impedance of the port', '300')
  }),
  results: { reflection: '', vswr: '', return_loss: 'dB', mismatch_loss: 'dB' },
  formula:
    'G = |z2 - z1| / (z2 + z1); vswr = (1 + G) / (1 - G); return loss = -20 log G; mismatch loss = -10 log(1 - G^2)',
  basis: mismatchBasis,
  source: 'line theory',
  find: ({ z1, z2 }) => {
    const found = mismatch(z1, z2);
    const results = {
      reflection: found.reflection,
      vswr: found.vswr,
      return_loss: found.returnLossDb,
      mismatch_loss: found.mismatchLossDb
    };
    if (found.returnLossDb !== null) return { results };
    return {
      results,
      basis: `Matched: nothing comes back, so the return loss has no figure. ${mismatchBasis}`
    };
  }
});
