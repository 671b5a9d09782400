// The units that people write, by kind of amount, with those of old service data: MFD, MMF, MEG, kc.
// The same letters mean different things in different fields, so every kind has its own table.
import type { Dimension } from './dimension.ts';

interface Unit {
  /** Value in the base unit = number x factor + offset. */
  readonly factor: number;
  readonly offset: number;
}

interface UnitTable {
  readonly exact: ReadonlyMap<string, Unit>;
  /** By small letters; null where two units differ only by their case. */
  readonly folded: ReadonlyMap<string, Unit | null>;
  /** Spellings that could mean two things, with the way out. */
  readonly ambiguous: ReadonlyMap<string, string>;
  /** Letters that may stand in the place of the decimal point, with their factor: 4k7, 2u2, 6V3. */
  readonly infix: ReadonlyMap<string, number>;
}

type Rows = readonly (readonly [factor: number, names: string, offset?: number])[];

/** A table from its rows; the names of a unit are separated by spaces. */
function toTable(rows: Rows, infix = '', ambiguous: Record<string, string> = {}): UnitTable {
  const exact = new Map<string, Unit>();
  const folded = new Map<string, Unit | null>();
  for (const [factor, names, offset = 0] of rows) {
    const unit = { factor, offset };
    for (const name of names.split(' ')) {
      exact.set(name, unit);
      const key = name.toLowerCase();
      const other = folded.get(key);
      folded.set(key, other === undefined || other?.factor === factor ? unit : null);
    }
  }
  const letters = infix.split(' ').flatMap((letter) => {
    const unit = exact.get(letter) ?? folded.get(letter.toLowerCase());
    return unit ? [[letter, unit.factor] as const] : [];
  });
  return { exact, folded, ambiguous: new Map(Object.entries(ambiguous)), infix: new Map(letters) };
}

const tables: Record<Exclude<Dimension, 'gauge'>, UnitTable> = {
  length: toTable([
    [1e-3, 'µm um micron microns'],
    [1, 'mm millimeter millimeters millimetre millimetres'],
    [10, 'cm centimeter centimeters centimetre centimetres'],
    [1000, 'm meter meters metre metres'],
    [1e6, 'km'],
    [0.0254, 'mil mils thou'],
    [25.4, 'in inch inches "'],
    [304.8, "ft foot feet '"],
    [914.4, 'yd yard yards']
  ]),
  voltage: toTable(
    [
      [1e-6, 'µV uV'],
      [1e-3, 'mV millivolt millivolts'],
      [1, 'V volt volts'],
      [1000, 'kV kilovolt kilovolts k']
    ],
    'V k',
    { MV: 'MV could be millivolts or megavolts: write mV or kV' }
  ),
  current: toTable(
    [
      [1e-6, 'µA uA microamp microamps'],
      [1e-3, 'mA mil-amp milliamp milliamps milliampere milliamperes'],
      [1, 'A amp amps ampere amperes']
    ],
    'A'
  ),
  resistance: toTable(
    [
      [1e-3, 'mΩ mohm mohms mOhm mOhms milliohm milliohms'],
      [1, 'Ω ohm ohms R E'],
      [1e3, 'kΩ kohm kohms k kilohm kilohms kR'],
      [1e6, 'MΩ Mohm Mohms MOhm MOhms MOHM MOHMS M MEG megs megohm megohms megΩ']
    ],
    'R k K M',
    { m: 'm could be milliohms or megohms: write MEG or milliohm' }
  ),
  capacitance: toTable(
    [
      [1e-12, 'pF p µµF uuF µµFd uuFd µµ uu MMF MMFD MMFDS pFd'],
      [1e-9, 'nF n'],
      [1e-6, 'µF uF µ u µFd uFd MF MFD MFDS microfarad microfarads'],
      [1, 'F farad farads']
    ],
    'p n u µ',
    { mF: 'mF was written for microfarads and is now millifarads: write µF' }
  ),
  inductance: toTable(
    [
      [1e-9, 'nH'],
      [1e-6, 'µH uH'],
      [1e-3, 'mH millihenry millihenries'],
      [1, 'H henry henries henrys']
    ],
    'H'
  ),
  power: toTable(
    [
      [1e-3, 'mW milliwatt milliwatts'],
      [1, 'W watt watts'],
      [1e3, 'kW kilowatt kilowatts']
    ],
    'W',
    { MW: 'MW could be milliwatts or megawatts: write mW or kW' }
  ),
  frequency: toTable(
    [
      [1, 'Hz hertz cps c/s ~'],
      [1e3, 'kHz kc kcs kc/s k'],
      [1e6, 'MHz mc Mc mcs mc/s M'],
      [1e9, 'GHz']
    ],
    '',
    {
      m: 'm could be milli or mega: write MHz',
      mHz: 'mHz is a thousandth of a hertz: write MHz or Hz'
    }
  ),
  time: toTable([
    [1e-6, 'µs us'],
    [1e-3, 'ms msec'],
    [1, 's sec secs second seconds'],
    [60, 'min minute minutes']
  ]),
  temperature: toTable([
    [1, '°C C degC deg.C celsius °'],
    [5 / 9, '°F F degF deg.F fahrenheit', -160 / 9],
    [1, 'K kelvin', -273.15]
  ]),
  'line capacitance': toTable([
    [1, 'pF/m'],
    [1e3, 'nF/km pF/mm'],
    [1 / 0.3048, 'pF/ft µµF/ft uuF/ft MMF/ft MMFD/ft'],
    [1 / 0.0254, 'pF/in']
  ]),
  ratio: toTable([
    [0.01, '% percent'],
    [1, 'times']
  ]),
  number: toTable([])
};

/** The table of a kind of amount. Gauges are no amounts of a unit and have none. */
export const unitTableOf = (dimension: Exclude<Dimension, 'gauge'>): UnitTable => tables[dimension];

/** The unit of a spelling: in its own case or, where no two units would clash, in any. */
export function findUnit(table: UnitTable, name: string): Unit | undefined {
  return table.exact.get(name) ?? table.folded.get(name.toLowerCase()) ?? undefined;
}

/** A value in the base unit of its kind, in another unit of that kind: 1500 mm is 1.5 in "m".
 *  The unit must be one that the kind has. */
export function inUnit(value: number, dimension: Dimension, unit: string): number {
  if (dimension === 'gauge' || unit === '') return value;
  const found = findUnit(tables[dimension], unit);
  if (!found) throw new RangeError(`"${unit}" is no unit of ${dimension}`);
  return Number(((value - found.offset) / found.factor).toPrecision(15));
}
