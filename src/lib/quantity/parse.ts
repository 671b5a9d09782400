// Amounts as people write them, read for the field that they stand in. What was understood can be
// shown; what cannot be read for certain is refused with the reason, never guessed.
import { baseUnits, formatQuantity, type Dimension } from './dimension.ts';
import { readGauge } from './gauge.ts';
import { normaliseText } from './normalise.ts';
import { scanNumber, type DecimalComma } from './scan-number.ts';
import { findUnit, unitTableOf } from './units.ts';

export interface ParseOptions {
  /** The unit of a bare number; where not given the base unit of the kind. */
  readonly defaultUnit?: string;
  /** True: a comma is a decimal sign. False: it parts thousands. Not given: by the digits, as in 5,5. */
  readonly decimalComma?: boolean;
}

/** What a voltage or current says of itself: 12.6VAC is "ac", 5 kV peak is "peak". */
export type AmountKind = 'dc' | 'ac' | 'peak';

export type ParsedQuantity =
  | {
      readonly ok: true;
      /** In the base unit of the kind: mm, V, A, ohm, F, H, W, Hz, s, C, AWG, pF/m. */
      readonly value: number;
      readonly unit: string;
      /** As it was written. */
      readonly text: string;
      /** As it was understood: "4.7 kΩ". */
      readonly understood: string;
      readonly kind?: AmountKind;
    }
  | { readonly ok: false; readonly problem: string };

type Reading =
  | { readonly ok: true; readonly value: number; readonly kind?: AmountKind }
  | { readonly ok: false; readonly problem: string };

const failed = (problem: string): { ok: false; problem: string } => ({ ok: false, problem });
const longest = 100;
const bareNumber = { factor: 1, offset: 0 };

/** Reads an amount of a kind. Never throws.
 *  Example:  parseQuantity("4k7", "resistance").value // 4700
 *  Example:  parseQuantity("1-1/8\"", "length").value // 28.575
 *  Example:  parseQuantity("12.6VAC", "voltage").understood // "12.6 V ac"
 */
export function parseQuantity(
  text: string,
  dimension: Dimension,
  options: ParseOptions = {}
): ParsedQuantity {
  if (text.length > longest) return failed(`longer than ${longest} characters`);
  const plain = normaliseText(text);
  if (plain === '') return failed('empty');
  const reading =
    dimension === 'gauge' ? readAsGauge(plain) : readAmount(plain, dimension, options);
  if (!reading.ok) return failed(`cannot read "${text}": ${reading.problem}`);
  const { value, kind } = reading;
  const understood = formatQuantity(value, dimension) + (kind === undefined ? '' : ` ${kind}`);
  const parsed = { ok: true, value, unit: baseUnits[dimension], text, understood } as const;
  return kind === undefined ? parsed : { ...parsed, kind };
}

function readAsGauge(plain: string): Reading {
  const gauge = readGauge(plain);
  return gauge.ok ? { ok: true, value: gauge.awg } : gauge;
}

type Amount = Exclude<Dimension, 'gauge'>;

function readAmount(plain: string, dimension: Amount, options: ParseOptions): Reading {
  const infix = readInfix(plain, dimension);
  if (infix) return infix;
  const number = scanNumber(plain, options.decimalComma);
  if (!number.ok) return number;
  const rest = number.rest.trim();
  if (dimension === 'length') {
    const feet = readFeetAndInches(number.value, rest, options.decimalComma);
    if (feet) return feet;
  }
  return withUnit(number.value, rest, dimension, options.defaultUnit);
}

