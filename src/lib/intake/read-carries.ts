// The amounts of a row: what the wire carries, how long it is, how far its ends are stripped.
import { findCircuitFunction } from '#handbook/index.ts';
import type { Carries } from '#document/index.ts';
import { readAmountCell, type AmountReading } from './amount-cells.ts';
import type { Column } from './columns.ts';
import { isAmbiguousComma } from './decimal-comma.ts';
import type { NumberStyle } from './list-layout.ts';
import type { TellNote } from './notes.ts';
import type { WireDraft } from './wire-draft.ts';

export interface AmountContext {
  readonly style: NumberStyle;
  readonly delimiter: string;
  readonly tell: TellNote;
  /** Whether the list has a column of its own for ac; without one "Volts" may be either. */
  readonly hasAcColumn: boolean;
}

export type AmountCell = { readonly column: Column; readonly text: string };

const keep = (draft: WireDraft, { column, text }: AmountCell): void => {
  draft.notes.push(`${column.heading}: ${text}`);
};

const limits = { voltage: 200_000, current: 10_000, length: 1_000_000 } as const;
const limitWords = { voltage: '200 kV', current: '10,000 A', length: '1,000 m' } as const;

const dimensionOf = (role: string): 'voltage' | 'current' | 'length' =>
  role === 'amps' ? 'current' : /^(?:length|fromStrip|toStrip)$/.test(role) ? 'length' : 'voltage';

const readCell = (
  { column, text }: AmountCell,
  { style, delimiter }: AmountContext
): AmountReading => {
  const dimension = dimensionOf(column.role);
  const decimalComma = style.decimalComma.get(column.index);
  if (decimalComma === undefined && delimiter === ';' && isAmbiguousComma(text)) {
    return { kind: 'unread', problem: 'its comma could part decimals or thousands' };
  }
  const unit = style.unit.get(column.index) ?? null;
  const reading = readAmountCell(text, { dimension, unit, decimalComma });
  if (reading.kind === 'amount' && Math.abs(reading.value) > limits[dimension]) {
    return { kind: 'unread', problem: `beyond the limit of ${limitWords[dimension]}` };
  }
  return reading;
};

type VoltField = 'dcV' | 'acV' | 'pulseV';
const fieldOfCurrent = { dc: 'dcV', ac: 'acV', peak: 'pulseV' } as const;
const wordsOfField = { dcV: 'V dc', acV: 'V ac', pulseV: 'V peak of a pulse' } as const;

const voltField = (
  role: string,
  current: 'dc' | 'ac' | 'peak' | null,
  draft: WireDraft,
  context: AmountContext
): VoltField => {
  if (current !== null) return fieldOfCurrent[current];
  if (role === 'dcV' || role === 'acV' || role === 'pulseV') return role;
  const circuit = findCircuitFunction(draft.function ?? '');
  const isAc = circuit === 'heater' || circuit === 'power line';
  return isAc && !context.hasAcColumn ? 'acV' : 'dcV';
};

/** Takes one amount cell into the draft. The function of the wire must have been read before. */
export const takeAmount = (draft: WireDraft, cell: AmountCell, context: AmountContext): void => {
  const { column, text } = cell;
  const { role, heading } = column;
  const place = { row: draft.row, column: heading, cell: text };
  const reading = readCell(cell, context);
  if (reading.kind === 'blank') return;
  if (reading.kind === 'unread') {
    keep(draft, cell);
    const isUnitless = role === 'length' && context.style.unit.get(column.index) === null;
    if (!isUnitless || !reading.problem.startsWith('no unit')) {
      context.tell('unread', place, `was not read: ${reading.problem}; it is kept in the notes`);
    }
    return;
  }
  const remarks = reading.remark === null ? [] : [reading.remark];
  if (dimensionOf(role) === 'voltage') {
    takeVolts(draft, cell, reading, remarks, context);
    return;
  }
  const { value } = reading;
  if (value < 0) {
    keep(draft, cell);
    const what = role === 'amps' ? 'a current in a wire' : 'a length';
    const words = `was not read: ${what} has no minus, so it may be a slip: look at the wire again; it is kept in the notes`;
    context.tell('unread', place, words);
    return;
  }
  if (role === 'amps') draft.carries.amps = value;
  else if (role === 'length') draft.tapedMm = value;
  else if (role === 'fromStrip') draft.from.stripMm = value;
  else if (role === 'toStrip') draft.to.stripMm = value;
  tellRemarks(draft, cell, remarks, context);
};

const takeVolts = (
  draft: WireDraft,
  cell: AmountCell,
  reading: Extract<AmountReading, { kind: 'amount' }>,
  remarks: string[],
  context: AmountContext
): void => {
  const { column, text } = cell;
  const field = voltField(column.role, reading.current, draft, context);
  if (field !== column.role && column.role !== 'volts') {
    remarks.push(`it says ${wordsOfField[field]} of itself and is read so`);
  }
  if (field !== 'dcV' && reading.value < 0) remarks.push('the sign is left away');
  const carries: Carries = draft.carries;
  if (carries[field] !== undefined) {
    keep(draft, cell);
    const words = `was not read: the row gives ${wordsOfField[field]} already; it is kept in the notes`;
    context.tell('unread', { row: draft.row, column: column.heading, cell: text }, words);
    return;
  }
  carries[field] = field === 'dcV' ? reading.value : Math.abs(reading.value);
  tellRemarks(draft, cell, remarks, context);
};

const tellRemarks = (
  draft: WireDraft,
  cell: AmountCell,
  remarks: readonly string[],
  { tell }: AmountContext
): void => {
  if (remarks.length === 0) return;
  keep(draft, cell);
  const place = { row: draft.row, column: cell.column.heading, cell: cell.text };
  tell('reading', place, `was read, with the text kept in the notes: ${remarks.join('; ')}`);
};
