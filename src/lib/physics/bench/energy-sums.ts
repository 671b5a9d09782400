// Bench sums of stored charge and the second anode.
import * as z from 'zod';
import { anodeResistor } from '../anode-resistor.ts';
import { discharge, touchLimit } from '../discharge.ts';
import { amount } from './input.ts';
import { defineSum } from './sum.ts';

const voltsInput = (words: string, example: string) =>
  amount('voltage', { min: 0, max: 200_000, above: true, unit: 'V', words, example });

const caution =
  'Only where the resistor is known to be good: cold tubes are no load, and with no resistor the capacitor stays charged. Measure before you touch.';

export const dischargeSum = defineSum({
  id: 'discharge',
  title: 'Time to discharge',
  inputs: z.object({
    capacitance: amount('capacitance', {
      min: 0,
      max: 10,
      above: true,
      unit: 'F',
      words: 'capacitance',
      example: '100uF'
    }),
    resistance: amount('resistance', {
      min: 0,
      max: 1e12,
      above: true,
      unit: 'ohm',
      words: 'known resistance across it',
      example: '100k',
      wayOut: 'With no resistor known across it, treat the capacitor as charged.'
    }),
    from: voltsInput('volts at the start', '350V'),
    to: voltsInput('volts at the end', '60V')
  }),
  results: { time: 's', energy: 'J', charge: 'C' },
  formula: 'time = R C ln(from / to); energy = C from^2 / 2; charge = C from',
  basis: caution,
  source: 'discharge of a capacitor through a resistor; limit: IEC 60335-1 clause 8.1.4 as quoted',
  find: ({ capacitance, resistance, from, to }) => {
    const found = discharge({
      capacitanceF: capacitance,
      resistanceOhm: resistance,
      fromV: from,
      toV: to
    });
    const limit = touchLimit(capacitance, from).words;
    return {
      results: { time: found.timeS, energy: found.energyJ, charge: found.chargeC },
      basis: `${caution} At the start ${limit} for parts that may be touched.`
    };
  }
});

export const anodeResistorSum = defineSum({
  id: 'anode-resistor',
  title: 'Second-anode resistor',
  inputs: z.object({
    supply: voltsInput('second-anode volts', '18kV'),
    resistance: amount('resistance', {
      min: 0,
      max: 1e10,
      above: true,
      unit: 'ohm',
      words: 'resistor in the lead',
      example: '1 MEG'
    }),
    beam: amount('current', { min: 0, max: 1, unit: 'A', words: 'beam current', example: '200uA' })
  }),
  results: { drop: 'V', fault_current: 'A', fault_power: 'W' },
  formula: 'drop = beam x R; fault current = supply / R; fault power = supply^2 / R',
  basis:
    'With the anode shorted the whole supply stands across the resistor: its own voltage rating must cover that. The supply is taken as stiff; a flyback supply sags, so the fault figures are upper bounds.',
  source: "Ohm's law",
  find: ({ supply, resistance, beam }) => {
    const found = anodeResistor({ supplyV: supply, resistanceOhm: resistance, beamA: beam });
    return {
      results: { drop: found.dropV, fault_current: found.faultAmps, fault_power: found.faultW }
    };
  }
});
