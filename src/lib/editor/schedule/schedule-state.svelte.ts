// The schedule at work: where the cursor stands, what is being typed, which cells hold something
// that could not be read, and the edits that come out of it.
import { addElement, doMany, removeElement, setWireFields } from '#document/edits.ts';
import { wireStates, type MakeId } from '#document/index.ts';
import type { OpenedSheet } from '#intake/index.ts';
import type { DocumentState, EditOutcome } from '../core/document-state.svelte.ts';
import type { Preferences } from '../core/preferences.svelte.ts';
import { counted, needText, wireName } from '../core/words.ts';
import { buildRows, type RowView } from './build-rows.ts';
import { BlockWork } from './block-work.ts';
import { blockOf, isMany, type CellBlock } from './cell-block.ts';
import { CellAccess, newRow } from './cell-access.ts';
import { columnIdsAmong, type Column, type ColumnId } from './columns.ts';
import { columnsOf } from './column-sets.ts';
import { EndNames } from './end-text.ts';
import {
  extendedTo,
  settleCursor,
  stepGrid,
  type GridCursor,
  type GridKey,
  type GridShape
} from './grid-cursor.ts';
import { afterMany, cellKey, type BadCell, type BadCells } from './bad-cells.ts';
import { buildNewWire } from './new-wire.ts';
import { pruneFields } from './prune-fields.ts';
import type { CellReading } from './read-cell.ts';
import { ScheduleFind } from './schedule-find.svelte.ts';
import { ScheduleOrder } from './schedule-order.svelte.ts';
import { readTypedCells, type TypedCells } from './typed-cells.ts';

interface Host {
  readonly documents: DocumentState;
  readonly preferences: Preferences;
  readonly makeId: MakeId;
  /** Says to the person, and to those who hear, what happened. */
  readonly tell: (words: string) => void;
  /** Shows a pasted list before it comes in. */
  readonly showList: (sheet: OpenedSheet) => void;
  readonly pickWire: (id: string) => void;
}

export class ScheduleState {
  cursor = $state.raw<GridCursor>({ row: newRow, column: 'from', editing: null });
  /** What the open field holds. */
  text = $state('');
  /** The page is no wider than a hand. */
  isNarrow = $state(false);
  #bad = $state.raw<BadCells>({});
  readonly #host: Host;
  #rowsBefore: readonly RowView[] = [];

