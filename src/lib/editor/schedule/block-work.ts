// What is done with the marked cells as a whole: emptied, filled down, copied, pasted into, replaced in.
// Each is one step of undo; what could not be read stays in its cell, with why.
import type { ChassisDocument, Edit, MakeId } from '#document/index.ts';
import type { OpenedSheet } from '#intake/index.ts';
import type { EditOutcome } from '../core/document-state.svelte.ts';
import { counted } from '../core/words.ts';
import { blockOf, fillDown, planPaste, type CellWrite } from './cell-block.ts';
import { columnOf, type ColumnId } from './columns.ts';
import { columnIdOfHeading } from './column-headings.ts';
import type { GridCursor, GridShape } from './grid-cursor.ts';
import { lateCellText } from './late-cell-text.ts';
import { takeManyCells, type ManyCells } from './many-cells.ts';
import type { CellReading } from './read-cell.ts';

interface Host {
  readonly cursor: GridCursor;
  readonly shape: GridShape;
  readonly document: ChassisDocument;
  readonly makeId: MakeId;
  /** Whether a text can be put into a cell. */
  readonly takes: (row: string, column: string) => boolean;
  /** What a cell shows, and what it holds while it is edited. */
  readonly textShown: (row: string, column: string) => string;
  readonly textToEdit: (row: string, column: string) => string;
  readonly read: (column: string, text: string) => CellReading | null;
  readonly edit: (edit: Edit) => EditOutcome;
  /** Forgets and keeps what could not be read. */
  readonly keepRefused: (many: ManyCells) => void;
  readonly tell: (words: string) => void;
  /** Shows a pasted list whose columns have to be looked at first. */
  readonly showList: (sheet: OpenedSheet) => void;
}

export class BlockWork {
  readonly #host: () => Host;

  constructor(host: () => Host) {
    this.#host = host;
  }

  /** Empties the marked cells. */
  clear(): void {
    const { cursor, shape, takes } = this.#host();
    const { rows, columns } = blockOf(cursor, shape);
    // Without its number a wire could not be told from the next, and a state is never nothing.
    const emptied = columns.filter((column) => column !== 'number' && column !== 'state');
    const places = rows.flatMap((row) => emptied.map((column) => ({ row, column })));
    const writes = places.filter(({ row, column }) => takes(row, column));
    this.#take(
      writes.map((place) => ({ ...place, text: '' })),
      'empty cells'
    );
  }

  /** Writes the first row of the marked cells into the others; alone, the row above into the cell. */
  fillDown(): void {
    const { cursor, shape, takes, textToEdit } = this.#host();
    this.#take(fillDown(blockOf(cursor, shape), shape, takes, textToEdit), 'fill down');
  }

  /** The marked cells as text for another program, and as they are written here for this one; null, and a
   *  word on it, where the page has only just been opened. */
  copy(): { readonly shown: string; readonly written: string } | null {
    const works = lateCellText.value;
    if (works === null) {
      void this.#fetchText(() => this.#host().tell('nothing was copied yet: copy again'));
      return null;
    }
    const { cursor, shape, textShown, textToEdit } = this.#host();
    const { rows, columns } = blockOf(cursor, shape);
    const wires = rows.filter((row) => row !== shape.rows.at(-1));
    const texts = (textOf: (row: string, column: string) => string) =>
      wires.map((row) => columns.map((column) => textOf(row, column)));
    return {
      shown: works.cellsToText(texts(textShown)),
      written: JSON.stringify(texts(textToEdit))
    };
  }

  /** Puts the cells of a text, tabs between them, from the cursor on right and down. */
  paste(text: string): void {
    void this.#fetchText(({ textToCells, findOtherList }) => {
      const other = findOtherList(text);
      if (other === null) this.pasteCells(textToCells(text));
      else this.#host().showList(other);
    });
  }

  pasteCells(cells: readonly (readonly string[])[]): void {
    if (cells.length === 0) return;
    const { cursor, shape, takes } = this.#host();
    const plan = planPaste(cells, blockOf(cursor, shape), shape, takes, columnIdOfHeading);
    this.#take(plan.writes, 'paste', plan.leftOut);
  }

  /** Puts new texts in place of what was found. */
  replace(writes: readonly CellWrite[]): void {
    this.#take(writes, 'replace');
  }

  async #fetchText(
    then: (works: NonNullable<(typeof lateCellText)['value']>) => void
  ): Promise<void> {
    const works = lateCellText.value ?? (await lateCellText.load().catch(() => null));
    if (works !== null) then(works);
    else this.#host().tell('copying and pasting could not be fetched: load the page again');
  }

  /** Writes one text into a column of many wires. */
  fill(rows: readonly string[], column: ColumnId, text: string): void {
    this.#take(
      rows.map((row) => ({ row, column, text })),
      `change ${columnOf(column).title.toLowerCase()} of ${counted(rows.length, 'wire')}`
    );
  }

  #take(writes: readonly CellWrite[], name: string, leftOut = 0): void {
    const { document, makeId, read, edit, tell, keepRefused } = this.#host();
    const many = takeManyCells(writes, name, { document, makeId, read });
    const outcome = many.edit === null ? null : edit(many.edit);
    if (outcome?.ok === false) {
      tell(`not taken: ${outcome.problem}`);
      return;
    }
    keepRefused(many);
    const { added, wires, refused } = many;
    const words = [
      added.length > 0 ? `${counted(added.length, 'wire')} added` : '',
      wires > added.length ? `${counted(wires - added.length, 'wire')} changed` : '',
      refused.length > 0 ? `${counted(refused.length, 'cell')} not taken, see there` : '',
      leftOut > 0 ? `${counted(leftOut, 'cell')} left out: nothing is typed there` : ''
    ].filter((word) => word !== '');
    tell(`${name}: ${words.join(', ') || 'nothing to change'}`);
  }
}
