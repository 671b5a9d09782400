// Cells as people type them, read into fields of a wire: what was understood, or why it was not.
// An empty cell takes the value away. Nothing here guesses; the quantity room does the reading.
import type { Changes } from '#document/edits.ts';
import { wireStates, type Wire } from '#document/index.ts';
import { unknownColourWords } from '#handbook/colours.ts';
import { readRatingCell } from '#intake/conductor-cells.ts';
import {
  formatAmps,
  formatVolts,
  parseQuantity,
  type ParseOptions,
  type ParsedQuantity
} from '#quantity/index.ts';
import { colourText } from '../core/words.ts';
import { endFieldsOf, type EndNames } from './end-text.ts';

export type CellReading =
  | {
      readonly ok: true;
      readonly fields: Changes<Wire>;
      /** What it was read as, for the person to check; null where that says nothing new. */
      readonly understood: string | null;
    }
  | { readonly ok: false; readonly why: string };

export interface ReadContext {
  readonly ends: EndNames;
  /** The unit of a length without one. */
  readonly lengthUnit: 'mm' | 'in';
}

const bad = (why: string): CellReading => ({ ok: false, why });
const good = (fields: Changes<Wire>, understood: string | null): CellReading => ({
  ok: true,
  fields,
  understood
});

const tidy = (text: string): string => text.trim().replaceAll(/\s+/g, ' ');

type Dimension = Parameters<typeof parseQuantity>[1];
type Amount = Extract<ParsedQuantity, { ok: true }>;

// An amount in a field of its own; the empty cell gives null, which takes the value away.
const readAmount = (
  text: string,
  dimension: Dimension,
  toFields: (value: number | null) => Changes<Wire>,
  options?: ParseOptions,
  objection: (amount: Amount) => string | null = () => null
): CellReading => {
  if (tidy(text) === '') return good(toFields(null), 'taken away');
  const parsed = parseQuantity(text, dimension, options);
  if (!parsed.ok) return bad(parsed.problem);
  const why = objection(parsed);
  return why === null ? good(toFields(parsed.value), parsed.understood) : bad(why);
};

export const readNumber = (text: string): CellReading => good({ number: tidy(text) }, null);

export const readEnd =
  (end: 'from' | 'to') =>
  (text: string, { ends }: ReadContext): CellReading => {
    const reading = ends.read(text);
    const understood =
      reading.kind === 'terminal'
        ? reading.label
        : reading.kind === 'words'
          ? `kept as written: ${reading.why}`
          : 'not found yet';
    return good({ [end]: endFieldsOf(reading) }, understood);
  };

/** "red", "red/yellow", "red with yellow tracer", "red yellow tracer". */
export const readColour = (text: string): CellReading => {
  const plain = tidy(text).replace(/\s*(tracer|stripe|tr\.?)$/i, '');
  const [colour = '', tracer = ''] = plain
    .split(/\s*\/\s*|\s+with\s+(?:an?\s+)?|\s+-\s+/i)
    .map((part) => part.trim());
  if (colour === '' && tracer !== '') return bad('the colour before the stroke is missing');
  const fields = { found: { colour: colour || null, tracer: tracer || null } };
  if (colour === '') return good(fields, 'taken away');
  const unknown = [colour, tracer].flatMap((word) => {
    const why = word === '' ? null : unknownColourWords(word);
    return why === null ? [] : [`“${word}” ${why}`];
  });
  if (unknown.length > 0) return good(fields, unknown.join('. '));
  return good(fields, tracer === '' ? null : `${colour} with a ${tracer} tracer`);
};

const plainText =
  (toFields: (text: string | null) => Changes<Wire>) =>
  (text: string): CellReading =>
    good(toFields(text.trim() === '' ? null : text.trim()), null);

export const readFunction = plainText((text) => ({ function: text }));
export const readNotes = plainText((text) => ({ notes: text }));

export const readDress = plainText((text) => ({ dress: text }));
export const readCondition = plainText((text) => ({ found: { condition: text } }));

/** One of the states of the work, by its word. */
export const readState = (text: string): CellReading => {
  const word = tidy(text).toLowerCase();
  const state = wireStates.find((one) => one === word);
  return state === undefined
    ? bad(`a state is one of ${wireStates.join(', ')}`)
    : good({ state }, null);
};

