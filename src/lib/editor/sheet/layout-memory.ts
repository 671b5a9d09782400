// The last layout of each chassis, kept in the browser, so that the next visit shows the drawing at once.
import type { ChassisDocument } from '#document/index.ts';
import type { KeptLayout } from './lay-out.ts';
import { structureKey } from './same-structure.ts';

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
  readonly #keeping: LayoutKeeping | null;

  constructor(keeping: LayoutKeeping | null = null) {
    this.#keeping = keeping;
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
  async keep(document: ChassisDocument, layout: KeptLayout): Promise<void> {
    await this.#keeping?.store
      .keepLayout(document.id, this.#keyOf(document), layout)
      .catch(() => undefined);
  }

  #keyOf(document: ChassisDocument): string {
    return `${this.#keeping?.edition ?? ''} ${structureKey(document)}`;
  }
}
