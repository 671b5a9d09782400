// What a column of a list can be said to hold, in words and groups for a person to choose from.
import type { ColumnRole } from './columns.ts';

export const roleNames: Readonly<Record<ColumnRole, string>> = {
  number: 'Wire number',
  from: 'From (V3-5)',
  to: 'To (V3-5)',
  both: 'Both ends, in one',
  fromPart: 'From: part',
  toPart: 'To: part',
  fromTerminal: 'From: terminal',
  toTerminal: 'To: terminal',
  fromType: 'From: tube type',
  toType: 'To: tube type',
  fromUnit: 'From: unit',
  toUnit: 'To: unit',
  fromEnding: 'From: termination',
  toEnding: 'To: termination',
  fromStrip: 'From: strip length',
  toStrip: 'To: strip length',
  unit: 'Unit',
  function: 'Function',
  colour: 'Colour found',
  tracer: 'Tracer found',
  gauge: 'Gauge found',
  stranding: 'Stranding found',
  rating: 'Rating found',
  ratingC: 'Temperature rating found',
  insulation: 'Insulation found',
  style: 'UL style found',
  plannedColour: 'Colour planned',
  plannedTracer: 'Tracer planned',
  plannedGauge: 'Gauge planned',
  plannedRating: 'Rating planned',
  plannedInsulation: 'Insulation planned',
  plannedStyle: 'UL style planned',
  planned: 'Replacement, in words',
  way: 'Kept or replaced',
  volts: 'Volts, dc or ac',
  dcV: 'Volts dc',
  acV: 'Volts ac rms',
  pulseV: 'Volts pulse peak',
  amps: 'Current',
  length: 'Length',
  cable: 'Cable',
  conductor: 'Conductor of the cable',
  condition: 'Condition',
  state: 'State of the work',
  notes: 'Notes',
  type: 'Tube type of an end',
  origin: 'Where the data is from',
  dress: 'Lead dress',
  sleeve: 'Sleeve',
  critical: 'Critical',
  derived: 'Leave out: worked out',
  extra: 'Keep as text'
};

export const roleGroups: readonly {
  readonly name: string;
  readonly roles: readonly ColumnRole[];
}[] = [
  { name: 'No field', roles: ['extra', 'derived'] },
  {
    name: 'The wire',
    roles: ['number', 'function', 'length', 'notes', 'state', 'condition', 'dress', 'critical']
  },
  {
    name: 'Its ends',
    roles: [
      'from',
      'to',
      'both',
      'fromPart',
      'fromTerminal',
      'toPart',
      'toTerminal',
      'fromType',
      'toType',
      'type',
      'fromUnit',
      'toUnit',
      'unit',
      'fromEnding',
      'toEnding',
      'fromStrip',
      'toStrip',
      'sleeve'
    ]
  },
  { name: 'What it carries', roles: ['volts', 'dcV', 'acV', 'pulseV', 'amps', 'origin'] },
  {
    name: 'As found',
    roles: [
      'colour',
      'tracer',
      'gauge',
      'stranding',
      'rating',
      'ratingC',
      'insulation',
      'style',
      'cable',
      'conductor'
    ]
  },
  {
    name: 'As planned',
    roles: [
      'way',
      'planned',
      'plannedColour',
      'plannedTracer',
      'plannedGauge',
      'plannedRating',
      'plannedInsulation',
      'plannedStyle'
    ]
  }
];

const lengths = ['mm', 'cm', 'm', 'in', 'ft'] as const;
const volts = ['V', 'kV', 'mV'] as const;

/** The units that bare numbers of a column can be in; none where it holds no amounts. */
export const unitsOfRole = (role: ColumnRole): readonly string[] => {
  if (role === 'length' || role === 'fromStrip' || role === 'toStrip') return lengths;
  if (role === 'amps') return ['A', 'mA'];
  return ['volts', 'dcV', 'acV', 'pulseV'].includes(role) ? volts : [];
};
