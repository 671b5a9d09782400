// Bench sums of distance between bare metal: through air, along surfaces and on printed boards.
import * as z from 'zod';
import { adviceOnlyAboveV, airGap, fields } from '../air-gap.ts';
import { boardCoatings, boardSpacing } from '../board-spacing.ts';
import { creepage, materialGroups } from '../creepage.ts';
import { amount, choice } from './input.ts';
import { defineSum } from './sum.ts';

const pollutionInput = () =>
  amount('number', {
    min: 1,
    max: 3,
    whole: true,
    unit: '',
    words: 'pollution degree: 1 sealed, 2 clean room air, 3 dust that may turn damp',
    example: '2'
  });

const highVoltageWords =
  'Above 1.5 kV this is advice and never a pass: the tables are not written for a second anode, old insulation earns no credit, and points and solder spikes want more. Round the joints against corona.';

export const airGapSum = defineSum({
  id: 'air-gap',
  title: 'Distance through air',
  inputs: z.object({
    peak: amount('voltage', {
      min: 0,
      max: 100_000,
      unit: 'V',
      words: 'peak volts between the two',
      example: '18kV',
      kinds: ['peak', 'dc']
    }),
    field: choice(fields, { words: 'inhomogeneous for points, edges and wires' }),
    altitude: amount('length', {
      min: -500,
      max: 20_000,
      unit: 'm',
      words: 'height above the sea',
      example: '300m',
      fallback: 0
    }),
    pollution: pollutionInput()
  }),
  results: { clearance: 'mm', advice: 'mm' },
  formula:
    'clearance = max(table, floor of the pollution degree) x altitude factor; advice = the largest of clearance, the 60950 figure and 25.4 mm for each 10 kV, the latter two x altitude factor',
  basis: highVoltageWords,
  source:
    'IEC 60664-1 Tables F.2 and A.2, straight between rows; IEC 60950 secondary clearances as reprinted, held at the last row above 42 kV; 1 inch per 10 kV, common practice',
  find: ({ peak, field, altitude, pollution }) => {
    const found = airGap({ peakV: peak, field, altitudeM: altitude, pollution });
    const from = `Advice from ${found.adviceFrom}, the largest of the published figures.`;
    const below =
      'Recurring peak taken as the impulse voltage of the table, for steady voltages a rough guide.';
    return {
      results: { clearance: found.clearanceMm, advice: found.adviceMm },
      basis: `${from} ${peak > adviceOnlyAboveV ? highVoltageWords : below}`
    };
  }
});

export const creepageSum = defineSum({
  id: 'creepage',
  title: 'Distance along a surface',
  inputs: z.object({
    rms: amount('voltage', {
      min: 0,
      max: 63_000,
      unit: 'V',
      words: 'rms (or dc) volts between the two',
      example: '250V',
      kinds: ['ac', 'dc']
    }),
    pollution: pollutionInput(),
    group: choice(materialGroups, {
      words: 'material group: I glazed ceramic and the like, II, IIIa phenolic and most old boards'
    })
  }),
  results: { creepage: 'mm' },
  formula: "the table's figure at the first row >= the voltage",
  basis: 'Next row up, not interpolated.',
  source:
    'IEC 60664-1 Table F.5 (F.4 in the first edition); pollution degree 3 from a catalogue reprint',
  find: ({ rms, pollution, group }) => {
    const found = creepage({ rmsV: rms, pollution, group });
    const caution = rms > adviceOnlyAboveV ? ` ${highVoltageWords}` : '';
    return {
      results: { creepage: found.creepageMm },
      basis: `Taken from ${found.basis}.${caution}`
    };
  }
});

export const boardSpacingSum = defineSum({
  id: 'board-spacing',
  title: 'Distance on a printed board',
  inputs: z.object({
    peak: amount('voltage', {
      min: 0,
      max: 30_000,
      unit: 'V',
      words: 'peak volts between the two',
      example: '285V',
      kinds: ['peak', 'dc']
    }),
    coating: choice(boardCoatings, {
      words: 'coated only where the lacquer is whole: old and mended boards count as bare',
      fallback: 'bare'
    })
  }),
  results: { spacing: 'mm', advice: 'mm' },
  formula:
    "the table's figure at the first row >= the peak; above 500 V its last row + (peak - 500) x 0.00305 mm/V coated, 0.005 mm/V bare; advice = the larger of spacing and 0.6 mm + 0.005 mm/V",
  basis:
    'Conductors on the outside of a board, up to 3050 m; below 51 V bare the first row is held. Which column of the standard the coated figures are is from memory: check it where it matters.',
  source:
    'IPC-D-275, the table that IPC-2221 (Table 6-1) took over, as quoted in a published mailing list; IPC-9592, as quoted on a page on board clearances; neither standard was read',
  find: ({ peak, coating }) => {
    const { spacingMm, adviceMm } = boardSpacing({ peakV: peak, coating });
    return {
      results: { spacing: spacingMm, advice: adviceMm },
      ...(peak > adviceOnlyAboveV ? { basis: highVoltageWords } : {})
    };
  }
});
