// What the sheet asks of a layout: a document goes in, plain data comes out, wherever it is worked out.
import type { ChassisDocument } from '#document/index.ts';
import type { LayoutEngine, LayoutError } from '#drawing/index.ts';
import { buildDiagram, type Diagram, type LayoutProgress } from '#drawing/index.ts';
import { buildStudy } from '#study/index.ts';

/** A laid-out diagram without what follows from the study: plain data. */
export type KeptLayout = Omit<Diagram, 'plan'>;

export interface LayoutTask {
  readonly document: ChassisDocument;
  /** What was laid out before the last edits and is only to be added to; null for all anew. */
  readonly before: Diagram['laidOut'] | null;
  readonly timeLimitMs: number;
}

export interface LayoutWatch {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: LayoutProgress) => void;
}

/** Rejects with a LayoutError where it was stopped or took too long. */
export type LayOut = (task: LayoutTask, watch: LayoutWatch) => Promise<KeptLayout>;

/** Works it out here and now, with what puts parts in layers. */
export const layOutHere =
  (engine: LayoutEngine): LayOut =>
  async ({ document, ...task }, watch) => {
    const options = { ...task, ...watch };
    const { plan: _, ...layout } = await buildDiagram(buildStudy(document), engine, options);
    return layout;
  };

/** What the worker says. */
export type LayoutWord =
  | { readonly kind: 'progress'; readonly progress: LayoutProgress }
  | { readonly kind: 'done'; readonly layout: KeptLayout }
  | { readonly kind: 'failed'; readonly why: LayoutError['why'] | null; readonly words: string };
