// A wire list on its way in: its rows can be looked at, its columns named and its cells repaired before
// anything of it becomes a chassis, or comes into the one that is open.
import type { ChassisDocument, MakeId } from '#document/index.ts';
import {
  mergeEdit,
  namesEnds,
  openListText,
  planMerge,
  readListSource,
  withHeadingRow,
  withRole,
  type ColumnRole,
  type ListLayout,
  type ListMerge,
  type OpenedSheet
} from '#intake/index.ts';
import type { DialogName, ListInHand } from '../core/editor-state.svelte.ts';
import type { DocumentState } from '../core/document-state.svelte.ts';
import { counted } from '../core/words.ts';
import { mergeCounts, mergeKey } from './merge-preview.ts';
import { viewOfRows, type RowOfList } from './rows-of-list.ts';

interface Host {
  readonly documents: DocumentState;
  readonly makeId: MakeId;
  dialog: DialogName;
  list: ListInHand | null;
  readonly isDemonstration: boolean;
  readonly tell: (words: string) => void;
}

type Rows = readonly (readonly string[])[];

/** Where the wires go: into a chassis of their own, or into the one that is open. */
export type Target = 'new' | 'open';

export class IntakeDesk {
  fileName = $state('');
  sheets = $state.raw<readonly OpenedSheet[]>([]);
  target = $state<Target>('new');
  /** Only rows with something that was not read are shown. */
  onlyUnread = $state(false);
  #sheet = $state(0);
  #rows = $state.raw<Rows>([]);
  #layout = $state.raw<ListLayout | null>(null);
  #layoutAsFound: ListLayout | null = null;
  /** Cells that a person changed here, as "row column". */
  #repaired = $state.raw<readonly string[]>([]);
  /** Wires that are left out, by their keys. */
  #left = $state.raw<readonly string[]>([]);
  readonly #host: Host;

  readonly sheet = $derived.by(() => this.#sheet);
  readonly layout = $derived.by(() => this.#layout);
  readonly rows = $derived.by(() => this.#rows);
  /** Why the sheet is no list at all, or null. */
  readonly problem = $derived.by(() => {
    const opened = this.sheets[this.#sheet]?.opened;
    return opened?.ok === false ? opened.problem : null;
  });
  readonly hasEnds = $derived.by(() => this.#layout !== null && namesEnds(this.#layout));
  readonly reading = $derived.by(() => {
    const layout = this.#layout;
    if (layout === null || !this.hasEnds) return null;
    const { makeId } = this.#host;
    return readListSource(this.#rows, layout, { fileName: this.fileName, makeId });
  });
  readonly view = $derived.by((): readonly RowOfList[] => {
    const layout = this.#layout;
    if (layout === null) return [];
    return viewOfRows(this.#rows, layout, this.reading?.notes ?? [], this.#repaired);
  });
  /** The chassis that is open can take wires in. */
  readonly canMerge = $derived.by(() => {
    const { documents, isDemonstration } = this.#host;
    return (
      !isDemonstration &&
      documents.locked === null &&
      Object.keys(documents.document.wires).length > 0
    );
  });
  readonly hasNumbers = $derived.by(
    () => this.#layout?.columns.some(({ role }) => role === 'number') === true
  );
  readonly merge = $derived.by((): ListMerge | null => {
    const list = this.reading?.document;
    if (this.target !== 'open' || !list) return null;
    return planMerge(this.#host.documents.document, list, { hasNumbers: this.hasNumbers });
  });
  readonly counts = $derived.by(() =>
    this.merge === null ? null : mergeCounts(this.merge, this.#left)
  );

  constructor(host: Host) {
    this.#host = host;
  }

  /** Shows a list before it comes in. */
  open({ fileName, sheets }: ListInHand): void {
    this.fileName = fileName;
    this.sheets = sheets;
    this.target = 'new';
    this.onlyUnread = false;
    this.chooseSheet(0);
  }

  /** Shows a text as a list, whatever can be seen in it. False: it has no two rows of cells. */
  openText(text: string): boolean {
    const opened = openListText(text);
    const rows = opened.ok ? opened.source.rows : [];
    if (rows.length < 2 || !rows.some((row) => row.length > 1)) return false;
    this.#host.list = { fileName: 'Pasted list', sheets: [{ name: '', opened }] };
    return true;
  }

  /** Puts the list away; nothing of it came in. */
  close(): void {
    this.sheets = [];
    this.#rows = [];
    this.#layout = null;
    this.#host.list = null;
    if (this.#host.dialog === 'intake') this.#host.dialog = null;
  }

  chooseSheet(index: number): void {
    const opened = this.sheets[index]?.opened;
    this.#sheet = index;
    this.#rows = opened?.ok === true ? opened.source.rows : [];
    this.#layout = opened?.ok === true ? opened.source.layout : null;
    this.#layoutAsFound = this.#layout;
    this.#repaired = [];
    this.#left = [];
  }

  /** Says which row holds the headings; null: none does. */
  chooseHeadingRow(row: number | null): void {
    const found = this.#layoutAsFound;
    if (found === null) return;
    this.#layout = row === found.headingRow ? found : withHeadingRow(this.#rows, found, row);
  }

  /** Says what a column holds. */
  chooseRole(column: number, role: ColumnRole, unit: string | null = null): void {
    if (this.#layout !== null) this.#layout = withRole(this.#layout, column, role, unit);
  }

  /** Puts another text into a cell of the list. */
  repair(row: number, column: number, text: string): void {
    this.#repaired = [...this.#repaired, `${row} ${column}`];
    this.#rows = this.#rows.map((cells, index) => {
      if (index !== row) return cells;
      const changed = Array.from({ length: Math.max(cells.length, column + 1) }, (_, at) =>
        at === column ? text.trim() : (cells[at] ?? '')
      );
      return changed;
    });
  }

  isTaken(key: string): boolean {
    return !this.#left.includes(key);
  }

  /** Takes a wire of the list in, or leaves it out. */
  toggle(key: string): void {
    const others = this.#left.filter((one) => one !== key);
    this.#left = others.length < this.#left.length ? others : [...others, key];
  }

  /** The list as a chassis of its own, or null where there is no wire in it. */
  get document(): ChassisDocument | null {
    return this.reading?.document ?? null;
  }

  /** Brings what was chosen into the open chassis, as one step of undo. */
  bringIn(): void {
    const { merge } = this;
    if (merge === null) return;
    const edit = mergeEdit(merge, `bring in ${this.fileName}`, (wire) =>
      this.isTaken(mergeKey(wire))
    );
    if (edit === null) {
      this.#host.tell('nothing of the list was chosen');
      return;
    }
    const { documents } = this.#host;
    documents.seal();
    const counts = this.counts;
    const outcome = documents.edit(edit);
    if (!outcome.ok) {
      this.#host.tell(`not taken: ${outcome.problem}`);
      return;
    }
    documents.seal();
    this.#host.tell(
      `${this.fileName}: ${counted(counts?.added ?? 0, 'wire')} added, ${counts?.changed ?? 0} changed; undo takes them back`
    );
    this.close();
  }
}
