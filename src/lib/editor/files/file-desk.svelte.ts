// Files in and out, and what is kept in the browser: new, open, drop, save, export, autosave.
import { buildEmptyDocument, saveDocument, type ChassisDocument } from '#document/index.ts';
import { openFileBytes } from '#intake/index.ts';
import { buildSchedule, scheduleToCsv } from '#paperwork/index.ts';
import type { EditorState } from '../core/editor-state.svelte.ts';
import { documentEnding, fileNameOf } from '#storage/index.ts';
import { counted } from '../core/words.ts';
import type { KeptChassis } from './kept-chassis.svelte.ts';

export interface Demonstration {
  readonly title: string;
  readonly url: string;
}

/** What the desk asks of the browser around it. */
export interface DeskHost {
  readonly download: (name: string, type: string, text: string) => void;
  readonly chooseFile: () => Promise<File | null>;
  /** The local date, as it stands in a title block: "2026-11-25". */
  readonly today: () => string;
  readonly fetchBytes: (url: string) => Promise<Uint8Array>;
}

export class FileDesk {
  readonly demonstrations: readonly Demonstration[];
  readonly kept: KeptChassis;
  readonly #editor: EditorState;
  readonly #host: DeskHost;

  constructor(
    editor: EditorState,
    kept: KeptChassis,
    demonstrations: readonly Demonstration[],
    host: DeskHost
  ) {
    this.#editor = editor;
    this.kept = kept;
    this.demonstrations = demonstrations;
    this.#host = host;
  }

  get keptWords(): string {
    return this.kept.words;
  }

  newChassis(): void {
    const { makeId } = this.#editor;
    this.#open(buildEmptyDocument({ title: 'Untitled chassis', makeId }));
    this.#editor.tell('a new chassis');
    this.#editor.dialog = 'set';
  }

  choose(): void {
    void this.#host.chooseFile().then((file) => (file === null ? undefined : this.openFile(file)));
  }

  /** Opens a file that was chosen or dropped. On bad input the document that is there stays. */
  async openFile(file: File): Promise<void> {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const opened = openFileBytes(bytes, file.name, this.#editor.makeId);
    if (!opened.ok) {
      this.#report(file.name, false, opened.problems, []);
      return;
    }
    this.#open(opened.document);
    const wires = counted(Object.keys(opened.document.wires).length, 'wire');
    this.#editor.tell(`${file.name} opened: ${wires}`);
    if (opened.notes.length > 0) this.#report(file.name, true, [], opened.notes);
  }

  async openDemonstration(demonstration: Demonstration): Promise<void> {
    const bytes = await this.#host.fetchBytes(demonstration.url).catch(() => null);
    if (bytes === null) {
      this.#editor.tell(`${demonstration.title} could not be fetched`);
      return;
    }
    const opened = openFileBytes(bytes, demonstration.url, this.#editor.makeId);
    if (!opened.ok) {
      this.#report(demonstration.title, false, opened.problems, []);
      return;
    }
    this.#open(opened.document, false);
    this.#editor.tell(`${demonstration.title}: an invented set, to look around in`);
  }

  saveFile(): void {
    const document = this.#current();
    const name = fileNameOf(document.identity.title, documentEnding);
    this.#host.download(name, 'application/json', saveDocument(document));
    this.#editor.tell(`${name} saved`);
  }

  exportDrawing(): void {
    const svg = this.#editor.diagram.toSvg(this.#host.today());
    if (svg === null) {
      this.#editor.tell('the drawing is not laid out yet');
      return;
    }
    const name = fileNameOf(this.#current().identity.title, '.svg');
    this.#host.download(name, 'image/svg+xml', svg);
    this.#editor.tell(`${name} saved`);
  }

  exportSchedule(): void {
    const { study, findings } = this.#editor.documents;
    const name = fileNameOf(this.#current().identity.title, '-schedule.csv');
    this.#host.download(name, 'text/csv', scheduleToCsv(buildSchedule(study, findings)));
    this.#editor.tell(`${name} saved`);
  }

  /** Opens a chassis that the browser kept. */
  async openKept(id: string): Promise<void> {
    const document = await this.kept.read(id);
    if (document === null) {
      this.#editor.tell('that chassis could not be read back');
      return;
    }
    this.#open(document);
    this.#editor.tell(`${document.identity.title} opened`);
  }

  #current(): ChassisDocument {
    this.#editor.schedule.leave();
    return this.#editor.documents.document;
  }

  #open(document: ChassisDocument, keepNow = true): void {
    this.#editor.dialog = null;
    this.kept.follow(document, keepNow);
    this.#editor.openDocument(document);
  }

  #report(
    fileName: string,
    opened: boolean,
    problems: NonNullable<EditorState['report']>['problems'],
    notes: readonly string[]
  ): void {
    this.#editor.report = { fileName, opened, problems, notes };
  }
}
