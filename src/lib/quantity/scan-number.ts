// Reads the number at the start of a text: decimals with a point or a comma, thousands in groups,
// fractions and mixed numbers. What can be read in two ways is refused with the reason.

/** How a comma is meant: true as a decimal sign, false as thousands, undefined not told. */
export type DecimalComma = boolean | undefined;

export type Scan =
  | { readonly ok: true; readonly value: number; readonly rest: string }
  | { readonly ok: false; readonly problem: string };

const failed = (problem: string): Scan => ({ ok: false, problem });

const isDigit = (character: string | undefined): boolean =>
  character !== undefined && character >= '0' && character <= '9';

/** Length of the run of characters from `from` that pass. */
function runFrom(text: string, from: number, passes: (character: string) => boolean): string {
  let end = from;
  while (end < text.length && passes(text.charAt(end))) end += 1;
  return text.slice(from, end);
}

/** The number at the start of a normalised text, and what follows it. */
export function scanNumber(text: string, decimalComma?: DecimalComma): Scan {
  const sign = text.startsWith('-') ? -1 : 1;
  const body = text.startsWith('-') || text.startsWith('+') ? text.slice(1).trimStart() : text;
  const token = groupedToken(body);
  if (![...token].some(isDigit)) return failed('no number at the start');
  const after = body.slice(token.length);
  if (after.startsWith('/')) return scanFraction(sign, token, after.slice(1));
  const plain = readSeparators(token, decimalComma);
  if (!plain.ok) return plain;
  return scanTail(sign, plain.value, token, after);
}

/** Digits, points and commas; also groups of three after a space, as in 10 000. */
function groupedToken(text: string): string {
  let token = runFrom(
    text,
    0,
    (character) => isDigit(character) || character === '.' || character === ','
  );
  if (token.length > 3 || ![...token].every(isDigit)) return token;
  for (;;) {
    const group = text.slice(token.length, token.length + 4);
    const next = text.charAt(token.length + 4);
    const isGroup =
      group.length === 4 && group.startsWith(' ') && [...group.slice(1)].every(isDigit);
    if (!isGroup || isDigit(next) || next === '/') return token;
    token += group;
  }
}

/** What may follow a plain number and still belong to it: a fraction (7 1/2, 7-1/2), or an exponent. */
function scanTail(sign: number, value: number, token: string, after: string): Scan {
  const gap = after.startsWith(' ') || after.startsWith('-') ? 1 : 0;
  const top = runFrom(after, gap, isDigit);
  if (gap === 1 && top !== '') {
    if (after.charAt(1 + top.length) !== '/') {
      const problem = after.startsWith('-') ? 'a range: give one value' : 'two numbers in a row';
      return failed(problem);
    }
    if (![...token].every(isDigit)) return failed('a fraction after a decimal number');
    const part = scanFraction(1, top, after.slice(2 + top.length));
    if (!part.ok) return part;
    if (part.value >= 1) return failed('the fraction after a whole number must be less than one');
    return { ok: true, value: sign * (value + part.value), rest: part.rest };
  }
  const exponent = readExponent(after);
  const scaled = sign * Number(`${value}${exponent}`);
  if (!Number.isFinite(scaled)) return failed('the number is too large');
  return { ok: true, value: scaled === 0 ? 0 : scaled, rest: after.slice(exponent.length) };
}

function scanFraction(sign: number, top: string, text: string): Scan {
  const bottom = runFrom(text, 0, isDigit);
  if (![...top].every(isDigit) || bottom === '')
    return failed('a fraction needs whole numbers, as in 3/16');
  if (Number(bottom) === 0) return failed('a fraction cannot have 0 below the line');
  const value = (sign * Number(top)) / Number(bottom);
  if (!Number.isFinite(value)) return failed('the number is too large');
  return { ok: true, value, rest: text.slice(bottom.length) };
}

/** `e-7` where a text goes on with an exponent, else nothing. */
function readExponent(text: string): string {
  if (!text.startsWith('e') && !text.startsWith('E')) return '';
  const signLength = text.charAt(1) === '-' || text.charAt(1) === '+' ? 1 : 0;
  const digits = runFrom(text, 1 + signLength, isDigit);
  return digits === '' ? '' : text.slice(0, 1 + signLength + digits.length);
}

type Plain =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly problem: string };

const groupsOfThree = (parts: readonly string[]): boolean =>
  parts.every((part, index) =>
    index === 0 ? part.length >= 1 && part.length <= 3 && !part.startsWith('0') : part.length === 3
  );

function readSeparators(token: string, decimalComma: DecimalComma): Plain {
  const text = token.replaceAll(' ', '');
  const hasPoint = text.includes('.');
  const hasComma = text.includes(',');
  if (hasPoint && hasComma) return readBoth(text);
  if (hasComma) return readOne(text, ',', decimalComma === false, decimalComma !== true);
  return readOne(text, '.', false, false, decimalComma === true);
}

/** Both signs stand in it: the last one is the decimal sign, the other parts thousands. */
function readBoth(text: string): Plain {
  const decimal = text.lastIndexOf('.') > text.lastIndexOf(',') ? '.' : ',';
  const [whole = '', fraction = '', ...more] = text.split(decimal);
  const groups = whole.split(decimal === '.' ? ',' : '.');
  if (more.length > 0 || !groupsOfThree(groups)) return unclear(text);
  return { ok: true, value: Number(`${groups.join('')}.${fraction}`) };
}

/** One kind of sign: `refuseDecimal` where it can only mean thousands, `preferThousands` where three
 *  digits after it mean thousands, `refuseThree` where three digits after it could be either. */
function readOne(
  text: string,
  mark: string,
  refuseDecimal: boolean,
  preferThousands: boolean,
  refuseThree = false
): Plain {
  const parts = text.split(mark);
  const isGrouped = parts.length > 1 && groupsOfThree(parts);
  if (parts.length > 2) {
    return isGrouped ? { ok: true, value: Number(parts.join('')) } : unclear(text);
  }
  if (isGrouped && preferThousands) return { ok: true, value: Number(parts.join('')) };
  if (isGrouped && refuseThree) return unclear(text);
  const [whole = '', fraction] = parts;
  if (fraction !== undefined && refuseDecimal) return unclear(text);
  if (fraction === '' && mark === ',') return unclear(text);
  return { ok: true, value: Number(`${whole === '' ? '0' : whole}.${fraction ?? '0'}`) };
}

const unclear = (text: string): Plain => ({
  ok: false,
  problem: `cannot tell decimals from thousands in "${text}": write 1234.5`
});
