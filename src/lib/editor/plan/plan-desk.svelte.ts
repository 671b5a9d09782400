// What the leaves of planning share: the plan of what is open, its cutting, its lists. Derived from the
// document; the only things kept here are how the person wants it worked out.
import {
  buildPlan,
  buildShoppingList,
  chanceFrom,
  orderOfWork,
  soldByTheFoot,
  soldByTheMetre,
  takeOverEdit,
  type PlanOptions,
  type WorkMode
} from '#plan/index.ts';
import type { EditorState } from '../core/editor-state.svelte.ts';
import { CutWork, type CutDriver } from './cut-work.svelte.ts';

const inThePage: CutDriver = {
  now: () => performance.now(),
  later: (run) => setTimeout(run, 0)
};

export class PlanDesk {
  readonly #editor: EditorState;
  readonly cutting: CutWork;
  colours = $state<NonNullable<PlanOptions['colours']>>('as found');
  mode = $state<WorkMode>('one wire');
  sold = $state<'foot' | 'metre'>('foot');
  /** Wires that are ticked, to decide of many at once. */
  ticked = $state.raw<readonly string[]>([]);

  readonly plan = $derived.by(() =>
    buildPlan(this.#editor.documents.study, { colours: this.colours })
  );
  /** The cut list of the plan as it stands; null while it is being cut. */
  readonly cuts = $derived.by(() =>
    this.cutting.done?.plan === this.plan ? this.cutting.done.list : null
  );
  readonly shopping = $derived.by(() =>
    this.cuts === null
      ? null
      : buildShoppingList(
          this.#editor.documents.study,
          this.plan,
          this.cuts,
          chanceFrom(1),
          this.sold === 'foot' ? soldByTheFoot : soldByTheMetre
        )
  );
  readonly order = $derived.by(() =>
    orderOfWork(this.#editor.documents.study, this.plan, this.mode)
  );

  constructor(editor: EditorState, driver: CutDriver = inThePage) {
    this.#editor = editor;
    this.cutting = new CutWork(driver);
  }

  tick(wire: string, isTicked: boolean): void {
    const others = this.ticked.filter((id) => id !== wire);
    this.ticked = isTicked ? [...others, wire] : others;
  }

  /** Writes down all that is proposed, as one step of undo. */
  takeOver(): void {
    const edit = takeOverEdit(this.#editor.documents.study, this.plan);
    if (edit === null) this.#editor.tell('nothing is left to take over');
    else this.#editor.edit(edit);
  }
}

const desks = new WeakMap<EditorState, PlanDesk>();

/** The desk of an editor: made when planning is first turned to, and the same from then on. */
export const planDeskOf = (editor: EditorState): PlanDesk => {
  const known = desks.get(editor);
  if (known !== undefined) return known;
  // Made by a leaf, but not the leaf's own: what it derives must outlive the leaf.
  const made: PlanDesk[] = [];
  $effect.root(() => void made.push(new PlanDesk(editor)));
  const desk = made[0] ?? new PlanDesk(editor);
  desks.set(editor, desk);
  return desk;
};
