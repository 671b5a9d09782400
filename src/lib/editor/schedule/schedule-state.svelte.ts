// The schedule at work: where the cursor stands, what is being typed, which cells hold something
// that could not be read, and the edits that come out of it.
import { addElement, doMany, removeElement, setWireFields } from '#document/edits.ts';
import { wireStates, type MakeId } from '#document/index.ts';
import type { DocumentState, EditOutcome } from '../core/document-state.svelte.ts';
import type { Preferences } from '../core/preferences.svelte.ts';
import { wireName } from '../core/words.ts';
import { buildRows, type RowView } from './build-rows.ts';
import { columnOf, columnsOf, type Column, type ColumnId } from './columns.ts';
import { EndNames } from './end-text.ts';
import {
  settleCursor,
  stepGrid,
  type GridCursor,
  type GridKey,
  type GridShape
} from './grid-cursor.ts';
import { buildNewWire } from './new-wire.ts';
import { pruneFields } from './prune-fields.ts';
import type { CellReading } from './read-cell.ts';

/** The id of the last row, which adds a wire. */
export const newRow = 'new';

interface BadCell {
  readonly text: string;
  readonly why: string;
}

interface Host {
  readonly documents: DocumentState;
  readonly preferences: Preferences;
  readonly makeId: MakeId;
  /** Says to the person, and to those who hear, what happened. */
  readonly tell: (words: string) => void;
  readonly pickWire: (id: string) => void;
}

const cellKey = (row: string, column: string): string => `${row} ${column}`;

const isColumnId = (id: string, columns: readonly Column[]): id is ColumnId =>
  columns.some((column) => column.id === id);

export class ScheduleState {
  cursor = $state.raw<GridCursor>({ row: newRow, column: 'from', editing: null });
  /** What the open field holds. */
  text = $state('');
  /** The page is no wider than a hand. */
  isNarrow = $state(false);
  #bad = $state.raw<Readonly<Record<string, BadCell>>>({});
  readonly #host: Host;
  #rowsBefore: readonly RowView[] = [];

  readonly columns = $derived.by(() => columnsOf(this.#host.preferences.columnSet, this.isNarrow));
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
  readonly shape = $derived.by((): GridShape => {
    const columns = this.columns.map(({ id }) => id);
    return {
      rows: [...this.rows.map(({ id }) => id), newRow],
      columns,
      isEditable: (row, column) =>
        isColumnId(column, this.columns) &&
        columnOf(column).read !== undefined &&
        (row !== newRow || column !== 'number')
    };
  });
  /** How the text in the open field would be read, or null while no field is open. */
  readonly reading = $derived.by((): CellReading | null =>
    this.cursor.editing === null ? null : this.#read(this.cursor.column, this.text)
  );
  /** The end that a terminal picked on the drawing would fill, or null. */
  readonly awaitedEnd = $derived.by((): 'from' | 'to' | null => {
    const { row, column, editing } = this.cursor;
    if (column !== 'from' && column !== 'to') return null;
    return editing !== null || row === newRow ? column : null;
  });

  constructor(host: Host) {
    this.#host = host;
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

  /** Moves the cursor to a cell; an open field is committed first. */
  goTo(row: string, column: string): void {
    if (this.cursor.editing !== null) this.#commit();
    this.cursor = { row, column, editing: null };
    if (row !== newRow) this.#host.pickWire(row);
  }

  /** Opens the field of a cell, or takes the step that stands for it in a cell without one. */
  open(row: string, column: string, typed: string | null = null): void {
    if (column === 'state' && row !== newRow) {
      this.advance(row);
      return;
    }
    if (!this.shape.isEditable(row, column)) return;
    this.text = typed ?? this.#textToEdit(row, column);
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
    if (step.effect === 'remove-row') this.remove(row);
    if (step.effect === 'clear') this.#take(row, column, '');
    if (step.effect === 'cancel') this.putBack(row, column);
    if (step.effect === 'commit') {
      const made = this.#take(row, column, this.text);
      // A new row that became a wire goes on in that wire, one cell on; never past it.
      this.cursor = made === null ? step.cursor : { ...this.#nextOf(made, column), editing: null };
    } else if (step.effect !== 'remove-row') {
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

  /** Takes a wire out of the document; undo brings it back. */
  remove(row: string): void {
    const wire = this.#host.documents.document.wires[row];
    if (wire === undefined) return;
    const before = this.shape.rows;
    const outcome = this.#host.documents.edit(removeElement('wire', row));
    this.#host.tell(
      outcome.ok ? `${wireName(wire)} deleted; undo brings it back` : outcome.problem
    );
    this.cursor = settleCursor({ ...this.cursor, editing: null }, this.shape, before);
  }

  /** After an undo, or with other columns, the cursor may stand on a cell that is gone. */
  settle(): void {
    const settled = settleCursor(this.cursor, this.shape);
    if (settled !== this.cursor) this.cursor = settled;
  }

  /** Another document: nothing typed for the last one stays. */
  reset(): void {
    this.#bad = {};
    this.cursor = { row: this.shape.rows[0] ?? newRow, column: 'number', editing: null };
  }

  #commit(): void {
    const { row, column } = this.cursor;
    const made = this.#take(row, column, this.text);
    this.cursor = { row: made ?? row, column, editing: null };
  }

  #read(column: string, text: string): CellReading | null {
    if (!isColumnId(column, this.columns)) return null;
    const read = columnOf(column).read;
    const lengthUnit = this.#host.preferences.lengthUnit;
    return read?.(text, { ends: this.ends, lengthUnit }) ?? null;
  }

  #textToEdit(row: string, column: string): string {
    const bad = this.badCell(row, column);
    if (bad !== null) return bad.text;
    const { study } = this.#host.documents;
    const wire = study.document.wires[row];
    const about = study.wires.get(row);
    if (wire === undefined || about === undefined || !isColumnId(column, this.columns)) return '';
    const lengthUnit = this.#host.preferences.lengthUnit;
    return columnOf(column).toEdit?.({ wire, about, study, lengthUnit }) ?? '';
  }

  /** Takes what was typed into a cell. The id of the wire that it made, or null where it made none. */
  #take(row: string, column: string, text: string): string | null {
    if (row === newRow && text.trim() === '') return null;
    if (row !== newRow && text === this.#textToEdit(row, column)) return null;
    const reading = this.#read(column, text);
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
    this.#host.tell(understood === null ? outcome.name : `${outcome.name}: ${understood}`);
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
