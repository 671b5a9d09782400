// Results of sums for people: as many digits as help, the prefix of the trade, and beside it the
// unit of the other side of the ocean where people measure in both.
import {
  formatAmps,
  formatFarads,
  formatHertz,
  formatMm,
  formatNumber,
  formatOhms,
  formatSeconds,
  formatVolts,
  formatWatts
} from '#quantity/index.ts';

export interface ResultText {
  readonly main: string;
  /** The same in another unit. */
  readonly also?: string;
}

const mmPerInch = 25.4;
const metresPerFt = 0.3048;

/** A result in the unit that the sum names. A unit that is not known here stands as it is. */
export function formatResult(value: number, unit: string): ResultText {
  const form = forms[unit];
  if (form) return form(value);
  return { main: unit === '' ? formatNumber(value) : `${formatNumber(value)} ${unit}` };
}

const forms: Readonly<Record<string, (value: number) => ResultText>> = {
  mm: (mm) => ({ main: formatMm(mm), also: `${formatNumber(mm / mmPerInch, 3)} in` }),
  m: (metres) => ({
    main: `${formatNumber(metres)} m`,
    also: `${formatNumber(metres / metresPerFt, 3)} ft`
  }),
  mm2: (mm2) => ({ main: `${formatNumber(mm2)} mm²` }),
  'sixteenths of an inch': (sixteenths) => ({ main: formatSixteenths(sixteenths) }),
  V: (volts) => ({ main: formatVolts(volts) }),
  A: (amps) => ({ main: formatAmps(amps) }),
  W: (watts) => ({ main: formatWatts(watts) }),
  F: (farads) => ({ main: formatFarads(farads) }),
  Hz: (hertz) => ({ main: formatHertz(hertz) }),
  ohm: (ohms) => ({ main: formatOhms(ohms) }),
  'ohm/m': (ohms) => ({
    main: `${formatOhms(ohms)}/m`,
    also: `${formatOhms(ohms * 1000 * metresPerFt)} per 1000 ft`
  }),
  'pF/m': (pf) => ({
    main: `${formatNumber(pf)} pF/m`,
    also: `${formatNumber(pf * metresPerFt)} pF/ft`
  }),
  s: (seconds) => {
    const long = formatLongTime(seconds);
    return long === null
      ? { main: formatSeconds(seconds) }
      : { main: formatSeconds(seconds), also: long };
  },
  J: (joules) => ({ main: scaled(joules, 'J') }),
  C: (coulombs) => ({ main: scaled(coulombs, 'C') })
};

/** "5/16 in", "1 1/4 in". */
function formatSixteenths(sixteenths: number): string {
  if (!Number.isInteger(sixteenths)) return `${formatNumber(sixteenths)}/16 in`;
  const whole = Math.floor(sixteenths / 16);
  let [over, under] = [sixteenths % 16, 16];
  while (over > 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  const fraction = over === 0 ? '' : `${over}/${under}`;
  return `${[whole === 0 && over > 0 ? '' : String(whole), fraction].filter(Boolean).join(' ')} in`;
}

/** From two minutes up, in the unit that leaves a number one can picture. */
function formatLongTime(seconds: number): string | null {
  if (seconds < 120) return null;
  const [factor, word] =
    seconds < 7200 ? [60, 'minutes'] : seconds < 172_800 ? [3600, 'hours'] : [86_400, 'days'];
  return `${formatNumber(seconds / factor, 3)} ${word}`;
}

function scaled(value: number, symbol: string): string {
  const size = Math.abs(value);
  if (size === 0 || size >= 1) return `${formatNumber(value)} ${symbol}`;
  if (size >= 1e-3) return `${formatNumber(value * 1e3)} m${symbol}`;
  return `${formatNumber(value * 1e6)} µ${symbol}`;
}
