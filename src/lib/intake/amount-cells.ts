// Amounts in cells as people fill them in: "B+ 285", "285/310", "~280", "<50", "n/a". What is
// understood beyond a plain amount is said; what is not is refused with the reason.
import { parseQuantity, type Dimension } from '#quantity/index.ts';

export type AmountReading =
  | { readonly kind: 'blank' }
  | { readonly kind: 'unread'; readonly problem: string }
  | {
      readonly kind: 'amount';
      readonly value: number;
      /** What a voltage says of itself. */
      readonly current: 'dc' | 'ac' | 'peak' | null;
      /** How it was read, where that is more than the plain amount. */
      readonly remark: string | null;
    };

export interface AmountOptions {
  readonly dimension: Extract<Dimension, 'voltage' | 'current' | 'length' | 'temperature'>;
  /** Unit of a bare number; null where neither heading nor column tells one. */
  readonly unit: string | null;
  readonly decimalComma: boolean | undefined;
}

/** A cell that says that there is nothing to say. */
export const isBlankCell = (text: string): boolean =>
  /^(?:|[?\-–—.]+|n\/?[akd]|none|unk(?:nown)?\.?|not known|not measured|nil|tbd|\(blank\)|x)$/i.test(
    text.trim()
  );

const unread = (problem: string): AmountReading => ({ kind: 'unread', problem });

const readPlain = (text: string, options: AmountOptions): AmountReading => {
  const { dimension, unit, decimalComma } = options;
  const isPulse = /\bpulses?$/i.test(text);
  const plain = isPulse ? text.replace(/\s*\bpulses?$/i, '') : text;
  if (unit === null && /^[\d\s.,/+-]*$/.test(plain))
    return unread('no unit, in the cell or in the heading');
  const parsed = parseQuantity(plain, dimension, {
    ...(unit === null ? {} : { defaultUnit: unit }),
    ...(decimalComma === undefined ? {} : { decimalComma })
  });
  if (!parsed.ok) return unread(parsed.problem.replace(/^cannot read ".*": /s, ''));
  const current = isPulse ? 'peak' : (parsed.kind ?? null);
  return { kind: 'amount', value: parsed.value, current, remark: null };
};

const number = String.raw`[+-]?\d[\d.,]*`;
const pair = new RegExp(
  String.raw`^(${number}) ?(k?V|m?A)? ?(?:\/|-|–|to|\.\.\.?|…) ?(${number})( ?[A-Za-z].*)?$`,
  'i'
);

// "285/310" is two readings: the larger is the one that insulation has to stand.
const readPair = (text: string, options: AmountOptions): AmountReading | null => {
  const match = pair.exec(text);
  if (!match || options.dimension === 'length' || options.dimension === 'temperature') return null;
  const [, low = '', lowUnit, high = '', highUnit = ''] = match;
  // Half an ampere may be written as a fraction.
  if (options.dimension === 'current' && /^\d \/|^[1-9]\/(?:2|4|8)$/.test(text)) return null;
  const first = readPlain(`${low}${lowUnit ?? highUnit}`, options);
  const second = readPlain(`${high}${highUnit}`, options);
  if (first.kind !== 'amount' || second.kind !== 'amount') return null;
  const larger = Math.abs(first.value) > Math.abs(second.value) ? first : second;
  return { ...larger, remark: 'two values, the larger is used' };
};

/** Reads the amount in a cell. Values are in the base unit of the dimension. */
export const readAmountCell = (written: string, options: AmountOptions): AmountReading => {
  const text = written.replace(/\s+/g, ' ').trim().slice(0, 100);
  if (isBlankCell(text)) return { kind: 'blank' };
  if (/^(?:[>≥]|over |above |more than |at least )/i.test(text)) {
    return unread('a lower bound is no value');
  }
  const about = /^(?:~|≈|approx\.?|about|abt\.?|ca\.?|circa|est\.?|c\.)\s*/i.exec(text);
  const below = /^(?:[<≤]|under |below |less than |up to |max\.? )\s*/i.exec(text);
  const label =
    /^(?:b ?\+{1,2}|b plus|b\+? ?boost|boost|ht|hv|dc|ac|peak|pulse)\s*[:=]?\s*(?=[~<+\-\d.])/i.exec(
      text
    );
  const prefix = about ?? below ?? label;
  const doubt = /[^?]\?+$/.test(text);
  const core = text.slice(prefix?.[0].length ?? 0).replace(/\s*\?+$/, '');
  const reading = readPair(core, options) ?? readPlain(core, options);
  if (reading.kind !== 'amount') return reading;
  const remarks = [
    ...(about ? ['marked as about'] : []),
    ...(below ? ['an upper bound, read as the value'] : []),
    ...(doubt ? ['marked as doubtful'] : []),
    ...(reading.remark === null ? [] : [reading.remark])
  ];
  return { ...reading, remark: remarks.length > 0 ? remarks.join('; ') : null };
};
