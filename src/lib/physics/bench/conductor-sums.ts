// Bench sums of wire by its gauge: size, resistance, volts lost.
import * as z from 'zod';
import {
  awgLimits,
  circularMils,
  ohmPerMetre,
  wireAreaMm2,
  wireDiameterMm,
  wireResistanceOhm
} from '../conductor.ts';
import { voltageDrop } from '../voltage-drop.ts';
import { amount, choice } from './input.ts';
import { defineSum } from './sum.ts';

export const awgInput = () =>
  amount('gauge', { ...awgLimits, unit: 'AWG', words: 'wire gauge', example: '22' });

const lengthInput = (words: string) =>
  amount('length', { min: 0, max: 100_000, unit: 'm', words, example: '10ft' });

const temperatureInput = () =>
  amount('temperature', {
    min: -100,
    max: 250,
    unit: 'C',
    words: 'temperature of the copper',
    example: '65',
    fallback: 20
  });

export const wireSize = defineSum({
  id: 'wire-size',
  title: 'Wire size by gauge',
  inputs: z.object({ awg: awgInput() }),
  results: { diameter: 'mm', area: 'mm2', circular_mils: 'cmil' },
  formula: 'd = 0.127 mm x 92^((36 - n) / 39); area = pi d^2 / 4; circular mils = (d in mils)^2',
  basis:
    'Solid round wire without insulation; the gauge of a stranded wire names about the same area of copper.',
  source: 'ASTM B258',
  find: ({ awg }) => ({
    results: {
      diameter: wireDiameterMm(awg),
      area: wireAreaMm2(awg),
      circular_mils: circularMils(awg)
    }
  })
});

export const wireResistance = defineSum({
  id: 'wire-resistance',
  title: 'Resistance of a length of wire',
  inputs: z.object({
    awg: awgInput(),
    length: lengthInput('length of the wire'),
    temperature: temperatureInput(),
    plating: choice(['bare', 'tinned'], { words: 'bare or tinned copper', fallback: 'bare' })
  }),
  results: { resistance: 'ohm', per_metre: 'ohm/m' },
  formula: 'R = (1/58 ohm mm2/m) / area x length x plating x (1 + 0.00393 (T - 20))',
  basis:
    'Solid annealed copper, 100 % IACS. Tinned: the most that the standard allows for the diameter.',
  source: 'ASTM B258 sizes; IACS; ASTM B33-04 Table 2 for tinned copper',
  find: ({ awg, length, temperature, plating }) => {
    const conductor = { awg, temperatureC: temperature, plating };
    return {
      results: {
        resistance: wireResistanceOhm({ ...conductor, lengthM: length }),
        per_metre: ohmPerMetre(conductor)
      }
    };
  }
});

export const voltageDropSum = defineSum({
  id: 'voltage-drop',
  title: 'Volts lost in a run',
  inputs: z.object({
    awg: awgInput(),
    length: lengthInput('length of the run, one way'),
    amps: amount('current', { min: 0, max: 1000, unit: 'A', words: 'current', example: '1.2A' }),
    volts: amount('voltage', {
      min: 0,
      max: 200_000,
      above: true,
      unit: 'V',
      words: 'volts at the source',
      example: '6.3V'
    }),
    returns: amount('number', {
      min: 1,
      max: 2,
      whole: true,
      unit: '',
      words: '1 where the chassis is the way back, 2 with a wire there and back',
      example: '2',
      fallback: 2
    }),
    temperature: temperatureInput()
  }),
  results: { drop: 'V', percent: '%', at_load: 'V' },
  formula: 'drop = I x R x returns; percent = 100 drop / volts; at_load = volts - drop',
  basis:
    'Bare solid copper. A chassis as the way back counts as no resistance; joints and pins are not counted.',
  source: "Ohm's law; ASTM B258 sizes; IACS",
  find: ({ awg, length, amps, volts, returns, temperature }) => {
    const { dropV, percent, atLoadV } = voltageDrop({
      awg,
      lengthM: length,
      amps,
      supplyV: volts,
      returns,
      temperatureC: temperature
    });
    return { results: { drop: dropV, percent, at_load: atLoadV } };
  }
});
