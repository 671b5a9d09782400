// Colour codes of the trade: chassis wiring by function, transformer leads, digits.
// Makers differed: a code is a hint for the new wire, never proof of what an old one does.
import type { ColourName } from './colours.ts';
import { fromMemory, verified, type Sourced } from './source.ts';

/** What a lead of a chassis does, as the code divides it. */
export const circuitFunctions = [
  'ground',
  'heater',
  'supply plus',
  'screen grid',
  'cathode',
  'control grid',
  'plate',
  'supply minus',
  'power line',
  'other'
] as const;
export type CircuitFunction = (typeof circuitFunctions)[number];

export interface ChassisColour extends Sourced {
  readonly colour: ColourName;
  /** Digit of the same colour in the resistor code. */
  readonly digit: number;
  readonly circuit: CircuitFunction;
  readonly words: string;
}

const retma = verified('RETMA/EIA chassis wiring code as printed in NAVEDTRA 14040, Fig. 6-15');

const chassis = (
  colour: ColourName,
  digit: number,
  circuit: CircuitFunction,
  words: string
): ChassisColour => ({ colour, digit, circuit, words, ...retma });

export const chassisColours: readonly ChassisColour[] = [
  chassis('black', 0, 'ground', 'grounds, grounded elements and returns'),
  chassis('brown', 1, 'heater', 'heaters or filaments, off ground'),
  chassis('red', 2, 'supply plus', 'power supply B+'),
  chassis('orange', 3, 'screen grid', 'screen grids'),
  chassis('yellow', 4, 'cathode', 'cathodes'),
  chassis('green', 5, 'control grid', 'control grids'),
  chassis('blue', 6, 'plate', 'plates'),
  chassis('violet', 7, 'supply minus', 'power supply minus'),
  chassis('gray', 8, 'power line', 'AC power lines'),
  chassis('white', 9, 'other', 'miscellaneous')
];

/** The code's colour for a function of the circuit. */
export const chassisColourOf = (circuit: CircuitFunction): ChassisColour => {
  const row = chassisColours.find((candidate) => candidate.circuit === circuit);
  if (!row) throw new RangeError(`the colour code has no row for ${JSON.stringify(circuit)}`);
  return row;
};

// Longest meanings first: "screen grid" is asked before "grid", "B+ ground" is a ground.
const patterns: readonly (readonly [RegExp, CircuitFunction])[] = [
  [/\b(ground|gnd|grnd|chassis return|earth)\b/i, 'ground'],
  [/\b(heaters?|filaments?|fil|htr)\b/i, 'heater'],
  [/\bscreens?( grids?)?\b|\bg2\b/i, 'screen grid'],
  [/\b(ac line|power line|line cord|ac power|mains|primary|117 ?v ?ac|ac switch)\b/i, 'power line'],
  [/(^|\W)(b|c) ?minus\b|(^|\W)b ?[-\u2212](?![\w])/i, 'supply minus'],
  [/(^|\W)b ?(\+|plus\b)|\b(b boost|boost(ed)?)\b/i, 'supply plus'],
  [/\bcathodes?\b/i, 'cathode'],
  [/\bplates?\b/i, 'plate'],
  [/\b(control )?grids?\b|\bg1\b/i, 'control grid']
];

/** The function that a wire's own words speak of ("V3 plate", "B+ 285"), or null where they
 *  speak of none that the code knows. */
export const findCircuitFunction = (text: string): CircuitFunction | null =>
  patterns.find(([pattern]) => pattern.test(text.slice(0, 400)))?.[1] ?? null;

export interface LeadColour extends Sourced {
  readonly part: 'power transformer' | 'IF transformer' | 'audio transformer' | 'speaker';
  readonly lead: string;
  readonly colour: ColourName;
  readonly tracer: ColourName | null;
}

const transformers = verified('EIA transformer lead colour code, published table');

const lead = (
  part: LeadColour['part'],
  name: string,
  colour: ColourName,
  tracer: ColourName | null = null,
  sourced: Sourced = transformers
): LeadColour => ({ part, lead: name, colour, tracer, ...sourced });

export const leadColours: readonly LeadColour[] = [
  lead('power transformer', 'primary', 'black'),
  lead('power transformer', 'primary tap', 'black', 'yellow'),
  lead('power transformer', 'primary finish', 'black', 'red'),
  lead('power transformer', 'high voltage', 'red'),
  lead('power transformer', 'high voltage center tap', 'red', 'yellow'),
  lead('power transformer', 'rectifier filament', 'yellow'),
  lead('power transformer', 'rectifier filament center tap', 'yellow', 'blue'),
  lead('power transformer', 'filament 1', 'green'),
  lead('power transformer', 'filament 1 center tap', 'green', 'yellow'),
  lead('power transformer', 'filament 2', 'brown'),
  lead('power transformer', 'filament 2 center tap', 'brown', 'yellow'),
  lead('power transformer', 'filament 3', 'gray'),
  lead('power transformer', 'filament 3 center tap', 'gray', 'yellow'),
  lead('IF transformer', 'plate', 'blue'),
  lead('IF transformer', 'B+', 'red'),
  lead('IF transformer', 'grid or diode', 'green'),
  lead('IF transformer', 'grid return', 'black'),
  lead('IF transformer', 'second diode', 'green', 'black', fromMemory),
  lead('audio transformer', 'plate', 'blue'),
  lead('audio transformer', 'B+', 'red'),
  lead('audio transformer', 'other plate', 'brown'),
  lead('audio transformer', 'grid', 'green'),
  lead('audio transformer', 'other grid', 'yellow'),
  lead('audio transformer', 'grid return', 'black'),
  lead('speaker', 'voice coil start', 'black', null, fromMemory),
  lead('speaker', 'voice coil finish', 'green', null, fromMemory)
];

/** The leads of a part whose insulation is this colour, with this tracer or none. */
export const findLeadColours = (
  part: LeadColour['part'],
  colour: ColourName,
  tracer: ColourName | null
): readonly LeadColour[] =>
  leadColours.filter((row) => row.part === part && row.colour === colour && row.tracer === tracer);
