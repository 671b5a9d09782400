// A tool on a bench: events go in, edits are applied to a document, and what was said is kept, as the
// editor does it.
import { applyEdit, makeIdFrom, type ChassisDocument } from '#document/index.ts';
import type { Subject } from '#drawing/display-list.ts';
import { layPictorial, type Face } from '#drawing/index.ts';
import type { Pick } from '#editor/core/pick.ts';
import { pickOfSubject } from '#editor/core/pick.ts';
import { buildScene } from '#editor/tools/scene.ts';
import type {
  Spot,
  Tool,
  ToolAction,
  ToolEvent,
  ToolPreview,
  ToolWorld
} from '#editor/tools/tool.ts';
import { buildStudy } from '#study/index.ts';

interface More {
  readonly shift?: boolean;
  readonly alt?: boolean;
  readonly ctrl?: boolean;
  readonly touch?: boolean;
}

export class ToolBench<S> {
  document: ChassisDocument;
  state: S;
  pick: Pick | null = null;
  claims = false;
  readonly said: string[] = [];
  readonly edits: Extract<ToolAction, { kind: 'edit' }>[] = [];
  readonly #tool: Tool<S>;
  readonly #face: Face;
  readonly #makeId = makeIdFrom(seeded());

  constructor(tool: Tool<S>, document: ChassisDocument, face: Face = 'below') {
    this.#tool = tool;
    this.document = document;
    this.state = tool.resting;
    this.#face = face;
  }

  get world(): ToolWorld {
    const study = buildStudy(this.document);
    const scene = buildScene(study, layPictorial(study, this.#face), this.#face);
    return {
      study,
      scene,
      pick: this.pick,
      lengthUnit: 'mm',
      pxPerMm: 4,
      makeId: this.#makeId
    };
  }

  get shown(): ToolPreview {
    return this.#tool.show(this.state, this.world);
  }

  send(event: ToolEvent): this {
    const { state, actions, claims = false } = this.#tool.step(this.state, event, this.world);
    this.state = state;
    this.claims = claims;
    for (const action of actions) {
      if (action.kind === 'edit') {
        const applied = applyEdit(this.document, action.edit);
        if (!applied.ok) throw new Error(applied.problem);
        this.document = applied.document;
        this.edits.push(action);
      }
      if (action.kind === 'say') this.said.push(action.words);
      if (action.kind === 'pick') this.pick = action.pick;
      if (action.kind === 'press') {
        this.pick = action.subject && pickOfSubject(action.subject, buildStudy(this.document));
      }
    }
    return this;
  }

  pointer(
    kind: 'hover' | 'tap' | 'grab' | 'drag' | 'drop',
    at: Spot,
    subject: Subject | null = null,
    more: More = {}
  ): this {
    const { shift = false, alt = false, ctrl = false, touch = false } = more;
    return this.send({ kind, at, reachMm: 1.5, subject, shift, alt, ctrl, touch });
  }

  key(key: string, more: More = {}): this {
    const { shift = false, alt = false, ctrl = false } = more;
    return this.send({ kind: 'key', key, shift, alt, ctrl });
  }

  /** Writes into a field of the tool's panel, and commits it. */
  field(id: string, value = '', done = true): this {
    return this.send({ kind: 'field', id, value, done });
  }

  /** Presses a thing at `from`, drags it to `to` and lets it go. */
  drag(from: Spot, to: Spot, subject: Subject | null, more: More = {}): this {
    return this.pointer('grab', from, subject, more)
      .pointer('drag', to, null, more)
      .pointer('drop', to, null, more);
  }

  partNamed(reference: string) {
    const part = Object.values(this.document.parts).find((one) => one.reference === reference);
    if (part === undefined) throw new Error(`no part ${reference}`);
    return part;
  }

  /** Where a terminal lies on the sheet, and as what it is drawn. */
  terminal(reference: string, name: string): { at: Spot; subject: Subject } {
    const part = this.partNamed(reference);
    const terminal = Object.values(part.terminals).find((one) => one.name === name);
    const key = `${part.id}/${terminal?.id ?? ''}`;
    const found = this.world.scene.terminalByKey.get(key);
    if (found === undefined) throw new Error(`${reference}-${name} is not on the sheet`);
    return { at: found.at, subject: { kind: 'terminal', id: key } };
  }
}

/** Chance that is the same in every run. */
const seeded = (): (() => number) => {
  let seed = 20_531;
  return () => {
    seed = (seed * 16_807) % 2_147_483_647;
    return seed / 2_147_483_647;
  };
};
