// The editor's hub: the document, what is picked, which page is open, what was said last. Rooms of
// the editor (schedule, sheet, notes, tag) meet here and nowhere else.
import type { Finding, Severity } from '#checks/index.ts';
import type { ChassisDocument, Edit, MakeId } from '#document/index.ts';
import type { Subject } from '#drawing/display-list.ts';
import type { FileProblem, OpenedSheet } from '#intake/index.ts';
import type { PictureStore } from '#storage/index.ts';
import { terminalText } from '#study/index-document.ts';
import { idsOf, numberNotes, type MarginNote } from '../notes/number-notes.ts';
import { WalkDesk } from '../pin-walk/walk-desk.svelte.ts';
import { DiagramHand } from '../diagram/diagram-hand.svelte.ts';
import { PhotoDesk } from '../photos/photo-desk.svelte.ts';
import { newRow } from '../schedule/cell-access.ts';
import { ScheduleState } from '../schedule/schedule-state.svelte.ts';
import { DiagramState, type DiagramView } from '../sheet/diagram-state.svelte.ts';
import type { LayOut } from '../sheet/lay-out.ts';
import type { LayoutKeeping } from '../sheet/layout-memory.ts';
import type { SheetView } from '../sheet/sheet-view.svelte.ts';
import { ToolDesk } from '../tools/tool-desk.svelte.ts';
import type { BookPage } from '../ui/book-pages.ts';
import { DocumentState } from './document-state.svelte.ts';
import { isSamePick, litBy, pickOfPlaces, pickOfSubject, stillThere, type Pick } from './pick.ts';
import { leavesOf, type Leaf } from './leaves.ts';
import { Preferences, type PreferenceStore } from './preferences.svelte.ts';
import { hiddenIn, wayNames, ways, type Way } from './ways.ts';
import { counted, wireName } from './words.ts';

export interface EditorParts {
  readonly document: ChassisDocument;
  readonly makeId: MakeId;
  readonly now: () => number;
  readonly layOut: LayOut;
  readonly preferenceStore: PreferenceStore | null;
  /** Where the pictures of the document's photos are kept. */
  readonly pictures: PictureStore;
  /** Where layouts of the diagram lie between visits, if anywhere. */
  readonly layouts?: LayoutKeeping;
}

/** What an opened file has to say: problems, or notes on what was read. */
export interface FileReport {
  readonly fileName: string;
  readonly opened: boolean;
  readonly problems: readonly FileProblem[];
  readonly notes: readonly string[];
}

/** A wire list on its way in. */
export interface ListInHand {
  readonly fileName: string;
  /** The main one first; one without a name where it is no workbook. */
  readonly sheets: readonly OpenedSheet[];
}

export type DialogName =
  | 'cautions'
  | 'about'
  | 'keys'
  | 'kept'
  | 'states'
  | 'set'
  | 'new'
  | 'columns'
  | 'policy'
  | 'tags'
  | 'intake'
  | 'steps'
  | 'many'
  | 'go'
  | null;

export class EditorState {
  readonly documents: DocumentState;
  readonly preferences: Preferences;
  readonly schedule: ScheduleState;
  readonly diagram: DiagramState;
  readonly tools: ToolDesk;
  readonly photos: PhotoDesk;
  readonly walk: WalkDesk;
  /** Moves parts in the diagram. */
  readonly hand: DiagramHand;
  readonly makeId: MakeId;
  readonly pictures: PictureStore;
  /** The sheet that is on screen, if one is. */
  sheet = $state.raw<SheetView | null>(null);

  page = $state<BookPage>('schedule');
  dialog = $state<DialogName>(null);
  report = $state.raw<FileReport | null>(null);
  /** A wire list that is looked at before it comes in. */
  list = $state.raw<ListInHand | null>(null);
  /** Severities whose notes, and marks on the sheet, are put away; the counts always stand. */
  hiddenSeverities = $state.raw<readonly Severity[]>([]);
  /** What is open is an invented set, to look around in. */
  isDemonstration = $state(false);
  /** The last thing that happened, for the live line. */
  notice = $state.raw<{ readonly words: string; readonly count: number }>({ words: '', count: 0 });
  /** The system's own choice between light and dark; only asked where the person made none. */
  systemIsDark = $state(false);
  /** By id: wires that another document has otherwise, or has not, while the two are compared. */
  differing = $state.raw<Readonly<Record<string, 'only here' | 'differs'>>>({});
  #pick = $state.raw<Pick | null>(null);

