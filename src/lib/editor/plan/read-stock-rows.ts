// Rows of a shelf list, pasted: with headings, each cell in its field; without, a line says what it is and
// then how long, what it costs and where it lies. What cannot be read is told and goes to the notes.
import { mergeFields } from '#document/merge-fields.ts';
import type { Stock } from '#document/index.ts';
import { readWholeConductor } from '#intake/conductor-cells.ts';
import { plainListText, readTable } from '#intake/read-table.ts';
import type { LengthUnit } from '../core/preferences.svelte.ts';
import { stockFields, type StockField } from './stock-fields.ts';

/** What a row gives; the id and the order are the editor's. */
export type StockDraft = Pick<Stock, 'name' | 'kind' | 'lengthMm'> & Partial<Stock>;

export interface StockRows {
  readonly drafts: readonly StockDraft[];
  /** What was not understood, each with its row. */
  readonly problems: readonly string[];
}

const delimiterOf = (text: string): string =>
  text.includes('\t') ? '\t' : text.includes(';') ? ';' : ',';

const fieldOf = (heading: string): StockField | undefined =>
  stockFields.find((field) => field.heading.test(heading.trim()));

const byId = (id: string): StockField | undefined => stockFields.find((field) => field.id === id);

/** Length, price, place, in the order that they stand in a line without headings. */
const restInTurn = ['length', 'price', 'where', 'notes'];

export function readStockRows(text: string, unit: LengthUnit): StockRows {
  const plain = plainListText(text);
  const table = readTable(plain, delimiterOf(plain));
  if (!table.ok) return { drafts: [], problems: [table.problem] };
  const rows = table.rows.filter((row) => row.some((cell) => cell !== ''));
  const headings = (rows[0] ?? []).map(fieldOf);
  const isHeaded = headings.filter((field) => field !== undefined).length >= 2;
  const problems: string[] = [];
  const drafts = (isHeaded ? rows.slice(1) : rows).flatMap((row, at) => {
    const line = at + (isHeaded ? 2 : 1);
    const say = (words: string): void => void problems.push(`Row ${line}: ${words}`);
    const cells = isHeaded
      ? row.map((cell, column) => ({ field: headings[column], cell }))
      : cellsWithoutHeadings(row);
    const draft = draftOf(cells, isHeaded ? {} : whole(row[0] ?? ''), unit, say);
    return draft === null ? [] : [draft];
  });
  return { drafts, problems };
}

const cellsWithoutHeadings = ([what = '', ...rest]: readonly string[]) => [
  { field: byId('name'), cell: what },
  ...rest.map((cell, at) => ({ field: byId(restInTurn[at] ?? 'notes'), cell }))
];

/** Gauge, style, colour out of what it is called. */
const whole = (name: string): Partial<Stock> => readWholeConductor(name).fields as Partial<Stock>;

function draftOf(
  cells: readonly { readonly field: StockField | undefined; readonly cell: string }[],
  known: Partial<Stock>,
  unit: LengthUnit,
  say: (words: string) => void
): StockDraft | null {
  const draft: Record<string, unknown> = { kind: 'spool', ...known };
  const left: string[] = [];
  // A length in ohms needs the gauge, wherever that stands in the row.
  const inTurn = [...cells].sort(
    (a, b) => Number(a.field?.id === 'length') - Number(b.field?.id === 'length')
  );
  for (const { field, cell } of inTurn) {
    if (cell === '') continue;
    const reading = field?.read(cell, draft as Partial<Stock>, unit);
    if (reading?.ok === true) mergeFields(draft, reading.fields);
    else {
      left.push(cell);
      if (reading) say(reading.why);
    }
  }
  const { lengthMm, name } = draft as Partial<Stock>;
  if (lengthMm === undefined) {
    say('no length on hand: left out');
    return null;
  }
  const notes = [draft['notes'], ...left].filter((part) => part !== undefined && part !== '');
  return {
    ...(draft as unknown as StockDraft),
    name: name === undefined || name === '' ? 'wire' : name,
    ...(notes.length === 0 ? {} : { notes: notes.join('; ') })
  };
}
