// What a cell of the schedule shows, what it holds while it is edited, and how a text in it would be read.
import type { Study } from '#study/index.ts';
import { columnIdsAmong, columnOf, type ColumnId, type RowSource } from './columns.ts';
import type { EndNames } from './end-text.ts';
import type { CellReading } from './read-cell.ts';

/** The id of the last row, which adds a wire. */
export const newRow = 'new';

interface Host {
  readonly study: Study;
  readonly ends: EndNames;
  readonly lengthUnit: 'mm' | 'in';
  /** What was typed into a cell and could not be read, or null. */
  readonly badText: (row: string, column: string) => string | null;
}

const isColumnId = (id: string): id is ColumnId => columnIdsAmong([id]).length > 0;

export class CellAccess {
  readonly #host: () => Host;

  constructor(host: () => Host) {
    this.#host = host;
  }

  /** How a text would be read in a column; null where nothing is typed into it. */
  read(column: string, text: string): CellReading | null {
    if (!isColumnId(column)) return null;
    const { ends, lengthUnit } = this.#host();
    return columnOf(column).read?.(text, { ends, lengthUnit }) ?? null;
  }

  sourceOf(row: string): RowSource | null {
    const { study, lengthUnit } = this.#host();
    const wire = study.document.wires[row];
    const about = study.wires.get(row);
    return wire === undefined || about === undefined ? null : { wire, about, study, lengthUnit };
  }

  /** True where a text can be put into the cell. */
  takes(row: string, column: string): boolean {
    if (!isColumnId(column) || columnOf(column).read === undefined) return false;
    return row !== newRow || column !== 'number';
  }

  textShown(row: string, column: string): string {
    const source = this.sourceOf(row);
    return source === null || !isColumnId(column) ? '' : columnOf(column).show(source);
  }

  textToEdit(row: string, column: string): string {
    const bad = this.#host().badText(row, column);
    if (bad !== null) return bad;
    const source = this.sourceOf(row);
    if (source === null || !isColumnId(column)) return '';
    return columnOf(column).toEdit?.(source) ?? '';
  }
}
