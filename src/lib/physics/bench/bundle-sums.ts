// Bench sums of wires in bundles: what each may carry, and how thick the bundle is.
import * as z from 'zod';
import { ampacity, ampacityBases } from '../ampacity.ts';
import { bundleShare, leastLoadedPercent } from '../bundle-derating.ts';
import { bundle } from '../bundle.ts';
import { mostCircles } from '../packing/pack-circles.ts';
import { awgInput } from './conductor-sums.ts';
import { amount, choice, lengths } from './input.ts';
import { defineSum } from './sum.ts';

export const ampacitySum = defineSum({
  id: 'ampacity',
  title: 'What a wire may carry',
  inputs: z.object({
    awg: awgInput(),
    wires: amount('number', {
      min: 1,
      max: mostCircles,
      whole: true,
      unit: '',
      words: 'wires in the bundle, this one among them',
      example: '6',
      fallback: 1
    }),
    rating: amount('temperature', {
      min: 40,
      max: 250,
      unit: 'C',
      words: 'temperature rating of the insulation',
      example: '80'
    }),
    ambient: amount('temperature', {
      min: -40,
      max: 200,
      unit: 'C',
      words: 'air round the wire',
      example: '50'
    }),
    basis: choice(ampacityBases, { words: 'which published rule to go by', fallback: 'cabinet' })
  }),
  results: { single: 'A', allowed: 'A' },
  formula:
    'single = I / 0.615 x sqrt((rating - ambient) / 35), I by gauge for 105 C insulation in 70 C air; allowed = single x bundle share. Basis space: its table x sqrt((rating - ambient) / 130); basis 700 cmil: area / 700',
  basis: 'See the result: it depends on the inputs.',
  source:
    'FAA AC 43.13-1B CHG 1 Table 11-9; MIL-W-5088L / SAE AS50881 bundle curve, a digitised copy; above 15 wires a bound from the heat of the whole bundle. Basis space: a published table of TFE wire, the figures of NASA EEE-INST-002, its temperatures from memory',
  find: ({ awg, wires, rating, ambient, basis }) => {
    const found = ampacity({ awg, wires, ratingC: rating, ambientC: ambient, basis });
    return { results: { single: found.singleA, allowed: found.allowedA }, basis: found.basis };
  }
});

export const bundleShareSum = defineSum({
  id: 'bundle-share',
  title: 'What is left of a current in a bundle',
  inputs: z.object({
    wires: amount('number', {
      min: 1,
      max: mostCircles,
      whole: true,
      unit: '',
      words: 'wires in the bundle',
      example: '7'
    }),
    loaded: amount('number', {
      min: leastLoadedPercent,
      max: 100,
      unit: '',
      words: 'per cent in use of what all its wires together could carry',
      example: '40',
      fallback: 100
    })
  }),
  results: { share: '' },
  formula:
    'the curve by the number of wires, straight between its points and between curves; above 15 wires that of 15 x sqrt(15 / N)',
  basis:
    'Share of what one wire alone in air may carry. Below a load of 20 % the copy gives nothing. Findings of the program always take 100 %: what is in use at once in a chassis nobody writes down.',
  source:
    'MIL-W-5088L / SAE AS50881 bundle curves, a digitised copy: good for a few per cent; above 15 wires a bound from the heat of the whole bundle',
  find: ({ wires, loaded }) => ({ results: { share: bundleShare(wires, loaded) } })
});

const bundleBasis =
  'Wires lying parallel and pressed close; a laced bundle comes out a little thicker. Packed is at most 2 % over the best packings published for equal wires.';

export const bundleSum = defineSum({
  id: 'bundle',
  title: 'Thickness of a bundle',
  inputs: z.object({
    diameters: lengths({
      separator: ',',
      min: 0,
      max: 1000,
      above: true,
      words: 'outside diameters of the wires; 7x1.6 is seven of 1.6',
      example: '1.6,1.6,2.4'
    })
  }),
  results: {
    packed: 'mm',
    estimate: 'mm',
    clamp_mm: 'mm',
    clamp_sixteenths: 'sixteenths of an inch',
    sleeve_mm: 'mm'
  },
  formula:
    'packed: smallest round hole found for the circles; estimate: factor x d for equal wires, else 1.2 sqrt(sum of d^2); clamp: packed rounded up to 1/16 in; sleeve: smallest 2:1 size, supplied >= 1.25 packed and recovered < packed',
  basis: bundleBasis,
  source:
    'packing by minimal overlap, held against published best packings; estimate: published bundle-size table; clamp sizes MS21919 (dash number from memory); sleeve: 2:1 heat-shrink data sheet',
  find: ({ diameters }) => {
    const found = bundle(diameters);
    const results = {
      packed: found.packedMm,
      estimate: found.estimateMm,
      clamp_mm: found.clampMm,
      clamp_sixteenths: found.clampSixteenths,
      sleeve_mm: found.sleeveMm
    };
    if (found.sleeveMm !== null) return { results };
    return { results, basis: `No listed sleeve slips over this and grips it. ${bundleBasis}` };
  }
});