  readonly columns = $derived.by(() => {
    const { columnSet, ownColumns } = this.#host.preferences;
    const own = columnIdsAmong(ownColumns);
    return columnsOf(columnSet, this.isNarrow, own.length === 0 ? undefined : own);
  });
  readonly ends = $derived.by(() => {
    const { study } = this.#host.documents;
    return new EndNames(study.document, study.index);
  });
  readonly rows = $derived.by(() => {
    const { study, findings } = this.#host.documents;
    const unit = this.#host.preferences.lengthUnit;
    const rows = buildRows(study, findings, this.columns, unit, this.#rowsBefore);
    this.#rowsBefore = rows;
    return rows;
  });
  readonly #access = new CellAccess(() => ({
    study: this.#host.documents.study,
    ends: this.ends,
    lengthUnit: this.#host.preferences.lengthUnit,
    badText: (row, column) => this.badCell(row, column)?.text ?? null
  }));
  readonly order = new ScheduleOrder(() => ({
    rows: this.rows,
    sourceOf: (row) => this.#access.sourceOf(row)
  }));
  readonly find = new ScheduleFind(() => ({
    // While only what was found is shown, the search still is through all.
    rows: (this.order.arrangement.only === null ? this.order.rows : this.rows).map(
      ({ id, cells, halfTraced }) => {
        const stressV = this.#host.documents.study.wires.get(id)?.stress?.volts ?? null;
        return { id, cells, halfTraced, stressV };
      }
    ),
    textToEdit: (row, column) =>
      this.#access.takes(row, column) ? this.#access.textToEdit(row, column) : null
  }));
  readonly cells = new BlockWork(() => ({
    cursor: this.cursor,
    shape: this.shape,
    document: this.#host.documents.document,
    makeId: this.#host.makeId,
    takes: (row, column) => this.#access.takes(row, column),
    textShown: (row, column) => this.#access.textShown(row, column),
    textToEdit: (row, column) => this.#access.textToEdit(row, column),
    read: (column, text) => this.#access.read(column, text),
    edit: (edit) => this.#host.documents.edit(edit),
    keepRefused: (many) => (this.#bad = afterMany(this.#bad, many)),
    tell: (words) => this.#host.tell(words),
    showList: (sheet) => this.#host.showList(sheet)
  }));
  readonly shape = $derived.by((): GridShape => {
    const columns = this.columns.map(({ id }) => id);
    return {
      rows: [...this.order.rows.map(({ id }) => id), newRow],
      columns,
      isEditable: (row, column) => column !== 'state' && this.#access.takes(row, column)
    };
  });
  /** The cells that are marked as a block; null where the cursor's cell is alone. */
  readonly block = $derived.by((): CellBlock | null => {
    if (this.cursor.anchor === undefined) return null;
    const block = blockOf(this.cursor, this.shape);
    return isMany(block) ? block : null;
  });
  /** How the text in the open field would be read, or null while no field is open. */
  readonly reading = $derived.by((): CellReading | null =>
    this.cursor.editing === null ? null : this.#access.read(this.cursor.column, this.text)
  );
  /** The end that a terminal picked on the drawing would fill, or null. */
  readonly awaitedEnd = $derived.by((): 'from' | 'to' | null => {
    const { row, column, editing } = this.cursor;
    if (column !== 'from' && column !== 'to') return null;
    return editing !== null || row === newRow ? column : null;
  });

  /** What is typed and not in the document; null where nothing is. */
  readonly typed = $derived.by((): TypedCells | null => {
    const { row, column, editing } = this.cursor;
    const isTyped = editing !== null && this.text !== this.#access.textToEdit(row, column);
    if (!isTyped && Object.keys(this.#bad).length === 0) return null;
    return { open: isTyped ? { row, column, text: this.text } : null, bad: this.#bad };
  });

  constructor(host: Host) {
    this.#host = host;
  }

  /** Puts back what was typed before the page was closed. False where there was nothing to put back. */
  takeUp(kept: unknown): boolean {
    const typed = readTypedCells(kept, (row) => this.shape.rows.includes(row));
    if (typed === null) return false;
    this.#bad = { ...typed.bad, ...this.#bad };
    const { open } = typed;
    if (open !== null && this.cursor.editing === null) this.open(open.row, open.column, open.text);
    return true;
  }

  badCell(row: string, column: string): BadCell | null {
    return this.#bad[cellKey(row, column)] ?? null;
  }

  /** The cells of a row that could not be read, left to right. */
  badCellsOf(row: string): readonly (BadCell & { readonly column: Column })[] {
    return this.columns.flatMap((column) => {
      const bad = this.badCell(row, column.id);
      return bad === null ? [] : [{ ...bad, column }];
    });
  }

  /** Moves the cursor to a cell; an open field is committed first.
   *  @param extend marks the cells from where the cursor was to there */
  goTo(row: string, column: string, extend = false): void {
    if (this.cursor.editing !== null) this.#commit();
    this.cursor = extend ? extendedTo(this.cursor, row, column) : { row, column, editing: null };
    if (row !== newRow) this.#host.pickWire(row);
  }

  /** Opens the field of a cell, or takes the step that stands for it in a cell without one. */
  open(row: string, column: string, typed: string | null = null): void {
    if (column === 'state' && row !== newRow) {
      this.advance(row);
      return;
    }
    if (!this.shape.isEditable(row, column)) return;
    this.text = typed ?? this.#access.textToEdit(row, column);
    const editing = {
      start: typed === null ? ('text' as const) : ('typed' as const),
      typed: typed ?? ''
    };
    this.cursor = { row, column, editing };
  }

  /** A key in the grid. True: it was the grid's. */
  key(key: GridKey): boolean {
    const { row, column, editing } = this.cursor;
    if (editing === null && column === 'state' && row !== newRow) {
      if (key.key === 'Enter' || key.key === ' ') {
        this.advance(row, key.shift === true ? -1 : 1);
        return true;
      }
    }
    const step = stepGrid(this.cursor, key, this.shape);
    if (!step.handled) return false;
    if (step.effect === 'remove-rows') this.removeAll(blockOf(this.cursor, this.shape).rows);
    if (step.effect === 'clear') {
      if (this.block === null) this.#take(row, column, '');
      else this.cells.clear();
    }
    if (step.effect === 'fill-down') this.cells.fillDown();
    if (step.effect === 'cancel') this.putBack(row, column);
    if (step.effect === 'commit') {
      const made = this.#take(row, column, this.text);
      // A new row that became a wire goes on in that wire, one cell on; never past it.
      this.cursor = made === null ? step.cursor : { ...this.#nextOf(made, column), editing: null };
    } else if (step.effect !== 'remove-rows') {
      const { editing: opened } = step.cursor;
      if (opened !== null) this.open(row, column, opened.start === 'typed' ? opened.typed : null);
      else this.cursor = step.cursor;
    }
    if (this.cursor.row !== row && this.cursor.row !== newRow) this.#host.pickWire(this.cursor.row);
    return true;
  }

  /** The open field loses the hand: what was typed is taken as it is. A field that says where it is
   *  is heeded only while it is the open one; by then another may have taken its place. */
  leave(row = this.cursor.row, column = this.cursor.column): void {
    const isOpen = this.cursor.row === row && this.cursor.column === column;
    if (isOpen && this.cursor.editing !== null) this.#commit();
  }

  /** Forgets what was typed into a cell that could not be read. */
  putBack(row: string, column: string): void {
    const { [cellKey(row, column)]: dropped, ...others } = this.#bad;
    if (dropped !== undefined) this.#bad = others;
  }

  /** A terminal picked on the drawing fills the end that waits for one. True: it was used. */
  fillEnd(label: string): boolean {
    const end = this.awaitedEnd;
    if (end === null) return false;
    const { row } = this.cursor;
    const made = this.#take(row, end, label);
    const wire = made ?? row;
    this.cursor = { row: wire, column: end, editing: null };
    this.#host.pickWire(wire);
    if (end === 'from' && this.#host.documents.document.wires[wire]?.to.at === undefined) {
      this.open(wire, 'to');
    }
    return true;
  }

  /** Begins a wire at a terminal and waits for its other end. */
  startWireAt(label: string): void {
    this.leave();
    this.cursor = { row: newRow, column: 'from', editing: null };
    this.fillEnd(label);
  }

  /** One step on in the work on a wire; after the last it begins again. */
  advance(row: string, by: 1 | -1 = 1): void {
    const wire = this.#host.documents.document.wires[row];
    if (wire === undefined) return;
    const count = wireStates.length;
    const state = wireStates[(wireStates.indexOf(wire.state) + by + count) % count] ?? 'found';
    const outcome = this.#host.documents.edit(setWireFields(row, { state }));
    this.#host.tell(outcome.ok ? `${wireName(wire)}: ${state}` : outcome.problem);
  }

  /** Takes wires out of the document; undo brings them back. */
  removeAll(rows: readonly string[]): void {
    const { documents, tell } = this.#host;
    const wires = rows.flatMap((row) => documents.document.wires[row] ?? []);
    const [first] = wires;
    if (first === undefined) return;
    const before = this.shape.rows;
    const names = wires.length === 1 ? wireName(first) : counted(wires.length, 'wire');
    const outcome = documents.edit(
      wires.length === 1
        ? removeElement('wire', first.id)
        : doMany(
            `delete ${names}`,
            wires.map(({ id }) => removeElement('wire', id))
          )
    );
    const back = wires.length === 1 ? 'it' : 'them';
    tell(outcome.ok ? `${names} deleted; undo brings ${back} back` : outcome.problem);
    const { row, column } = this.cursor;
    this.cursor = settleCursor({ row, column, editing: null }, this.shape, before);
  }

  /** Replaces what is looked for in the cells given; read again as if it had been typed. */
  replace(cells: readonly { readonly row: string; readonly column: ColumnId }[]): void {
    this.cells.replace(this.find.replacements(cells));
  }

  /** How a text would be read in a column; null where nothing is typed into it. */
  readAs(column: ColumnId, text: string): CellReading | null {
    return this.#access.read(column, text);
  }

  /** Goes to the next place of what is looked for, or the one before. */
  goToFind(by: 1 | -1): void {
    const { row, column } = this.cursor;
    const next = this.find.from(row, column, by);
    if (next !== null) this.goTo(next.row, next.column);
  }

  /** After an undo, or with other columns, the cursor may stand on a cell that is gone. */
  settle(): void {
    const settled = settleCursor(this.cursor, this.shape);
    if (settled !== this.cursor) this.cursor = settled;
  }

  /** Another document: nothing typed for the last one stays. */
  reset(): void {
    this.#bad = {};
    this.order.reset();
    this.cursor = { row: this.shape.rows[0] ?? newRow, column: 'number', editing: null };
  }

  #commit(): void {
    const { row, column } = this.cursor;
    const made = this.#take(row, column, this.text);
    this.cursor = { row: made ?? row, column, editing: null };
  }

  /** Takes what was typed into a cell. The id of the wire that it made, or null where it made none. */
  #take(row: string, column: string, text: string): string | null {
    if (row === newRow && text.trim() === '') return null;
    if (row !== newRow && text === this.#access.textToEdit(row, column)) return null;
    const reading = this.#access.read(column, text);
    if (reading === null) return null;
    if (!reading.ok) {
      this.#keepBad(row, column, text, reading.why);
      return null;
    }
    this.putBack(row, column);
    const { documents, makeId } = this.#host;
    const present = documents.document.wires[row];
    if (present !== undefined) {
      const fields = pruneFields(reading.fields, present);
      if (Object.keys(fields).length === 0) return null;
      const outcome = documents.edit(setWireFields(row, fields));
      this.#report(outcome, reading.understood, row, column, text);
      return null;
    }
    if (row !== newRow) return null;
    const wire = buildNewWire(documents.document, makeId);
    const outcome = documents.edit(
      doMany(`add wire ${wire.number}`, [
        addElement('wire', wire),
        setWireFields(wire.id, reading.fields)
      ])
    );
    this.#report(outcome, null, row, column, text);
    return outcome.ok ? wire.id : null;
  }

  #report(
    outcome: EditOutcome,
    understood: string | null,
    row: string,
    column: string,
    text: string
  ): void {
    if (!outcome.ok) {
      this.#keepBad(row, column, text, outcome.problem);
      return;
    }
    const words = understood === null ? outcome.name : `${outcome.name}: ${understood}`;
    this.#host.tell([words, this.#judgement(row)].filter(Boolean).join('; '));
  }

  /** What follows from an edit for the wire, as it is read out: the class, and the worst finding. */
  #judgement(row: string): string {
    const about = this.#host.documents.study.wires.get(row);
    if (about === undefined) return '';
    const worst = this.rows.find(({ id }) => id === row)?.worst ?? null;
    return `needs ${needText(about.need)}${worst === null ? '' : `, ${worst} found`}`;
  }

  #keepBad(row: string, column: string, text: string, why: string): void {
    this.#bad = { ...this.#bad, [cellKey(row, column)]: { text, why } };
    this.#host.tell(`not taken: ${why}`);
  }

  #nextOf(row: string, column: string): { row: string; column: string } {
    const columns = this.shape.columns;
    return { row, column: columns[columns.indexOf(column) + 1] ?? column };
  }
}
