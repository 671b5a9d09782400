// One row of a list as the draft of a wire, or what else the row is: a heading between wires, a sum,
// the headings again.
import { parseColour } from '#handbook/index.ts';
import type { Column, ColumnRole } from './columns.ts';
import { isRepeatedHeading } from './find-headings.ts';
import { takeAmount, type AmountContext } from './read-carries.ts';
import { readEnd, type EndReading } from './read-end.ts';
import { takers, type Cell } from './take-cells.ts';
import { emptyWireDraft, type WireDraft } from './wire-draft.ts';

export type RowReading =
  | { readonly kind: 'blank' }
  | { readonly kind: 'headings' }
  | { readonly kind: 'sum'; readonly text: string }
  /** A line of text between the wires. */
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'wire'; readonly wire: WireDraft };

const amountRoles: ReadonlySet<ColumnRole> = new Set([
  'dcV',
  'acV',
  'pulseV',
  'volts',
  'amps',
  'length',
  'fromStrip',
  'toStrip'
]);
// A sum without a word beside it can only stand under these.
const summedRoles: ReadonlySet<ColumnRole> = new Set(['amps', 'length']);
// The kind of cable and the function are asked by other columns, so they come first.
const earlyRoles: ReadonlySet<ColumnRole> = new Set(['function', 'condition', 'cable', 'rating']);

/** "V3-5 to TS2-1", "V3-5 -> TS2-1" as two cells; a text without such a sign is the first end alone. */
const splitEnds = (cell: Cell): readonly Cell[] => {
  const [from = '', to = ''] = cell.text.split(/\s*(?:→|⇒|->|=>|—|–)\s*|\s+(?:to|-|and)\s+/i);
  const under = (role: 'from' | 'to'): Column => ({ ...cell.column, role });
  return [
    { column: under('from'), text: from },
    { column: under('to'), text: to }
  ].filter(({ text }) => text !== '');
};

/** The text of an end, from one column or from a part's and a terminal's. */
const endText = (cells: readonly Cell[], side: 'from' | 'to'): string => {
  const textOf = (role: ColumnRole): string =>
    cells.find(({ column }) => column.role === role)?.text ?? '';
  const whole = textOf(side);
  const part = textOf(side === 'from' ? 'fromPart' : 'toPart');
  const terminal = textOf(side === 'from' ? 'fromTerminal' : 'toTerminal');
  const place = [whole, part].filter((text) => text !== '').join(' ');
  if (terminal === '') return place;
  if (place === '') return terminal;
  // A sign alone would be lost as a separator, a colour or a number is not.
  return /^[+-]$/.test(terminal) ? `${place}${terminal}` : `${place} (${terminal})`;
};

// "V3 (6CG7)" in the terminal's place is a type; in two columns the second is always the terminal.
const readEndOf = (cells: readonly Cell[], side: 'from' | 'to'): EndReading => {
  const terminalRole = side === 'from' ? 'fromTerminal' : 'toTerminal';
  const terminal = cells.find(({ column }) => column.role === terminalRole)?.text ?? '';
  const place =
    cells.find(({ column }) => column.role === side || column.role === `${side}Part`)?.text ?? '';
  if (terminal === '' || place === '') return readEnd(endText(cells, side));
  const joined = readEnd(`${place} pin ${terminal}`);
  if (joined.kind === 'terminal' && joined.terminal !== null)
    return { ...joined, text: `${place} ${terminal}` };
  return readEnd(endText(cells, side));
};

const isSum = (cells: readonly Cell[]): boolean => {
  const first = cells[0];
  if (!first) return false;
  const hasFarEnd = cells.some(
    ({ column }) => /^to/.test(column.role) && column.role !== 'toStrip'
  );
  if (/^(?:grand |sub-? ?)?(?:totals?|sums?|count|average)\b/i.test(first.text) && !hasFarEnd)
    return true;
  return cells.every(
    ({ column, text }) => summedRoles.has(column.role) && /^[\d.,\s]+$/.test(text)
  );
};

/** A line that speaks to the reader: one cell alone that names no end and no wire. */
const isText = (cells: readonly Cell[]): boolean => {
  const only = cells[0];
  if (!only || cells.length > 1) return false;
  const { role } = only.column;
  if (role === 'number') return !/^#?\s?[A-Za-z]{0,2}-?\d{1,5}[A-Za-z]?$/.test(only.text);
  if (!/^(?:from|to)(?:Part)?$/.test(role))
    return role === 'extra' || role === 'notes' || role === 'function';
  const end = readEnd(only.text);
  if (end.kind === 'unknown') return true;
  if (end.kind === 'ground') return false;
  const isPlain = end.partKind === 'other' && end.terminal === null && !/\d/.test(only.text);
  return isPlain && (/\s|:$/.test(only.text) || only.text === only.text.toUpperCase());
};

/** Reads a row. @param row as a spreadsheet counts, the first line being 1 */
export const readWireRow = (
  texts: readonly string[],
  row: number,
  columns: readonly Column[],
  context: AmountContext
): RowReading => {
  const cells: Cell[] = [];
  texts.forEach((text, index) => {
    if (text === '') return;
    const column = columns[index] ?? {
      index,
      role: 'extra',
      heading: `column ${index + 1}`,
      unit: null
    };
    if (column.role === 'both') cells.push(...splitEnds({ column, text }));
    else cells.push({ column, text });
  });
  if (cells.length === 0) return { kind: 'blank' };
  if (isRepeatedHeading(texts, columns)) return { kind: 'headings' };
  const all = cells.map(({ text }) => text).join(' ');
  if (isSum(cells)) return { kind: 'sum', text: all };
  if (isText(cells)) return { kind: 'text', text: all };
  return { kind: 'wire', wire: readWire(cells, row, context) };
};

const readWire = (cells: readonly Cell[], row: number, context: AmountContext): WireDraft => {
  const draft = emptyWireDraft(row);
  draft.from.end = readEndOf(cells, 'from');
  draft.to.end = readEndOf(cells, 'to');
  const isEarly = ({ column }: Cell): boolean => earlyRoles.has(column.role);
  for (const cell of [...cells.filter(isEarly), ...cells.filter((cell) => !isEarly(cell))]) {
    const { role } = cell.column;
    if (amountRoles.has(role)) takeAmount(draft, cell, context);
    else takers[role]?.(draft, cell, context.tell);
  }
  draft.construction ??= constructionFromWords(draft);
  // "red" of a cable names the conductor by its colour.
  if (draft.conductor !== null && parseColour(draft.conductor))
    draft.found.colour ??= draft.conductor;
  return draft;
};

// A conductor called "shield" is one; insulation called "bare" is none.
const constructionFromWords = ({
  conductor,
  found,
  cable,
  function: use
}: WireDraft): string | null => {
  if (/shield|braid|drain/i.test(conductor ?? '')) return 'shield';
  if (/^(?:bare|none)$/i.test(found.insulation ?? '')) return 'bare bus';
  const isShield = /^(?:shield|braid|drain)\b|\b(?:shield|braid)$/i.test(use ?? '');
  return cable !== null && isShield ? 'shield' : null;
};
