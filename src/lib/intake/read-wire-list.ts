// A wire list as people keep it in a spreadsheet becomes a chassis document. Nothing is dropped: a
// half-known wire is kept, a cell that cannot be read is told and kept as text.
import type { ChassisDocument, MakeId } from '#document/index.ts';
import { buildListDocument } from './build-document.ts';
import type { Column, ColumnRole } from './columns.ts';
import { hasColumn, numberFirstColumn } from './find-headings.ts';
import { readHeading } from './heading-words.ts';
import { readNumberStyle, type ListLayout, type NumberStyle } from './list-layout.ts';
import { openListText, type ListOpened } from './list-source.ts';
import { collectNotes, joinNotes, type IntakeNote, type TellNote } from './notes.ts';
import { readWireRow } from './read-wire-row.ts';
import type { WireDraft } from './wire-draft.ts';

export interface WireListOptions {
  readonly fileName: string;
  readonly makeId: MakeId;
  /** Else the title line above the headings, else the file's name. */
  readonly title?: string;
}

export interface IntakeCounts {
  /** Rows of the list, headings and blank ones too. */
  readonly rows: number;
  readonly wires: number;
  readonly parts: number;
  readonly cables: number;
  readonly units: number;
  /** Cells that were kept as text because they could not be read. */
  readonly unread: number;
  /** Wires with an end that nobody found. */
  readonly halfKnown: number;
}

export interface WireListReading {
  /** Null only where no wire could be read. */
  readonly document: ChassisDocument | null;
  readonly notes: readonly IntakeNote[];
  readonly counts: IntakeCounts;
}

const nothingOf = (notes: readonly IntakeNote[], rows: number): WireListReading => ({
  document: null,
  notes,
  counts: { rows, wires: 0, parts: 0, cables: 0, units: 0, unread: 0, halfKnown: 0 }
});

/** Reads the text of a wire list (comma, semicolon, tab or bar between cells). Never throws.
 *  Limits: 20 million characters, 50,000 rows. */
export const readWireList = (text: string, options: WireListOptions): WireListReading =>
  readOpened(openListText(text), options);

/** Reads a list that was opened, as it seems to be laid out. */
export const readOpened = (opened: ListOpened, options: WireListOptions): WireListReading => {
  if (opened.ok && opened.source.isRecognised)
    return readListSource(opened.source.rows, opened.source.layout, options);
  const { notes, tell } = collectNotes();
  const why = opened.ok
    ? 'has no heading row with "from" and "to", and no two columns of ends such as V3-5'
    : opened.problem;
  tell('left out', { cell: options.fileName }, why);
  return nothingOf(notes, 0);
};

/** Reads the rows of a list that is laid out as said. Never throws. */
export const readListSource = (
  rows: readonly (readonly string[])[],
  layout: ListLayout,
  options: WireListOptions
): WireListReading => {
  const { notes, tell } = collectNotes();
  const read = readRows(rows, layout, tell);
  if (read.wires.length === 0) {
    tell('left out', { cell: options.fileName }, 'holds headings and no wire below them');
    return nothingOf(notes, rows.length);
  }
  const above = titleLines(rows, layout);
  const title = (options.title ?? above[0] ?? stemOf(options.fileName)).slice(0, 400);
  const lines = [...above.slice(options.title === undefined ? 1 : 0), ...read.lines];
  const plan = { title, notes: lines.join('\n').slice(0, 20_000), wires: read.wires };
  const document = buildListDocument(plan, options.makeId, tell);
  const joined = joinNotes(notes);
  return { document, notes: joined, counts: countAll(document, joined, rows.length) };
};

const countAll = (
  document: ChassisDocument,
  notes: readonly IntakeNote[],
  rows: number
): IntakeCounts => {
  const wires = Object.values(document.wires);
  return {
    rows,
    wires: wires.length,
    parts: Object.keys(document.parts).length,
    cables: Object.keys(document.cables).length,
    units: Object.keys(document.units).length,
    unread: notes.filter(({ kind }) => kind === 'unread').length,
    halfKnown: wires.filter(({ from, to }) => !from.at || !to.at).length
  };
};

const stemOf = (fileName: string): string =>
  (fileName.split(/[/\\]/).at(-1) ?? '').replace(/\.[A-Za-z0-9]{1,5}$/, '') || 'Wire list';

const lineOf = (cells: readonly string[]): string => cells.filter((cell) => cell !== '').join(' ');

const titleLines = (rows: readonly (readonly string[])[], { headingRow }: ListLayout): string[] =>
  rows
    .slice(0, headingRow ?? 0)
    .map(lineOf)
    .filter((line) => line !== '');

