// Bench sums of what insulation must stand, and the class to buy for it.
import * as z from 'zod';
import { formatVolts } from '#quantity/index.ts';
import {
  defaultLadderV,
  defaultMarginPreferred,
  defaultMarginRequired,
  insulationClass
} from '../insulation-class.ts';
import { stressV } from '../stress.ts';
import { SumError } from '../sum-error.ts';
import { amount } from './input.ts';
import { defineSum } from './sum.ts';

const carriedInputs = () => ({
  dc: amount('voltage', {
    min: -200_000,
    max: 200_000,
    unit: 'V',
    words: 'dc to chassis',
    example: '285V',
    fallback: 0,
    kinds: ['dc']
  }),
  ac: amount('voltage', {
    min: 0,
    max: 200_000,
    unit: 'V',
    words: 'ac rms to chassis',
    example: '6.3V',
    fallback: 0,
    kinds: ['ac']
  }),
  pulse: amount('voltage', {
    min: 0,
    max: 200_000,
    unit: 'V',
    words: 'peak of a recurring pulse',
    example: '4.5kV',
    fallback: 0,
    kinds: ['peak']
  })
});

const marginInput = (words: string, fallback: number) =>
  amount('ratio', { min: 1, max: 10, unit: '', words, example: String(fallback), fallback });

const stressBasis =
  'Peaks to chassis, taken to come at the same moment; what is not given counts as 0, so give all that the wire carries, cold supply and high line too.';

export const stressSum = defineSum({
  id: 'stress',
  title: 'What the insulation must stand',
  inputs: z.object(carriedInputs()),
  results: { stress: 'V' },
  formula: 'stress = |dc| + sqrt(2) x ac + pulse',
  basis: stressBasis,
  source: 'common practice, no source',
  find: ({ dc, ac, pulse }) => ({
    results: { stress: stressV({ dcV: dc, acRmsV: ac, pulsePeakV: pulse }) }
  })
});

const classBasis = `${stressBasis} Classes: ${defaultLadderV.map(formatVolts).join(', ')}. A bare step: the floor of 600 V on a supply rail is not in it. The rating must hold for the kind of voltage: a dc rating says nothing of a pulse.`;

export const insulationClassSum = defineSum({
  id: 'insulation-class',
  title: 'Insulation class to buy',
  inputs: z.object({
    ...carriedInputs(),
    margin: marginInput('rating over stress that is required', defaultMarginRequired),
    preferred: marginInput('rating over stress that is preferred', defaultMarginPreferred)
  }),
  results: { stress: 'V', required: 'V', preferred: 'V' },
  formula:
    'the smallest class >= stress x margin, compared to 9 digits; preferred by its own margin where that is larger',
  basis: classBasis,
  source: 'common practice, no source',
  find: ({ dc, ac, pulse, margin, preferred }) => {
    const stress = stressV({ dcV: dc, acRmsV: ac, pulsePeakV: pulse });
    const classes = insulationClass({
      stressV: stress,
      marginRequired: margin,
      marginPreferred: preferred
    });
    if (classes.required.beyondLadder) throw beyondLadder(stress, classes.required.askedV);
    const results = { stress, required: classes.required.stepV };
    if (!classes.preferred.beyondLadder) {
      return { results: { ...results, preferred: classes.preferred.stepV } };
    }
    const asked = formatVolts(classes.preferred.askedV);
    const basis = `No class is preferred: ${asked} is beyond the last one, ${lastClass}. ${classBasis}`;
    return { results: { ...results, preferred: null }, basis };
  }
});

const lastClass = formatVolts(defaultLadderV.at(-1) ?? 0);

const beyondLadder = (stress: number, askedV: number): SumError =>
  new SumError({
    problem: 'outside the table',
    input: 'stress',
    value: `${formatVolts(stress)}, which asks for ${formatVolts(askedV)}`,
    limit: `classes to ${lastClass}`,
    wayOut: 'No class on the ladder covers this: check the volts, or find wire made for it.'
  });
