/* eslint-disable svelte/prefer-svelte-reactivity -- maps and sets are made anew here, never changed in place */
// The chassis in the hand beside another document: what differs, marked on the drawing, and the other's work
// taken in, clash by clash, as one step of undo.
import { untrack } from 'svelte';
import {
  alignIds,
  compareDocuments,
  compareRevisions,
  countChanges,
  findCommonRevision,
  hashOfDocument,
  leaveOut,
  leftOutOf,
  mergeDocuments,
  sharedPart,
  standingInWords,
  type ChassisDocument,
  type Choice,
  type ElementChange
} from '#document/index.ts';
import { toMarks } from '#drawing/mark-changes.ts';
import type { EditorState } from '../core/editor-state.svelte.ts';
import type { FileDesk } from '../files/file-desk.ts';

export class CompareDesk {
  /** What the chassis in the hand is compared with. */
  other = $state.raw<{ readonly document: ChassisDocument; readonly name: string } | null>(null);
  /** The revision that both came from, where it is at hand. */
  base = $state.raw<ChassisDocument | null>(null);
  choices = $state.raw<ReadonlyMap<string, Choice>>(new Map());
  problem = $state<string | null>(null);
  isMarked = $state(false);
  readonly #editor: EditorState;
  readonly #desk: FileDesk;

  constructor(editor: EditorState, desk: FileDesk) {
    this.#editor = editor;
    this.#desk = desk;
    // For the life of the page: the marks follow every edit, whichever leaf is open.
    $effect.root(() => {
      $effect(() => {
        const changes = this.isMarked && this.other !== null ? this.changes : [];
        untrack(() => this.#mark(changes));
      });
    });
  }

  /** Nothing that either was shared without counts as removed. */
  readonly #pair = $derived.by(() => {
    if (this.other === null) return null;
    const mine = this.#editor.documents.document;
    const left = new Set([...leftOutOf(this.other.document), ...leftOutOf(mine)]);
    return {
      mine: leaveOut(mine, left),
      theirs: leaveOut(alignIds(mine, this.other.document), left),
      isWithout: [...left]
    };
  });
  /** What the other has that the chassis in the hand has not, and the other way round. */
  readonly changes = $derived.by((): readonly ElementChange[] =>
    this.#pair === null ? [] : compareDocuments(this.#pair.mine, this.#pair.theirs)
  );
  readonly words = $derived(countChanges(this.changes));
  readonly standing = $derived.by(() =>
    this.other === null
      ? ''
      : standingInWords(this.#editor.documents.document, this.other.document)
          .replace('The first', 'Yours')
          .replace('the first', 'yours')
          .replace('the second', 'the other')
          .replace('The second', 'The other')
  );
  readonly isWithout = $derived(this.#pair?.isWithout ?? []);
  readonly merge = $derived.by(() => {
    if (this.other === null) return null;
    const mine = this.#editor.documents.document;
    // Without a common revision the like is found by number and reference.
    const theirs = this.base === null ? alignIds(mine, this.other.document) : this.other.document;
    return mergeDocuments(this.base ?? sharedPart(mine, theirs), mine, theirs, this.choices);
  });

  async withFile(file: File): Promise<void> {
    const { readAnyFile } = await import('../files/read-any-file.ts');
    const reading = await readAnyFile(file, this.#editor.makeId);
    if (!reading.ok) {
      const [first] = reading.problems;
      this.problem = first
        ? `${file.name}: ${first.place} ${first.wrong}: ${first.wayOut}`
        : file.name;
      return;
    }
    if (reading.kind === 'list') {
      // Its columns have to be looked at by a person before it is a chassis.
      this.problem = `${file.name} is a wire list: open it by File, save it as a chassis, and compare with that`;
      return;
    }
    const [document] = reading.documents;
    if (document !== undefined) await this.with(document, file.name);
  }

  async withState(savedAt: number, when: string): Promise<void> {
    const { id } = this.#editor.documents.document;
    const state = await this.#desk.list.loadState(id, savedAt);
    if (state === null) this.problem = 'that state could not be read back';
    else await this.with(state, `the state of ${when}`);
  }

  async with(document: ChassisDocument, name: string): Promise<void> {
    this.problem = null;
    this.choices = new Map();
    this.base = await this.#findBase(document);
    this.other = { document, name };
    this.#editor.tell(`${name}: ${this.words}`);
  }

  async #findBase(theirs: ChassisDocument): Promise<ChassisDocument | null> {
    const mine = this.#editor.documents.document;
    if (compareRevisions(mine, theirs) === 'unrelated' && mine.id !== theirs.id) return null;
    const known = new Map([[hashOfDocument(mine), mine]]);
    for (const { savedAt } of await this.#desk.list.states(mine.id)) {
      const state = await this.#desk.list.loadState(mine.id, savedAt);
      if (state !== null) known.set(hashOfDocument(state), state);
    }
    const common = findCommonRevision(theirs, [...known.keys()]);
    return common === null ? null : (known.get(common) ?? null);
  }

  choose(key: string, choice: Choice): void {
    this.choices = new Map([...this.choices, [key, choice]]);
  }

  /** Takes in what the other changed. One step of undo. */
  takeIn(): void {
    if (this.merge === null || this.other === null) return;
    const { document, problem } = this.merge;
    const { documents, schedule } = this.#editor;
    schedule.leave();
    if (problem !== null) this.problem = problem;
    else if (documents.goTo(document, `take in ${this.other.name}`)) {
      this.#editor.tell(`taken in: ${this.other.name}. Undo takes it out again`);
    } else this.#editor.tell(documents.locked ?? 'there was nothing to take in');
  }

  close(): void {
    this.other = null;
    this.isMarked = false;
  }

  /** The chassis in the hand is drawn: what only the other has is not on it, what only this one has is marked. */
  #mark(changes: readonly ElementChange[]): void {
    this.#editor.differing = Object.fromEntries(
      changes.flatMap(({ kind, id, what }) =>
        kind === 'wire' && what !== 'added'
          ? [[id, what === 'removed' ? 'only here' : 'differs'] as const]
          : []
      )
    );
    this.#editor.diagram.mark(toMarks(changes), { removed: 'only here', changed: 'differs' });
  }
}