  readonly pick = $derived.by(() => stillThere(this.#pick, this.documents.study));
  /** The end that the next terminal pressed on the sheet will fill, or null. */
  readonly awaits = $derived.by(() => {
    if (this.walk.awaitsEnd) return 'to';
    return this.schedule.cursor.editing === null ? null : this.schedule.awaitedEnd;
  });
  /** What stands out; nothing does while a terminal is being looked for. */
  readonly lit = $derived.by(() =>
    this.pick === null || this.awaits !== null ? null : litBy(this.pick, this.documents.study)
  );
  readonly notes = $derived.by(() => numberNotes(this.documents.findings));
  readonly litFindings = $derived.by(() =>
    idsOf(this.notes.filter((note) => this.isNotePicked(note)))
  );
  /** What the sheet is to show. */
  readonly view = $derived.by((): DiagramView => {
    const { study, findings } = this.documents;
    const hidden = this.hiddenSeverities;
    return { study, findings, isMarked: ({ severity }) => !hidden.includes(severity) };
  });
  readonly isDark = $derived.by(() =>
    this.preferences.theme === 'system' ? this.systemIsDark : this.preferences.theme === 'dark'
  );

  constructor(parts: EditorParts) {
    this.makeId = parts.makeId;
    this.pictures = parts.pictures;
    this.documents = new DocumentState(parts.document, parts.now);
    this.preferences = new Preferences(parts.preferenceStore);
    this.hiddenSeverities = hiddenIn(this.way);
    this.schedule = new ScheduleState({
      documents: this.documents,
      preferences: this.preferences,
      makeId: parts.makeId,
      tell: (words) => this.tell(words),
      showList: (sheet) => this.showList({ fileName: 'Pasted list', sheets: [sheet] }),
      pickWire: (id) => this.#setPick({ kind: 'wire', id })
    });
    this.diagram = new DiagramState(parts.layOut, parts.layouts ?? null);
    this.tools = new ToolDesk(this);
    this.photos = new PhotoDesk(this);
    this.walk = new WalkDesk({
      documents: this.documents,
      ends: () => this.schedule.ends,
      makeId: parts.makeId,
      tell: (words) => this.tell(words),
      show: (pick, isAnotherPart) => {
        this.setPick(pick);
        if (isAnotherPart || this.sheet?.size.width === 0) this.sheet?.lookNear(pick);
      }
    });
    this.hand = new DiagramHand(this);
  }

  /** Says something in the live line; the same words twice are said twice. */
  tell(words: string): void {
    this.notice = { words, count: this.notice.count + 1 };
  }

  /** Shows a wire list before anything of it comes in. */
  showList(list: ListInHand): void {
    this.list = list;
    this.dialog = 'intake';
  }

  /** Picks a thing everywhere: in the schedule, on the sheet, in the margin, on the tag. */
  setPick(pick: Pick | null): void {
    this.#setPick(pick);
    if (pick === null) return;
    if (pick.kind === 'wire') this.#showInSchedule(pick.id);
    this.sheet?.show(pick);
  }

  /** A press on the sheet: picks, or fills the end of a wire that waits for a terminal. */
  pickFromSheet(subject: Subject | null): void {
    if (subject?.kind === 'finding') {
      const note = this.notes.find(({ id }) => id === subject.id);
      if (note !== undefined) this.pickNote(note);
      return;
    }
    if (this.walk.takePress(subject)) return;
    const pick = subject === null ? null : pickOfSubject(subject, this.documents.study);
    if (pick?.kind === 'terminal' && this.#fillWaitingEnd(pick.id)) return;
    this.#setPick(isSamePick(pick, this.pick) ? null : pick);
    if (this.#pick?.kind === 'wire') this.#showInSchedule(this.#pick.id);
  }

  pickNote(note: MarginNote): void {
    const pick = pickOfPlaces(note.finding.at, this.documents.study);
    if (pick === null) {
      this.tell(note.finding.message);
      return;
    }
    this.setPick(pick);
  }

  get way(): Way {
    return this.preferences.way;
  }

  /** Another way of working; the margin shows what belongs to it. */
  setWay(way: Way): void {
    this.preferences.setWay(way);
    this.hiddenSeverities = hiddenIn(way);
    // A walk belongs to capturing; what a way opens with is to be seen on a phone as well.
    if (way !== 'capture') this.walk.close();
    if (this.leaf !== 'schedule') this.page = 'schedule';
    this.tell(`${wayNames[way].name}. ${wayNames[way].does}`);
  }

  /** What the left page shows. */
  get leaf(): Leaf {
    return this.preferences.leaves[this.way];
  }

  /** Opens a leaf of the left page; where the way of working has none such, one that has. */
  openLeaf(leaf: Leaf): void {
    const way = leavesOf[this.way].includes(leaf)
      ? this.way
      : (ways.find((each) => leavesOf[each].includes(leaf)) ?? this.way);
    if (leaf !== 'schedule') this.schedule.leave();
    this.walk.close();
    if (way !== this.way) this.setWay(way);
    this.preferences.setLeaf(way, leaf);
    this.page = 'schedule';
  }

  /** Shows what waits to be looked at later, or puts it away again. */
  toggleLater(): void {
    const hidden = hiddenIn(this.way);
    this.hiddenSeverities = this.hiddenSeverities.length > 0 ? [] : hidden;
  }

  /** Shows the notes of a severity, or puts them away. */
  toggleSeverity(severity: Severity): void {
    const others = this.hiddenSeverities.filter((hidden) => hidden !== severity);
    const wasHidden = others.length < this.hiddenSeverities.length;
    this.hiddenSeverities = wasHidden ? others : [...others, severity];
  }

  isNotePicked(note: MarginNote): boolean {
    const { pick } = this;
    return (
      pick !== null && note.finding.at.some(({ kind, id }) => kind === pick.kind && id === pick.id)
    );
  }

  /** The wire after (or before) the picked one in the schedule. */
  pickNextWire(by: 1 | -1): void {
    const { wires } = this.documents.study.index;
    const at = wires.findIndex(({ id }) => this.pick?.kind === 'wire' && id === this.pick.id);
    const next = at < 0 ? (by > 0 ? 0 : wires.length - 1) : at + by;
    const wire = wires[(next + wires.length) % Math.max(1, wires.length)];
    if (wire === undefined) return;
    this.setPick({ kind: 'wire', id: wire.id });
    this.tell(
      `${wireName(wire)}, ${this.documents.study.index.labelOf(wire.from)} to ${this.documents.study.index.labelOf(wire.to)}`
    );
  }

  /** Opens the schedule's find, or goes to its field. */
  find(): void {
    this.walk.close();
    this.preferences.setLeaf(this.way, 'schedule');
    this.page = 'schedule';
    this.schedule.leave();
    this.schedule.find.ask();
  }

  /** Walks the pins of a part; on a narrow screen the walk has the page. */
  walkPins(part: string, terminal?: string): void {
    this.schedule.leave();
    this.walk.begin(part, terminal);
  }

  /** Begins a wire at a terminal; its other end is looked for on the sheet. */
  startWireAt(label: string): void {
    this.preferences.setLeaf(this.way, 'schedule');
    this.schedule.startWireAt(label);
    this.page = 'sheet';
  }

  /** Takes up a tool. Wires are drawn on the diagram as well; the others need the drawing to scale, which is
   *  turned to. */
  takeTool(id: string): void {
    if (this.diagram.which === 'diagram' && id === 'wire') {
      this.drawWire();
      return;
    }
    this.diagram.choose('pictorial');
    this.tools.take(id);
  }

  /** Begins a wire on the diagram: at the terminal that is picked, else at the one that is pressed next. */
  drawWire(): void {
    const { pick } = this;
    const { document, study } = this.documents;
    const entry = pick?.kind === 'terminal' ? study.index.terminalByKey.get(pick.id) : undefined;
    this.walk.close();
    this.schedule.leave();
    this.page = 'sheet';
    if (entry !== undefined) this.schedule.startWireAt(terminalText(document, entry));
    else this.schedule.open(newRow, 'from');
    this.tell(entry === undefined ? 'press where the wire starts' : 'now press its other end');
  }

  /** Puts the keyboard on the drawing. */
  focusSheet(): void {
    this.sheet?.focus();
  }

  /** Puts the tag away, or gives up looking for a terminal. */
  letGo(): void {
    if (this.walk.awaitsEnd) this.walk.say({ kind: 'not-yet' });
    else if (this.awaits !== null) this.schedule.key({ key: 'Escape' });
    else this.setPick(null);
  }

  /** One click on a finding's fix. */
  applyFix(finding: Finding): void {
    if (finding.fix?.edit !== undefined) this.edit(finding.fix.edit);
  }

  /** Makes an edit and says so.
   *  @param options.merges one step of undo with the same edit just before
   *  @param options.words what to say instead of the edit's own name */
  edit(edit: Edit, options: { readonly merges?: boolean; readonly words?: string } = {}): void {
    if (options.merges !== true) this.documents.seal();
    const outcome = this.documents.edit(edit);
    this.tell(outcome.ok ? (options.words ?? outcome.name) : outcome.problem);
  }

  undo(): void {
    this.schedule.leave();
    const name = this.documents.undo();
    this.tell(this.documents.locked ?? (name === null ? 'nothing to undo' : `undone: ${name}`));
  }

  redo(): void {
    const name = this.documents.redo();
    this.tell(this.documents.locked ?? (name === null ? 'nothing to redo' : `done again: ${name}`));
  }

  /** Several steps back, or on where `count` is below nought. */
  step(count: number): void {
    this.schedule.leave();
    const taken = this.documents.step(count);
    const way = count > 0 ? 'undone' : 'done again';
    this.tell(this.documents.locked ?? `${counted(taken, 'step')} ${way}`);
  }

  /** Shows another document, with a history of its own. */
  openDocument(document: ChassisDocument): void {
    this.#setPick(null);
    this.documents.replace(document);
    this.isDemonstration = false;
    this.tools.letGo();
    this.walk.reset();
    this.schedule.reset();
    this.sheet?.fit();
  }

  #setPick(pick: Pick | null): void {
    this.#pick = pick;
  }

  #showInSchedule(wire: string): void {
    const { cursor } = this.schedule;
    if (cursor.editing === null && cursor.row !== wire) {
      this.schedule.cursor = { row: wire, column: cursor.column, editing: null };
    }
  }

  #fillWaitingEnd(key: string): boolean {
    const entry = this.documents.study.index.terminalByKey.get(key);
    if (entry === undefined) return false;
    // The last row waits only after it was opened: a plain pick must not make wires.
    if (this.awaits === null) return false;
    return this.schedule.fillEnd(terminalText(this.documents.document, entry));
  }
}
