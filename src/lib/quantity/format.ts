// Amounts for people: as many digits as help, the prefix that the trade uses, never an exponent
// where a prefix will do. What is not a number reads "not known".
import { roundSignificant } from './round.ts';

const notKnown = 'not known';

/** A number with that many significant digits at least (4 where not said), zeros trimmed; digits
 *  before the point are all kept.
 *  Example:  formatNumber(293.90954) // "293.9"
 */
export function formatNumber(value: number, digits = 4): string {
  if (!Number.isFinite(value)) return notKnown;
  const wholeDigits = Math.floor(Math.log10(Math.max(1, Math.abs(value)))) + 1;
  const rounded = roundSignificant(value, Math.min(15, Math.max(digits, wholeDigits)));
  return rounded === 0 ? '0' : String(rounded);
}

type Scale = readonly (readonly [factor: number, symbol: string])[];

/** Largest factor first: the first that leaves at least 1 before the point is used. */
function formatScaled(value: number, scale: Scale, digits = 4): string {
  if (!Number.isFinite(value)) return notKnown;
  const size = roundSignificant(Math.abs(value), digits);
  const last = scale[scale.length - 1] ?? [1, ''];
  const unity = scale.find(([factor]) => factor === 1) ?? last;
  const [factor, symbol] = size === 0 ? unity : (scale.find(([least]) => size >= least) ?? last);
  return `${formatNumber(value / factor, digits)} ${symbol}`;
}

const voltScale: Scale = [
  [1000, 'kV'],
  [1, 'V'],
  [1e-3, 'mV'],
  [1e-6, 'µV']
];
const ampScale: Scale = [
  [1, 'A'],
  [1e-3, 'mA'],
  [1e-6, 'µA']
];
const ohmScale: Scale = [
  [1e6, 'MΩ'],
  [1e3, 'kΩ'],
  [1, 'Ω'],
  [1e-3, 'mΩ']
];
const henryScale: Scale = [
  [1, 'H'],
  [1e-3, 'mH'],
  [1e-6, 'µH']
];
const wattScale: Scale = [
  [1000, 'kW'],
  [1, 'W'],
  [1e-3, 'mW']
];
const hertzScale: Scale = [
  [1e6, 'MHz'],
  [1e3, 'kHz'],
  [1, 'Hz']
];
const secondScale: Scale = [
  [1, 's'],
  [1e-3, 'ms'],
  [1e-6, 'µs']
];

/** Volts: "18 kV", "6.3 V", "40 mV".
 *  Example:  formatVolts(18000) // "18 kV"
 */
export const formatVolts = (volts: number): string => formatScaled(volts, voltScale);

/** Amperes: "1.2 A", "450 mA".
 *  Example:  formatAmps(0.45) // "450 mA"
 */
export const formatAmps = (amps: number): string => formatScaled(amps, ampScale);

/** Ohms: "47 kΩ", "1.5 MΩ".
 *  Example:  formatOhms(4700) // "4.7 kΩ"
 */
export const formatOhms = (ohms: number): string => formatScaled(ohms, ohmScale);

/** Farads as service data writes them: microfarads from 0.001 µF up, picofarads below; no nanofarads.
 *  Example:  formatFarads(5e-8) // "0.05 µF"
 */
export function formatFarads(farads: number): string {
  if (!Number.isFinite(farads)) return notKnown;
  const isSmall = roundSignificant(Math.abs(farads), 4) < 1e-9 && farads !== 0;
  return isSmall ? `${formatNumber(farads * 1e12)} pF` : `${formatNumber(farads * 1e6)} µF`;
}

export const formatHenries = (henries: number): string => formatScaled(henries, henryScale);
export const formatWatts = (watts: number): string => formatScaled(watts, wattScale);
export const formatHertz = (hertz: number): string => formatScaled(hertz, hertzScale);
export const formatSeconds = (seconds: number): string => formatScaled(seconds, secondScale);

/** Degrees Celsius: "50 °C". */
export const formatCelsius = (celsius: number): string => withUnit(formatNumber(celsius), '°C');

/** Millimetres: "240 mm", "0.58 mm".
 *  Example:  formatMm(0.6438033) // "0.6438 mm"
 */
export const formatMm = (mm: number): string => withUnit(formatNumber(mm), 'mm');

/** A length given in millimetres as inches to an eighth: "9 1/2 in". A cut length is rounded up, so
 *  that it is never shorter than asked.
 *  Example:  formatInches(240) // "9 1/2 in"
 */
export function formatInches(mm: number, round: 'nearest' | 'up' = 'nearest'): string {
  if (!Number.isFinite(mm)) return notKnown;
  const exact = roundSignificant(Math.abs(mm) / 3.175);
  const eighths = round === 'up' ? Math.ceil(exact) : Math.round(exact);
  const whole = Math.floor(eighths / 8);
  const fraction = ['', '1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'][eighths % 8] ?? '';
  const sign = mm < 0 && eighths > 0 ? '-' : '';
  const parts = whole > 0 || fraction === '' ? [String(whole), fraction] : [fraction];
  return `${sign}${parts.filter((part) => part !== '').join(' ')} in`;
}

/** A gauge: "22 AWG", "2/0 AWG".
 *  Example:  formatAwg(-1) // "2/0 AWG"
 */
export function formatAwg(awg: number): string {
  if (!Number.isFinite(awg)) return notKnown;
  return awg < 0 ? `${1 - awg}/0 AWG` : `${formatNumber(awg)} AWG`;
}

const withUnit = (number: string, unit: string): string =>
  number === notKnown ? notKnown : `${number} ${unit}`;
