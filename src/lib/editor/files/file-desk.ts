// Files in and out, and what is kept in the browser: new, open, drop, save, export, autosave.
import { openDocument, setIdentity, type ChassisDocument } from '#document/index.ts';
import { fileNameOf, picturesOf, type KeptEntry } from '#storage/index.ts';
import type { EditorState } from '../core/editor-state.svelte.ts';
import { counted } from '../core/words.ts';
import type { FilePlace } from './file-place.ts';
import { FileSaver, type PlaceStore, type SaverHost, type SaveWishes } from './file-saver.ts';
import { noteMissing } from './gather-pictures.ts';
import type { KeptChassis } from './kept-chassis.svelte.ts';
import type { KeptList } from './kept-list.svelte.ts';

/** What reads files of other kinds and writes lists comes after the page. */
const fileReader = () => import('./read-any-file.ts');
const listWriter = async () => ({
  ...(await import('#paperwork/schedule.ts')),
  ...(await import('#paperwork/schedule-csv.ts'))
});

export interface Demonstration {
  readonly title: string;
  readonly url: string;
}

export interface ChosenFile {
  readonly file: File;
  /** Where it lies, if the browser lets it be written again. */
  readonly place: FilePlace | null;
}

/** What the desk asks of the browser around it. */
export interface DeskHost extends SaverHost {
  readonly chooseFile: () => Promise<ChosenFile | null>;
  /** The local date, as it stands in a title block: "2026-11-25". */
  readonly today: () => string;
  readonly fetchBytes: (url: string) => Promise<Uint8Array>;
}

export class FileDesk {
  readonly demonstrations: readonly Demonstration[];
  readonly kept: KeptChassis;
  readonly list: KeptList;
  readonly #editor: EditorState;
  readonly #host: DeskHost;
  readonly #saver: FileSaver;

  constructor(
    editor: EditorState,
    kept: KeptChassis,
    list: KeptList,
    demonstrations: readonly Demonstration[],
    host: DeskHost,
    places: PlaceStore | null = null
  ) {
    this.#editor = editor;
    this.kept = kept;
    this.list = list;
    this.demonstrations = demonstrations;
    this.#host = host;
    this.#saver = new FileSaver(host, editor.pictures, places);
  }

