// What was laid out before: blocks, so that an undo or an edit in one unit does not lay the others out again; and
// the last whole layout of each chassis, kept in the browser, so that the next visit shows the drawing at once.
import type { ChassisDocument } from '#document/index.ts';
import type { BlockCache, Diagram } from '#drawing/index.ts';
import { structureKey } from './same-structure.ts';

/** Blocks that are remembered; with more than this the memory starts afresh. */
const mostBlocks = 400;

/** A laid-out diagram without what follows from the study: plain data. */
export type KeptLayout = Omit<Diagram, 'plan'>;

/** Where layouts lie between visits. Both may reject: then the chassis is laid out again. */
export interface LayoutStore {
  readonly keepLayout: (id: string, key: string, layout: unknown) => Promise<void>;
  readonly layout: (id: string, key: string) => Promise<unknown>;
}

/** @param edition of this program: another one may lay out otherwise */
export interface LayoutKeeping {
  readonly store: LayoutStore;
  readonly edition: string;
}

export class LayoutMemory {
  #blocks: BlockCache = new Map();
  readonly #keeping: LayoutKeeping | null;

  constructor(keeping: LayoutKeeping | null = null) {
    this.#keeping = keeping;
  }

  /** The blocks known so far, to be read and added to by one layout. */
  get blocks(): BlockCache {
    if (this.#blocks.size > mostBlocks) this.forget();
    return this.#blocks;
  }

  /** Another document has nothing in common with the last. */
  forget(): void {
    this.#blocks = new Map();
  }

  /** The layout that was kept of a chassis of this structure, or null. Never rejects. */
  async recall(document: ChassisDocument): Promise<KeptLayout | null> {
    if (this.#keeping === null) return null;
    const key = this.#keyOf(document);
    try {
      return (await this.#keeping.store.layout(document.id, key)) as KeptLayout | null;
    } catch {
      return null;
    }
  }

  /** Keeps the layout of a chassis in place of its former one. Never rejects. */
  async keep(document: ChassisDocument, { plan: _, ...layout }: Diagram): Promise<void> {
    await this.#keeping?.store
      .keepLayout(document.id, this.#keyOf(document), layout)
      .catch(() => undefined);
  }

  #keyOf(document: ChassisDocument): string {
    return `${this.#keeping?.edition ?? ''} ${structureKey(document)}`;
  }
}
