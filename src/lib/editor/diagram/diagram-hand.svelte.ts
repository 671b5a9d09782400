// The hand that moves parts in the diagram: events go in, edits and what is in the hand come out.
import type { Edit } from '#document/index.ts';
import type { Diagram } from '#drawing/diagram.ts';
import type { Subject } from '#drawing/display-list.ts';
import type { Pick } from '../core/pick.ts';
import { emptyPreview, type ToolEvent, type ToolPreview } from '../tools/tool.ts';
import { lateSheet } from '../sheet/late-sheet.ts';
import type { DiagramWorld, HeldPart } from './move-in-diagram.ts';

interface Host {
  readonly diagram: { readonly shown: Diagram | null };
  readonly pick: Pick | null;
  readonly pickFromSheet: (subject: Subject | null) => void;
  readonly edit: (edit: Edit, options: { readonly merges: boolean }) => void;
  readonly tell: (words: string) => void;
  readonly sheet: { readonly hold: () => void } | null;
}

export class DiagramHand {
  #held = $state.raw<HeldPart | null>(null);
  readonly #host: Host;
  readonly #world = $derived.by((): DiagramWorld | null => {
    const { diagram, pick } = this.#host;
    return diagram.shown === null ? null : { diagram: diagram.shown, pick };
  });
  readonly preview = $derived.by((): ToolPreview => {
    const works = lateSheet.value;
    return this.#world === null || works === null
      ? emptyPreview
      : works.showHand(this.#held, this.#world);
  });

  constructor(host: Host) {
    this.#host = host;
  }

  /** There is a diagram to take hold of. */
  get isOpen(): boolean {
    return this.#world !== null;
  }

  /** Gives an event of the sheet to the hand. True: it was the hand's. */
  send(event: ToolEvent): boolean {
    const world = this.#world;
    const works = lateSheet.value;
    if (world === null || works === null) return false;
    const { held, actions, claims } = works.stepHand(this.#held, event, world);
    this.#held = held;
    for (const action of actions) {
      if (action.kind === 'press') this.#host.pickFromSheet(action.subject);
      else if (action.kind === 'say') this.#host.tell(action.words);
      else if (action.kind === 'edit') {
        this.#host.sheet?.hold();
        this.#host.edit(action.edit, { merges: action.merges ?? false });
      }
    }
    return claims;
  }

  /** Gives the picked part, or all parts, back to the layout. */
  letGoOfPlaces(which: 'picked' | 'all'): void {
    const world = this.#world;
    const works = lateSheet.value;
    if (world === null || works === null) return;
    const { diagram, pick } = world;
    if (which === 'picked' && pick?.kind !== 'part') {
      this.#host.tell('pick the part that is to go back to the layout');
      return;
    }
    const edit = works.letGoEdit(diagram, which === 'picked' && pick !== null ? pick.id : null);
    if (edit !== null) this.#host.edit(edit, { merges: false });
    else this.#host.tell('nothing there was placed by hand in the diagram');
  }
}