/** 4k7, R47, 6V3, with the unit behind it or not: the letter stands where the point would. */
function readInfix(plain: string, dimension: Amount): Reading | undefined {
  const match = /^(\d{0,9})([A-Za-zµ])(\d{1,9})(?: ?(.{1,8}))?$/.exec(plain);
  if (!match) return undefined;
  const [, whole = '', letter = '', fraction = '', suffix] = match;
  const table = unitTableOf(dimension);
  const factor = table.infix.get(letter);
  if (factor === undefined) return undefined;
  if (suffix !== undefined && findUnit(table, suffix)?.factor !== 1) {
    return failed(`"${suffix}" after "${whole}${letter}${fraction}"`);
  }
  return { ok: true, value: scaled(Number(`${whole === '' ? '0' : whole}.${fraction}`), factor) };
}

/** 5' 6", 5 ft 6 1/2 in, 5'6: undefined where the text is no feet-and-inches. */
function readFeetAndInches(
  feet: number,
  rest: string,
  decimalComma: DecimalComma
): Reading | undefined {
  const match = /^(?:'|ft\.?|feet|foot) ?-?(?=\d)(.{1,30})$/i.exec(rest);
  if (!match) return undefined;
  const inches = scanNumber(match[1] ?? '', decimalComma);
  if (!inches.ok) return inches;
  const unit = inches.rest.trim().toLowerCase();
  if (!['', '"', 'in', 'in.', 'inch', 'inches'].includes(unit))
    return failed(`"${unit}" after feet`);
  if (inches.value >= 12) return failed('12 or more inches after feet');
  const size = Math.abs(feet) * 304.8 + inches.value * 25.4;
  return { ok: true, value: feet < 0 ? -size : size };
}

function withUnit(
  value: number,
  rest: string,
  dimension: Amount,
  defaultUnit: string | undefined
): Reading {
  const table = unitTableOf(dimension);
  const { unit: written, kind } = splitKind(rest, dimension);
  if (kind === 'peak to peak') return failed('peak to peak: give the peak alone');
  const name = tidyUnit(written === '' ? (defaultUnit ?? baseUnits[dimension]) : written);
  const ambiguous = table.ambiguous.get(name);
  if (ambiguous !== undefined) return failed(ambiguous);
  const unit = name === '' ? bareNumber : findUnit(table, name);
  if (!unit) return failed(`"${name}" is no unit of ${dimension} known here`);
  const amount = scaled(value, unit.factor) + unit.offset;
  if (!Number.isFinite(amount)) return failed('the number is too large');
  return kind === undefined ? { ok: true, value: amount } : { ok: true, value: amount, kind };
}

/** "deg. C" and "in." without spaces and closing points. */
const tidyUnit = (unit: string): string => {
  const joined = unit.replaceAll(' ', '');
  return joined.endsWith('.') ? joined.slice(0, -1) : joined;
};

const kindWords: readonly (readonly [ending: string, kind: AmountKind | 'peak to peak'])[] = [
  ['p-p', 'peak to peak'],
  ['pp', 'peak to peak'],
  ['pk-pk', 'peak to peak'],
  ['peak', 'peak'],
  ['pk', 'peak'],
  ['acrms', 'ac'],
  ['rms', 'ac'],
  ['ac', 'ac'],
  ['dc', 'dc'],
  ['p', 'peak']
];

/** "VAC" is V and ac, "kV peak" kV and peak, "dc" alone no unit and dc. */
function splitKind(
  rest: string,
  dimension: Amount
): { unit: string; kind?: AmountKind | 'peak to peak' } {
  const hasKinds = dimension === 'voltage' || dimension === 'current';
  if (!hasKinds || findUnit(unitTableOf(dimension), tidyUnit(rest))) return { unit: rest };
  const joined = rest.replaceAll(' ', '').replaceAll('.', '');
  const folded = joined.toLowerCase();
  const found = kindWords.find(([ending]) => folded.endsWith(ending));
  if (!found) return { unit: rest };
  return { unit: joined.slice(0, joined.length - found[0].length), kind: found[1] };
}

/** Number x factor without the noise of binary fractions: 0.05 µF is 5e-8 F. */
const scaled = (value: number, factor: number): number =>
  Number.isFinite(value * factor) ? Number((value * factor).toPrecision(15)) : value * factor;