/** All wires of the rows below the headings, and the lines of text that belong to no wire. */
const readRows = (
  rows: readonly (readonly string[])[],
  layout: ListLayout,
  tell: TellNote
): { readonly wires: WireDraft[]; readonly lines: string[] } => {
  const { firstRow, delimiter, headingRow } = layout;
  const below = rows.slice(firstRow);
  const columns = numberFirstColumn(layout.columns, below);
  const style = readNumberStyle(columns, below);
  if (layout.isGuessed) {
    const words = columns.map(
      ({ role }, index) => `column ${index + 1} ${role === 'extra' ? 'as text' : `as ${role}`}`
    );
    const why =
      headingRow === null
        ? 'no heading row was found'
        : 'the headings do not say which columns hold the ends';
    tell('reading', {}, `${why}: ${words.join(', ')}`);
  }
  tellKeptColumns(columns, below, layout, tell);
  const context = { style, delimiter, tell, hasAcColumn: hasColumn(columns, 'acV') };
  const wires: WireDraft[] = [];
  const lines: string[] = [];
  let section: string | null = null;
  let sectionIsUsed = true;
  const closeSection = (): void => {
    if (section !== null && !sectionIsUsed) lines.push(section);
  };
  below.forEach((cells, index) => {
    const row = firstRow + index + 1;
    const reading = readWireRow(cells, row, columns, context);
    if (reading.kind === 'sum') {
      lines.push(reading.text);
      tell(
        'left out',
        { row, cell: reading.text },
        'is a sum and no wire; it is kept in the notes of the document'
      );
    } else if (reading.kind === 'text') {
      closeSection();
      section = reading.text.replace(/:$/, '').slice(0, 400);
      sectionIsUsed = false;
      tell('reading', { row, cell: reading.text }, 'was read as a line of text between the wires');
    } else if (reading.kind === 'wire') {
      if (section !== null) reading.wire.notes.push(`Section: ${section}`);
      sectionIsUsed = true;
      wires.push(reading.wire);
    }
  });
  closeSection();
  if (wires.length > 0) finishWires(wires, columns, style, tell);
  return { wires, lines };
};

/** Tells which columns nothing is read from, and that every wire has one end only where the heading of the other
 *  is not known. A column whose contents told what it holds has its own words. */
const tellKeptColumns = (
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  { isGuessed }: ListLayout,
  tell: TellNote
): void => {
  if (isGuessed) return;
  const kept = columns.filter(
    ({ role, heading, index }) =>
      role === 'extra' &&
      readHeading(heading)?.role !== 'extra' &&
      rows.some((cells) => (cells[index] ?? '') !== '')
  );
  const names = kept.map(({ heading }) => JSON.stringify(heading.slice(0, 80))).slice(0, 12);
  if (kept.length > names.length) names.push(`${kept.length - names.length} more`);
  const missing = missingEnd(columns);
  if (missing !== null) {
    const words = `no heading says where the ${missing === 'To' ? 'second' : 'first'} end is, so every wire has one end only: give its column a heading such as ${missing}`;
    tell('reading', {}, words);
  }
  if (names.length === 0) return;
  const one = names.length === 1;
  const words = `${one ? 'a column' : 'columns'} kept as text: ${names.join(', ')}; if ${one ? 'it holds' : 'one holds'} an end or a value, give it a heading such as ${missing ?? 'To'}, Gauge or Length (in)`;
  tell('reading', {}, words);
};

const missingEnd = (columns: readonly Column[]): 'From' | 'To' | null => {
  if (hasColumn(columns, 'both')) return null;
  const has = (...roles: readonly ColumnRole[]): boolean =>
    roles.some((role) => hasColumn(columns, role));
  if (!has('from', 'fromPart', 'fromTerminal')) return 'From';
  return has('to', 'toPart', 'toTerminal') ? null : 'To';
};

/** What is settled only once all wires are read: numbers, and columns without a unit. */
const finishWires = (
  wires: readonly WireDraft[],
  columns: ListLayout['columns'],
  style: NumberStyle,
  tell: TellNote
): void => {
  if (wires.every(({ number }) => number === '')) {
    wires.forEach((wire, index) => {
      wire.number = String(index + 1);
    });
    tell(
      'reading',
      {},
      `no wire has a number: they are numbered 1 to ${wires.length} in the order of the list`
    );
  }
  for (const { role, index, heading } of columns) {
    if (role !== 'length' || style.unit.get(index) !== null) continue;
    if (!wires.some(({ notes }) => notes.some((note) => note.startsWith(`${heading}: `)))) continue;
    const words =
      'no unit in the heading or the cells: lengths are not read and are kept in the notes; write the heading as "Length (in)" or "Length (mm)"';
    tell('unread', { column: heading }, words);
  }
  const volts = columns.find(({ role }) => role === 'volts');
  if (volts && !hasColumn(columns, 'acV')) {
    const words =
      'volts that do not say ac or dc are read as ac for heaters and the power line, as dc for all else';
    tell('reading', { column: volts.heading }, words);
  }
};
