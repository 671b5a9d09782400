// The document being worked on, its history, and all that follows from it: study, findings. Every
// change comes through `edit`; documents are replaced, never changed in place.
import type { Finding } from '#checks/index.ts';
import {
  applyEdit,
  emptyHistory,
  pushEdit,
  redo,
  replaceDocument,
  sealHistory,
  shareStructure,
  undo,
  type ChassisDocument,
  type Edit,
  type History
} from '#document/index.ts';
import { makeStudier, type Study } from '#study/index.ts';
import { lateChecks } from './late-checks.ts';

export type EditOutcome =
  { readonly ok: true; readonly name: string } | { readonly ok: false; readonly problem: string };

const none: readonly Finding[] = [];

export class DocumentState {
  #document = $state.raw<ChassisDocument>() as ChassisDocument;
  #history = $state.raw<History>(emptyHistory);
  /** Why nothing can be changed now, or null. */
  locked = $state<string | null>(null);
  /** Why nothing is judged, or null. */
  judgeProblem = $state<string | null>(null);
  readonly #now: () => number;
  readonly #studyOf = makeStudier();
  readonly #study = $derived.by(() => this.#studyOf(this.#document));
  readonly #findingsOf = $derived.by(() => lateChecks.value?.makeChecker() ?? null);
  readonly #findings = $derived.by(() => this.#findingsOf?.(this.#study) ?? none);

  constructor(document: ChassisDocument, now: () => number) {
    this.#document = document;
    this.#now = now;
  }

  get document(): ChassisDocument {
    return this.#document;
  }

  get study(): Study {
    return this.#study;
  }

  /** False until the rules are in the page: then that there are no findings says nothing. */
  get isJudged(): boolean {
    return this.#findingsOf !== null;
  }

  /** What the rules found; none while nothing is judged. */
  get findings(): readonly Finding[] {
    return this.#findings;
  }

  get history(): History {
    return this.#history;
  }

  /** The name of the step that undo would take back, or null. */
  get undoName(): string | null {
    return this.#history.past.at(-1)?.name ?? null;
  }

  get redoName(): string | null {
    return this.#history.future[0]?.name ?? null;
  }

  /** Has the rules fetched, and says in `judgeProblem` where they cannot be. */
  async judge(): Promise<void> {
    try {
      await lateChecks.load();
      this.judgeProblem = null;
    } catch {
      this.judgeProblem =
        'The rules could not be fetched: nothing here has been judged. Load the page again.';
    }
  }

  /** Applies an edit, or says why not and leaves everything as it is. */
  edit(edit: Edit): EditOutcome {
    if (this.locked !== null) return { ok: false, problem: this.locked };
    const applied = applyEdit(this.#document, edit);
    if (!applied.ok) return applied;
    this.#history = pushEdit(this.#history, edit, applied, this.#now());
    this.#document = applied.document;
    return { ok: true, name: applied.name };
  }

  /** What follows is a step of undo of its own. */
  seal(): void {
    this.#history = sealHistory(this.#history);
  }

  /** One step back; its name, or null where there is none. */
  undo(): string | null {
    return this.#take(undo(this.#document, this.#history));
  }

  redo(): string | null {
    return this.#take(redo(this.#document, this.#history));
  }

  /** Steps back, or on where `count` is below nought; how many were taken. */
  step(count: number): number {
    let taken = 0;
    while (taken < Math.abs(count) && (count > 0 ? this.undo() : this.redo()) !== null) taken += 1;
    return taken;
  }

  /** Another document, with a history of its own. */
  replace(document: ChassisDocument): void {
    this.#history = emptyHistory;
    this.#document = document;
  }

  /** A later state of the same document, from elsewhere: what did not change stays the same object, and
   *  there is nothing to undo. */
  follow(document: ChassisDocument): void {
    this.#history = emptyHistory;
    this.#document = shareStructure(this.#document, document);
  }

  /** Another state of the same document, as one step of undo. False where nothing is different. */
  goTo(wanted: ChassisDocument, name: string): boolean {
    const { document, history } = replaceDocument(
      this.#document,
      this.#history,
      wanted,
      name,
      this.#now()
    );
    if (document === this.#document || this.locked !== null) return false;
    this.#history = history;
    this.#document = document;
    return true;
  }

  #take(step: ReturnType<typeof undo>): string | null {
    if (step === undefined || this.locked !== null) return null;
    this.#history = step.history;
    this.#document = step.document;
    return step.name;
  }
}
