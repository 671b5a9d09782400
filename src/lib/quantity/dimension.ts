// The kinds of amount that can be read, and how each is shown.
import {
  formatAmps,
  formatAwg,
  formatCelsius,
  formatFarads,
  formatHenries,
  formatHertz,
  formatMm,
  formatNumber,
  formatOhms,
  formatSeconds,
  formatVolts,
  formatWatts
} from './format.ts';

/** Every kind of amount with the unit that its values are kept in. */
export const baseUnits = {
  length: 'mm',
  voltage: 'V',
  current: 'A',
  resistance: 'ohm',
  capacitance: 'F',
  inductance: 'H',
  power: 'W',
  frequency: 'Hz',
  time: 's',
  temperature: 'C',
  gauge: 'AWG',
  'line capacitance': 'pF/m',
  ratio: '',
  number: ''
} as const;
export type Dimension = keyof typeof baseUnits;

const formatters: Record<Dimension, (value: number) => string> = {
  length: formatMm,
  voltage: formatVolts,
  current: formatAmps,
  resistance: formatOhms,
  capacitance: formatFarads,
  inductance: formatHenries,
  power: formatWatts,
  frequency: formatHertz,
  time: formatSeconds,
  temperature: formatCelsius,
  gauge: formatAwg,
  'line capacitance': (value) => `${formatNumber(value)} pF/m`,
  ratio: (value) => formatNumber(value),
  number: (value) => formatNumber(value)
};

/** An amount of any kind for people, from its value in the base unit. */
export const formatQuantity = (value: number, dimension: Dimension): string =>
  formatters[dimension](value);
