// Tube types: heater, base, what each pin does, and how far each row can be trusted.
// Only what was read in a published source is marked verified. Pins that are left out of a row are
// pins of which nothing is known here.
import { readPinNotation, type PinFunction, type PinRole } from './pin-functions.ts';
import { fromMemory, verified, type Mark, type Sourced } from './source.ts';
import { tubeRows, type TubeRow } from './tube-type-rows.ts';
import { tubeBaseOf, type BaseId } from './tube-bases.ts';

export interface Heater extends Sourced {
  /** Volts across the two end pins. */
  readonly volts: number;
  readonly amps: number;
  /** The two pins that the heater, or filament, ends at. */
  readonly pins: readonly [string, string];
  /** A tap between them, and the volts from the first end pin to it. */
  readonly tap: { readonly pin: string; readonly volts: number } | null;
  /** The heater is the cathode itself and stands at the cathode's potential. */
  readonly isFilament: boolean;
}

export interface TubeType {
  /** As published, with its suffix: "6SN7GTB". */
  readonly name: string;
  readonly what: string;
  readonly base: BaseId;
  /** The basing code of the trade, such as "9AJ"; null where it is not known. */
  readonly baseCode: string | null;
  readonly baseCodeMark: Mark;
  /** Null for a tube without one, such as a gas regulator. */
  readonly heater: Heater | null;
  readonly pins: Mark | 'unknown';
  readonly pinFunctions: readonly PinFunction[];
  readonly topCap: PinRole | null;
  /** Where the pins come from. */
  readonly source: string;
  /** Most volts between heater and cathode, where a source gives them. */
  readonly heaterCathodeV: number | null;
}

/** An electrical element of a tube's heater: volts and amperes between two pins. */
export interface HeaterElement {
  readonly from: string;
  readonly to: string;
  readonly volts: number;
  readonly amps: number;
}

const buildHeater = (row: TubeRow): Heater | null => {
  if (row.heater === null) return null;
  const [volts, amps] = row.heater;
  const ends = row.heaterPins.split(' ');
  const [first = '', last = ''] = ends;
  return {
    volts,
    amps,
    pins: [first, last],
    tap: row.heaterTap ? { pin: row.heaterTap[0], volts: row.heaterTap[1] } : null,
    isFilament: row.isFilament ?? false,
    ...(row.heaterSource === undefined ? fromMemory : verified(row.heaterSource))
  };
};

const buildType = (row: TubeRow): TubeType => ({
  name: row.name,
  what: row.what,
  base: row.base,
  baseCode: row.code ?? null,
  baseCodeMark: row.codeVerified === true ? 'verified' : 'from memory',
  heater: buildHeater(row),
  pins: row.pins === '' ? 'unknown' : row.pinSource === undefined ? 'from memory' : 'verified',
  pinFunctions: readPinNotation(row.pins),
  topCap: row.cap === undefined ? null : (readPinNotation(`cap:${row.cap}`)[0]?.role ?? null),
  source: row.pinSource ?? fromMemory.source,
  heaterCathodeV: row.heaterCathodeV ?? null
});

export const tubeTypes: readonly TubeType[] = tubeRows.map(buildType);

// "6SN7GTB" is filed under itself and under its core "6SN7", which the first row of a core keeps.
const coreOf = (name: string): string => /^\d{1,2}[A-Z]{1,3}\d{1,3}/.exec(name)?.[0] ?? name;
const plain = (text: string): string => text.toUpperCase().replace(/[\s\-_.]/g, '');

const byName = new Map<string, TubeType>();
tubeTypes.forEach((type) => byName.set(type.name, type));
tubeRows.forEach((row, index) => {
  const type = tubeTypes[index];
  if (type) (row.aliases ?? []).forEach((alias) => byName.set(alias, type));
});
const byCore = new Map<string, TubeType>();
tubeTypes.forEach((type) => {
  const core = coreOf(type.name);
  if (!byCore.has(core)) byCore.set(core, type);
});

const findOne = (text: string): TubeType | null => {
  const exact = byName.get(text);
  if (exact) return exact;
  const core = coreOf(text);
  // A suffix is letters only: "6SN7WGTA" is a 6SN7, but "6CG7X9" is not a 6CG7.
  return /^[A-Z]*$/.test(text.slice(core.length)) ? (byCore.get(core) ?? null) : null;
};

/** The type that a text such as "6cg7", "6SN7 GT" or "6CG7/6FQ7" means, or null.
 *  Case, blanks and suffix may differ: compare `name` to see whether the match was exact. */
export const findTubeType = (text: string): TubeType | null => {
  for (const piece of text.slice(0, 80).split(/[/,;]/)) {
    const found = findOne(plain(piece));
    if (found) return found;
  }
  return null;
};

/** What the terminal at a tube's top is called: "anode" on a picture tube, else "cap"; null for none. */
export const findCapName = ({ topCap }: TubeType): 'anode' | 'cap' | null =>
  topCap === null ? null : topCap === 'second anode' ? 'anode' : 'cap';

/** The terminals of a tube, in order: every pin of its base, then the cap where it has one. */
export const tubeTerminals = (type: TubeType): readonly string[] => {
  const pins = Array.from({ length: tubeBaseOf(type.base).pins }, (_, index) => String(index + 1));
  const cap = findCapName(type);
  return cap === null ? pins : [...pins, cap];
};

/** The heater as elements between pins; a tapped one makes two. Volts and amperes. */
export const heaterElements = ({ heater }: TubeType): readonly HeaterElement[] => {
  if (!heater) return [];
  const { volts, amps, tap } = heater;
  const [from, to] = heater.pins;
  if (!tap) return [{ from, to, volts, amps }];
  const rest = Math.round((volts - tap.volts) * 1000) / 1000;
  return [
    { from, to: tap.pin, volts: tap.volts, amps },
    { from: tap.pin, to, volts: rest, amps }
  ];
};
