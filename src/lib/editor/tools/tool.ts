// What a tool of the sheet is: a plain state machine. Pointers and keys go in as events in millimetres
// of the drawing, edits and words come out, and what is in the hand is shapes made from the state. No
// tool knows a canvas or a page, so each is tested in Node.
import type { Edit, MakeId } from '#document/index.ts';
import type { Shape, Subject } from '#drawing/display-list.ts';
import type { Study } from '#study/index.ts';
import type { Pick } from '../core/pick.ts';
import type { LengthUnit } from '../core/preferences.svelte.ts';
import type { PanelField } from './panel.ts';
import type { Scene } from './scene.ts';

/** A place on the sheet, mm. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface Modifiers {
  readonly shift: boolean;
  readonly alt: boolean;
  /** Control, or command. */
  readonly ctrl: boolean;
}

interface Pointed extends Modifiers {
  readonly at: Spot;
  /** How near is near enough for this pointer, mm. */
  readonly reachMm: number;
  readonly touch: boolean;
  /** What is drawn under the pointer, or null. */
  readonly subject: Subject | null;
}

export type ToolEvent =
  | ({ readonly kind: 'hover' } & Pointed)
  | ({ readonly kind: 'tap' } & Pointed)
  /** A drag begins at `at`; `subject` is what was pressed. A tool that takes it answers `claims`. */
  | ({ readonly kind: 'grab' } & Pointed)
  | ({ readonly kind: 'drag' } & Pointed)
  | ({ readonly kind: 'drop' } & Pointed)
  /** The drag came to nothing, or the pointer left the sheet. */
  | { readonly kind: 'give-up' }
  | ({ readonly kind: 'key'; readonly key: string } & Modifiers)
  /** A field of the tool's panel holds another text. `done`: it was committed, or a button was pressed. */
  | {
      readonly kind: 'field';
      readonly id: string;
      readonly value: string;
      readonly done: boolean;
    };

export type Grab = Extract<ToolEvent, { kind: 'grab' }>;
export type Drag = Extract<ToolEvent, { kind: 'drag' | 'drop' }>;

/** What a tool sees of the editor. */
export interface ToolWorld {
  readonly study: Study;
  readonly scene: Scene;
  readonly pick: Pick | null;
  readonly lengthUnit: LengthUnit;
  /** Pixels on screen for a millimetre of the drawing: what is grasped keeps its size on screen. */
  readonly pxPerMm: number;
  readonly makeId: MakeId;
}

export type ToolAction =
  /** One step of undo; with `merges`, one with the step before if that was the same within a second. */
  | {
      readonly kind: 'edit';
      readonly edit: Edit;
      readonly merges?: boolean;
      readonly words?: string;
    }
  /** Picks what was pressed, as a press on the sheet does. */
  | { readonly kind: 'press'; readonly subject: Subject | null }
  | { readonly kind: 'pick'; readonly pick: Pick | null }
  /** For the live line. */
  | { readonly kind: 'say'; readonly words: string }
  /** Another tool takes over. */
  | { readonly kind: 'take'; readonly tool: string };

export interface PreviewShape {
  readonly shape: Shape;
  /** A style name of the drawing. */
  readonly style: string;
}

/** What is in the hand, over the drawing. */
export interface ToolPreview {
  readonly shapes: readonly PreviewShape[];
  /** Keys (see `subjectKey`) of what is drawn in the hand and therefore not on the sheet. */
  readonly hidden?: ReadonlySet<string>;
  /** Words beside the pointer. */
  readonly words?: { readonly text: string; readonly at: Spot };
  readonly cursor?: 'move' | 'crosshair' | 'grabbing' | 'pointer' | 'copy';
}

export interface ToolStep<S> {
  readonly state: S;
  readonly actions: readonly ToolAction[];
  /** The event was the tool's: a key does nothing else, a drag does not move the paper. */
  readonly claims?: boolean;
}

export interface Tool<S> {
  readonly id: string;
  readonly name: string;
  /** The letter that takes it up while no other tool reads letters. */
  readonly key: string;
  /** What to do with it, in a sentence: for its button and for the live line. */
  readonly hint: string;
  /** While it is in use letters are its own, so that none of them takes up another tool. */
  readonly readsLetters?: boolean;
  /** A stroke in a square of 20, as the path of an SVG. */
  readonly icon: string;
  readonly resting: S;
  /** What is kept of its state when it is put down, such as a gauge that was typed; else nothing. */
  readonly rest?: (state: S) => S;
  /** What can be set while it is in use. */
  readonly panel?: (state: S, world: ToolWorld) => readonly PanelField[];
  readonly step: (state: S, event: ToolEvent, world: ToolWorld) => ToolStep<S>;
  readonly show: (state: S, world: ToolWorld) => ToolPreview;
}

export const subjectKey = ({ kind, id }: Subject): string => `${kind} ${id}`;

export const emptyPreview: ToolPreview = { shapes: [] };

/** A tool in use: its state shut in, so that all tools look alike from outside. */
export interface ToolInUse {
  readonly tool: ToolFace;
  readonly step: (
    event: ToolEvent,
    world: ToolWorld
  ) => {
    readonly next: ToolInUse;
    readonly actions: readonly ToolAction[];
    readonly claims: boolean;
  };
  readonly show: (world: ToolWorld) => ToolPreview;
  readonly panel: (world: ToolWorld) => readonly PanelField[];
  /** The tool as it is taken up the next time. */
  readonly putDown: () => ToolInUse;
}

/** What is known of a tool without its state. */
export interface ToolFace {
  readonly id: string;
  readonly name: string;
  readonly key: string;
  readonly hint: string;
  readonly icon: string;
  readonly readsLetters: boolean;
  readonly takeUp: () => ToolInUse;
}

/** The tool as the rail and the desk know it. */
export const faceOf = <S>(tool: Tool<S>): ToolFace => {
  const use = (state: S): ToolInUse => ({
    tool: face,
    step: (event, world) => {
      const { state: next, actions, claims = false } = tool.step(state, event, world);
      return { next: use(next), actions, claims };
    },
    show: (world) => tool.show(state, world),
    panel: (world) => tool.panel?.(state, world) ?? [],
    putDown: () => use(tool.rest?.(state) ?? tool.resting)
  });
  const { id, name, key, hint, icon, readsLetters = false } = tool;
  const takeUp = (): ToolInUse => use(tool.resting);
  const face: ToolFace = { id, name, key, hint, icon, readsLetters, takeUp };
  return face;
};