/** "600 V", "5 kV pulse", "20 kV dc": what the insulation found is rated for. */
export const readRating = (text: string): CellReading => {
  if (tidy(text) === '') return good({ found: { ratingV: null, ratingKind: null } }, 'taken away');
  const read = readRatingCell(text);
  if (read?.ratingV === undefined) return bad('a rating is volts, such as 600 V or 5 kV pulse');
  const { ratingV, ratingKind = null, ratingC } = read;
  const kind = ratingKind === null ? '' : ` ${ratingKind}`;
  return good(
    { found: { ratingV, ratingKind, ...(ratingC === undefined ? {} : { ratingC }) } },
    `${formatVolts(ratingV)}${kind}`
  );
};

export const readGauge = (text: string): CellReading =>
  /^\s*[-−–]\s*\d/.test(text)
    ? bad('a gauge has no minus: write 0, 2/0 or 3/0 for the thick ones')
    : readAmount(text, 'gauge', (awg) => ({ found: { awg } }));

const kindObjection =
  (allowed: Amount['kind'], column: string) =>
  (amount: Amount): string | null =>
    amount.kind === undefined || amount.kind === allowed
      ? null
      : `${amount.understood} does not belong under ${column}`;

const negative = (amount: Amount): string | null =>
  amount.value < 0 ? `${amount.understood}: write it without the minus` : null;

export const readDc = (text: string): CellReading =>
  readAmount(text, 'voltage', (dcV) => ({ carries: { dcV } }), {}, kindObjection('dc', 'volts dc'));

export const readAc = (text: string): CellReading =>
  readAmount(
    text,
    'voltage',
    (acV) => ({ carries: { acV } }),
    {},
    (amount) => kindObjection('ac', 'volts ac')(amount) ?? negative(amount)
  );

export const readPulse = (text: string): CellReading =>
  readAmount(
    text,
    'voltage',
    (pulseV) => ({ carries: { pulseV } }),
    {},
    (amount) => kindObjection('peak', 'pulse')(amount) ?? negative(amount)
  );

export const readAmps = (text: string): CellReading =>
  readAmount(text, 'current', (amps) => ({ carries: { amps } }), {}, negative);

export const readLength = (text: string, { lengthUnit }: ReadContext): CellReading =>
  readAmount(text, 'length', (tapedMm) => ({ tapedMm }), { defaultUnit: lengthUnit }, negative);

interface Carried {
  dcV: number | null;
  acV: number | null;
  pulseV: number | null;
  amps: number | null;
}

const voltField = { dc: 'dcV', ac: 'acV', peak: 'pulseV' } as const;

/** Only a current ends in A: "0.2 A", "450 mA", "3 amps ac". A bare "300 dc" is none. */
const endsInAmps = /\d\s*(m|µ|μ|u|mil-|milli|micro)?(a|amps?|amperes?)\.?\s*(dc|ac|rms)?$/i;

// One part of "285 V dc, 5 kV pulse, 0.2 A".
const readCarriedPart = (part: string, carried: Carried): string | null => {
  const put = (key: keyof Carried, value: number): string | null => {
    if (carried[key] !== null) return `"${part}" says the same thing twice`;
    if (value < 0 && key !== 'dcV') return `"${part}": write it without the minus`;
    carried[key] = value;
    return null;
  };
  const current = endsInAmps.test(part) ? parseQuantity(part, 'current') : null;
  if (current?.ok === true) return put('amps', current.value);
  const volts = parseQuantity(part.replace(/\s*pulse$/i, ' peak'), 'voltage');
  if (!volts.ok) return volts.problem;
  if (volts.kind === undefined) return `"${part}": is that dc, ac or pulse?`;
  return put(voltField[volts.kind], volts.value);
};

/** "285 V dc, 5 kV pulse, 0.2 A": all that the wire is declared to carry, in one cell. A comma with
 *  a space behind it, a semicolon or a plus parts the amounts. */
export const readCarries = (text: string): CellReading => {
  const carried: Carried = { dcV: null, acV: null, pulseV: null, amps: null };
  const parts = text
    .split(/,\s+|;|\+|\n/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  for (const part of parts) {
    const why = readCarriedPart(part, carried);
    if (why !== null) return bad(why);
  }
  const words = [
    carried.dcV === null ? '' : `${formatVolts(carried.dcV)} dc`,
    carried.acV === null ? '' : `${formatVolts(carried.acV)} ac`,
    carried.pulseV === null ? '' : `${formatVolts(carried.pulseV)} pulse peak`,
    carried.amps === null ? '' : formatAmps(carried.amps)
  ].filter((word) => word !== '');
  return good({ carries: { ...carried } }, words.length === 0 ? 'taken away' : words.join(', '));
};

/** What the colour cell shows while it is edited. */
export const colourToEdit = (wire: Wire): string =>
  colourText(wire.found.colour, wire.found.tracer);
