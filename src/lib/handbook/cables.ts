// Coax, twin lead and shielded leads: what line data is published for each.
import { fromMemory, verified, type Sourced } from './source.ts';

export type CableKind =
  'coax' | 'twin lead' | 'shielded pair' | 'shielded wire' | 'multi-conductor';

export interface CableType extends Sourced {
  readonly name: string;
  readonly kind: CableKind;
  /** Nominal, ohm; null where the lead is no line of a known impedance. */
  readonly impedanceOhm: number | null;
  /** Velocity as a fraction of that in vacuum. */
  readonly velocity: number | null;
  readonly picofaradsPerFoot: number | null;
  /** Conductor diameter, mm; of twin lead, of each. */
  readonly conductorMm: number | null;
  /** Inside diameter of the shield, or spacing between the centres of twin lead, mm. */
  readonly spacingMm: number | null;
  readonly outsideMm: number | null;
  /** Loss as printed: dB per 100 ft at a frequency in MHz. */
  readonly loss: readonly { readonly mhz: number; readonly dbPer100Ft: number }[];
  readonly note?: string;
}

const inches = (value: number): number => Math.round(value * 25_400) / 1000;
const coaxTable = verified('published coaxial cable specifications');

export const cableTypes: readonly CableType[] = [
  {
    name: 'RG-59',
    kind: 'coax',
    impedanceOhm: 75,
    velocity: 0.66,
    picofaradsPerFoot: 21,
    conductorMm: inches(0.023),
    spacingMm: inches(0.146),
    outsideMm: inches(0.242),
    loss: [
      { mhz: 10, dbPer100Ft: 1.1 },
      { mhz: 30, dbPer100Ft: 1.79 },
      { mhz: 150, dbPer100Ft: 4.11 }
    ],
    note: 'solid polyethylene; losses at 30 and 150 MHz from a second published table',
    ...coaxTable
  },
  {
    name: 'RG-59 foam',
    kind: 'coax',
    impedanceOhm: 75,
    velocity: 0.78,
    picofaradsPerFoot: 17,
    conductorMm: inches(0.032),
    spacingMm: inches(0.143),
    outsideMm: null,
    loss: [],
    ...coaxTable
  },
  {
    name: 'RG-11A',
    kind: 'coax',
    impedanceOhm: 75,
    velocity: 0.66,
    picofaradsPerFoot: 21,
    conductorMm: inches(0.048),
    spacingMm: inches(0.285),
    outsideMm: inches(0.405),
    loss: [{ mhz: 10, dbPer100Ft: 0.7 }],
    ...coaxTable
  },
  {
    name: 'RG-6 foam',
    kind: 'coax',
    impedanceOhm: 75,
    velocity: 0.82,
    picofaradsPerFoot: 16.2,
    conductorMm: null,
    spacingMm: null,
    outsideMm: null,
    loss: [{ mhz: 100, dbPer100Ft: 2 }],
    ...fromMemory
  },
  {
    name: 'RG-58',
    kind: 'coax',
    impedanceOhm: 50,
    velocity: 0.66,
    picofaradsPerFoot: null,
    conductorMm: null,
    spacingMm: null,
    outsideMm: null,
    loss: [
      { mhz: 30, dbPer100Ft: 2.47 },
      { mhz: 150, dbPer100Ft: 5.63 }
    ],
    note: 'losses published; impedance and velocity from memory',
    ...fromMemory
  },
  {
    name: '300-ohm twin lead, 20 AWG',
    kind: 'twin lead',
    impedanceOhm: 300,
    velocity: 0.82,
    picofaradsPerFoot: 4.5,
    conductorMm: inches(0.032),
    spacingMm: 7.5,
    outsideMm: null,
    loss: [{ mhz: 100, dbPer100Ft: 1.1 }],
    note: 'loss published; spacing, velocity (0.80 to 0.85) and capacitance (4 to 5 pF/ft) from memory',
    ...fromMemory
  },
  {
    name: '300-ohm twin lead, 22 AWG',
    kind: 'twin lead',
    impedanceOhm: 300,
    velocity: 0.82,
    picofaradsPerFoot: 4.5,
    conductorMm: inches(0.0253),
    spacingMm: 7.5,
    outsideMm: null,
    loss: [{ mhz: 100, dbPer100Ft: 1.4 }],
    note: 'loss published; spacing, velocity (0.80 to 0.85) and capacitance (4 to 5 pF/ft) from memory',
    ...fromMemory
  },
  {
    name: 'shielded pair',
    kind: 'shielded pair',
    impedanceOhm: null,
    velocity: null,
    picofaradsPerFoot: null,
    conductorMm: null,
    spacingMm: null,
    outsideMm: null,
    loss: [],
    note: 'audio leads; capacitance differs from lead to lead, commonly 25 to 60 pF/ft',
    ...fromMemory
  }
];

// Words in which people name a kind of cable. The first that fits wins.
const kindWords: readonly (readonly [RegExp, CableKind])[] = [
  [/twin[\s-]?lead|300[\s-]?ohm|ribbon line|ladder line/i, 'twin lead'],
  [/co-?ax|\brg[\s-]?\d+|75[\s-]?ohm/i, 'coax'],
  [
    /(shield|screened|braid).*(pair|2[\s-]?cond|two[\s-]?cond|twisted)|(pair|twisted).*shield/i,
    'shielded pair'
  ],
  [/shield|screened|braid/i, 'shielded wire']
];

/** The kind of cable that a name speaks of ("coax to IF", "twin lead"); null where it tells nothing. */
export const findCableKind = (text: string): CableKind | null =>
  kindWords.find(([pattern]) => pattern.test(text.slice(0, 400)))?.[1] ?? null;

/** The published type that a name such as "RG59/U" or "300 ohm twin lead" means, or null. */
export const findCableType = (text: string): CableType | null => {
  const plain = text.slice(0, 200);
  const rg = /\brg[\s-]?(\d+)/i.exec(plain)?.[1];
  if (rg !== undefined) {
    const foam = /foam/i.test(plain);
    const rows = cableTypes.filter((row) => new RegExp(`^RG-${rg}(?!\\d)`).test(row.name));
    return rows.find((row) => row.name.includes('foam') === foam) ?? rows[0] ?? null;
  }
  if (findCableKind(plain) === 'twin lead' && /300|twin/i.test(plain)) {
    const awg = /\b22\b/.test(plain) ? '22 AWG' : '20 AWG';
    return cableTypes.find((row) => row.kind === 'twin lead' && row.name.includes(awg)) ?? null;
  }
  return null;
};