  /** True where a file of this chassis has pictures in it. */
  get hasPictures(): boolean {
    return picturesOf(this.#editor.documents.document).size > 0;
  }

  get keptWords(): string {
    return this.kept.words;
  }

  /** Asks what is known of a new chassis before its first wire. */
  newChassis(): void {
    this.#editor.dialog = 'new';
  }

  /** Shows pasted rows as a list; words in which none can be seen are left alone. */
  async openPasted(text: string): Promise<void> {
    const { openPastedList } = await fileReader();
    const sheet = openPastedList(text);
    if (sheet !== null) this.#editor.showList({ fileName: 'Pasted list', sheets: [sheet] });
  }

  /** Opens the chassis that a wire list became. */
  openFromList(document: ChassisDocument, fileName: string): void {
    this.#open(document);
    this.#editor.tell(`${fileName} opened: ${counted(Object.keys(document.wires).length, 'wire')}`);
  }

  /** Opens a chassis that was begun just now; it is captured before anything else. */
  startNew(document: ChassisDocument): void {
    this.#open(document);
    this.#editor.setWay('capture');
    this.#editor.tell(`${document.identity.title} begun`);
  }

  choose(): void {
    void this.#host
      .chooseFile()
      .then((chosen) => (chosen === null ? undefined : this.openFile(chosen.file, chosen.place)));
  }

  /** Opens a file that was chosen or dropped. On bad input the document that is there stays.
   *  @param place where it lies, if saving may write it again */
  async openFile(file: File, place: FilePlace | null = null): Promise<void> {
    const { readAnyFile } = await fileReader();
    const reading = await readAnyFile(file, this.#editor.makeId);
    if (!reading.ok) {
      this.#report(file.name, false, reading.problems, []);
      return;
    }
    if (reading.kind === 'list') {
      this.#editor.showList({ fileName: file.name, sheets: reading.sheets });
      return;
    }
    const { documents, pictures, notes } = reading;
    const { pictures: store } = this.#editor;
    for (const { bytes, type } of pictures.values()) await store.keep(bytes, type);
    const [document, ...others] = documents;
    if (document === undefined) return;
    if (others.length > 0) {
      const told = [...notes, ...(await this.list.takeIn(documents))];
      this.#editor.dialog = 'kept';
      this.#editor.tell(`${file.name}: ${documents.length} chassis read`);
      if (told.length > 0) this.#report(file.name, true, [], told);
      return;
    }
    const missing = await noteMissing(document, this.#editor.pictures);
    this.#open(document);
    if (reading.isDocumentFile && place !== null) this.#saver.cameFrom(document, place);
    const wires = counted(Object.keys(document.wires).length, 'wire');
    this.#editor.tell(`${file.name} opened: ${wires}`);
    const all = missing === null ? notes : [...notes, missing];
    if (all.length > 0) this.#report(file.name, true, [], all);
  }

  /** Opens the chassis that came in a link. What is kept of the same chassis stays as it is: where it differs,
   *  the link's is opened beside it. Nothing of a link is kept before it is changed. */
  async openLinkText(text: string): Promise<void> {
    const name = 'the link';
    const opened = openDocument(text, name);
    if (!opened.ok) {
      this.#report(name, false, opened.problems, []);
      return;
    }
    const { document } = opened;
    const isKnown = this.list.entries.some(({ id }) => id === document.id);
    const shown = isKnown ? { ...document, id: this.#editor.makeId('document') } : document;
    this.#open(shown, false);
    const beside = isKnown ? '. Yours is kept as it was: compare the two under Share' : '';
    this.#editor.tell(`${document.identity.title} opened from the link${beside}`);
    const missing = await noteMissing(shown, this.#editor.pictures);
    if (missing !== null) this.#report(name, true, [], [missing]);
  }

  /** Says what is wrong with a link; what is open stays. */
  refuseLink(problem: string): void {
    const wayOut = 'ask for the link again, or for the file';
    this.#report('the link', false, [{ place: 'the link', wrong: problem, wayOut }], []);
  }

  async openDemonstration(demonstration: Demonstration): Promise<void> {
    const bytes = await this.#host.fetchBytes(demonstration.url).catch(() => null);
    if (bytes === null) {
      this.#editor.tell(`${demonstration.title} could not be fetched`);
      return;
    }
    const opened = openDocument(new TextDecoder().decode(bytes), demonstration.title);
    if (!opened.ok) {
      this.#report(demonstration.title, false, opened.problems, []);
      return;
    }
    this.#open(opened.document, false);
    this.#editor.isDemonstration = true;
    this.#editor.tell(`${demonstration.title}: an invented set, to look around in`);
  }

  /** Saves the chassis as a file. To be called from a click or a key. */
  async saveFile(wishes: SaveWishes = {}): Promise<void> {
    const { isSaved, words } = await this.#saver.save(this.#current(), wishes);
    if (isSaved) this.kept.filed();
    this.#editor.tell(words);
  }

  /** All chassis of the list with their pictures, in one file. */
  async saveAll(): Promise<void> {
    const documents = await this.list.readAll();
    const { words } = await this.#saver.saveAll(documents);
    this.#editor.tell(words);
  }

  /** Goes back to an earlier state of the chassis in the hand, as one step that can be undone. The present
   *  is kept among the earlier states. */
  async goBack(savedAt: number, when: string): Promise<void> {
    const { documents } = this.#editor;
    const state = await this.list.loadState(documents.document.id, savedAt);
    if (state === null) {
      this.#editor.tell('that state could not be read back');
      return;
    }
    this.#editor.schedule.leave();
    if (!documents.goTo(state, `go back to ${when}`)) {
      this.#editor.tell(documents.locked ?? 'that state is the present one');
      return;
    }
    await this.kept.keepInPlace(documents.document);
    this.#editor.dialog = null;
    this.#editor.tell(`gone back to ${when}: undo brings the present again`);
  }

  /** Renames any chassis of the list: the one in the hand by an edit. */
  async rename(entry: KeptEntry, title: string): Promise<void> {
    const next = title.trim();
    if (next === '' || next === entry.title) return;
    const { documents } = this.#editor;
    if (entry.id === documents.document.id) {
      this.#editor.edit(setIdentity({ title: next }));
      await this.kept.flush();
      await this.list.refresh();
    } else await this.list.rename(entry, next);
  }

  async exportDrawing(): Promise<void> {
    const { diagram, photos } = this.#editor;
    const svg = diagram.toSvg(this.#host.today(), await photos.filesOf(diagram.pictures));
    if (svg === null) {
      this.#editor.tell('the drawing is not laid out yet');
      return;
    }
    const name = fileNameOf(this.#current().identity.title, '.svg');
    this.#host.download(name, 'image/svg+xml', svg);
    this.#editor.tell(`${name} saved`);
  }

  async exportSchedule(): Promise<void> {
    const { buildSchedule, scheduleToCsv } = await listWriter();
    const { documents } = this.#editor;
    await documents.judge();
    if (!documents.isJudged) {
      this.#editor.tell(documents.judgeProblem ?? 'not saved: nothing has been judged yet');
      return;
    }
    const { study, findings } = documents;
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
