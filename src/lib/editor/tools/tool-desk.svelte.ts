// Which tool is in use, and what comes out of it: events go to the tool, its actions to the editor.
import type { Edit, MakeId } from '#document/index.ts';
import type { Subject } from '#drawing/display-list.ts';
import type { Study } from '#study/index.ts';
import type { Pick } from '../core/pick.ts';
import type { LengthUnit } from '../core/preferences.svelte.ts';
import { lateSheet } from '../sheet/late-sheet.ts';
import type { PanelField } from './panel.ts';
import type { Scene } from './scene.ts';
import {
  emptyPreview,
  type ToolAction,
  type ToolEvent,
  type ToolFace,
  type ToolInUse,
  type ToolPreview,
  type ToolWorld
} from './tool.ts';

interface Host {
  readonly documents: { readonly study: Study };
  readonly diagram: { readonly scene: Scene | null };
  readonly preferences: { readonly lengthUnit: LengthUnit };
  readonly makeId: MakeId;
  readonly pick: Pick | null;
  readonly setPick: (pick: Pick | null) => void;
  readonly pickFromSheet: (subject: Subject | null) => void;
  readonly edit: (
    edit: Edit,
    options: { readonly merges: boolean; readonly words?: string }
  ) => void;
  readonly tell: (words: string) => void;
  /** The paper stays where it is from now on. */
  readonly sheet: { readonly hold: () => void } | null;
}

export class ToolDesk {
  /** Null until a tool was taken up. */
  #taken = $state.raw<ToolInUse | null>(null);
  /** Pixels on screen for a millimetre of the drawing. */
  pxPerMm = $state(1);
  readonly #host: Host;
  /** How tools were put down, by their id. */
  readonly #putDown: Record<string, ToolInUse> = {};

  /** The first tool is in use while no other is. */
  readonly #inUse = $derived.by(
    (): ToolInUse | null => this.#taken ?? lateSheet.value?.toolFaces[0]?.takeUp() ?? null
  );
  readonly #world = $derived.by((): ToolWorld | null => {
    const { diagram, documents, pick, preferences, makeId } = this.#host;
    const { scene } = diagram;
    if (scene === null) return null;
    const { study } = documents;
    return {
      study,
      scene,
      pick,
      lengthUnit: preferences.lengthUnit,
      pxPerMm: this.pxPerMm,
      makeId
    };
  });
  /** What is in the hand. */
  readonly preview = $derived.by((): ToolPreview =>
    this.#world === null ? emptyPreview : (this.#inUse?.show(this.#world) ?? emptyPreview)
  );

  /** What can be set of the tool in use. */
  readonly panel = $derived.by((): readonly PanelField[] =>
    this.#world === null ? [] : (this.#inUse?.panel(this.#world) ?? [])
  );

  constructor(host: Host) {
    this.#host = host;
  }

  /** Tools are there for the drawing to scale alone. */
  get isOpen(): boolean {
    return this.#world !== null;
  }

  /** The tool in use, if there is one yet. */
  get tool(): ToolFace | null {
    return this.#inUse?.tool ?? null;
  }

  /** Takes up a tool, or the same one afresh. */
  take(id: string): void {
    const works = lateSheet.value;
    if (works === null) {
      void lateSheet.load().then(
        () => this.take(id),
        () => this.#host.tell('the tools could not be fetched: load the page again')
      );
      return;
    }
    const face = works.toolFaces.find((one) => one.id === id);
    if (face === undefined) return;
    const former = this.#inUse;
    if (former !== null) this.#putDown[former.tool.id] = former.putDown();
    this.#taken = this.#putDown[id] ?? face.takeUp();
    this.#host.tell(`${face.name}. ${face.hint}`);
  }

  /** The tool that a letter takes up, or null. */
  toolOf(key: string): ToolFace | null {
    return lateSheet.value?.toolFaces.find((one) => one.key === key) ?? null;
  }

  /** What is in the hand is let go; the tool stays. */
  letGo(): void {
    this.#taken = this.#taken?.putDown() ?? null;
  }

  /** Gives an event to the tool. True: it was the tool's. */
  send(event: ToolEvent): boolean {
    const world = this.#world;
    const inUse = this.#inUse;
    if (world === null || inUse === null) return false;
    const { next, actions, claims } = inUse.step(event, world);
    this.#taken = next;
    for (const action of actions) this.#act(action);
    if (claims || event.kind !== 'key') return claims;
    return this.#toolKey(event);
  }

  /** A key that the tool did not want: Escape puts the tool down, a letter takes up another. */
  #toolKey({ key, ctrl, alt }: Extract<ToolEvent, { kind: 'key' }>): boolean {
    if (ctrl || alt) return false;
    const faces = lateSheet.value?.toolFaces ?? [];
    const [first] = faces;
    if (key === 'Escape' && first !== undefined && this.tool?.id !== first.id) {
      this.take(first.id);
      return true;
    }
    const face = this.tool?.readsLetters ? null : this.toolOf(key);
    if (face === null) return false;
    this.take(face.id);
    return true;
  }

  #act(action: ToolAction): void {
    switch (action.kind) {
      case 'edit': {
        const { edit, merges = false, words } = action;
        this.#host.sheet?.hold();
        return this.#host.edit(edit, { merges, ...(words === undefined ? {} : { words }) });
      }
      case 'press':
        return this.#host.pickFromSheet(action.subject);
      case 'pick':
        return this.#host.setPick(action.pick);
      case 'say':
        return this.#host.tell(action.words);
      case 'take':
        return this.take(action.tool);
    }
  }
}
