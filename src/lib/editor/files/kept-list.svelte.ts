// The chassis that this browser keeps, as a list to work on: rename, double, take off and put back. Nothing is
// done to one that is open in another window.
import { shareStructure, type ChassisDocument, type MakeId } from '#document/index.ts';
import type {
  BesideStore,
  BrowserStore,
  KeptEntry,
  KeptState,
  PictureStore
} from '#storage/index.ts';
import { wordsOf, type KeptChassis } from './kept-chassis.svelte.ts';
import { isPreview, type Preview } from './preview.ts';

export type ListStore = Omit<BrowserStore, 'close'>;

export interface ListParts {
  readonly store: ListStore;
  readonly beside: Pick<BesideStore, 'previews' | 'keepPreview'>;
  readonly kept: KeptChassis;
  readonly pictures: Pick<PictureStore, 'forgetUnused'>;
  /** The hashes of the pictures that undo may bring back in this window. */
  readonly picturesInHand: () => Iterable<string>;
  readonly now: () => number;
  readonly makeId: MakeId;
  /** Says something in the live line. */
  readonly tell: (words: string) => void;
}

const openElsewhere = (title: string): string =>
  `${title} is open in another window: do it there, or close that window first`;

/** What comes in beside one of the same id: a chassis of its own. */
const asCopy = (document: ChassisDocument, id: string, title: string): ChassisDocument => ({
  ...document,
  id,
  identity: { ...document.identity, title }
});

export class KeptList {
  entries = $state.raw<readonly KeptEntry[]>([]);
  removed = $state.raw<readonly KeptEntry[]>([]);
  /** By the id of the document. */
  previews = $state.raw<Readonly<Record<string, Preview>>>({});
  /** Why the list could not be read or changed, or null. */
  problem = $state<string | null>(null);
  readonly #parts: ListParts;

  constructor(parts: ListParts) {
    this.#parts = parts;
  }

  /** Reads the list anew, previews too. */
  async refresh(): Promise<void> {
    const { store, beside, kept } = this.#parts;
    await kept.flush();
    await this.#attempt(async () => {
      [this.entries, this.removed] = await Promise.all([store.list(), store.removed()]);
      const previews = await beside.previews();
      this.previews = Object.fromEntries(
        [...previews].flatMap(([id, preview]) => (isPreview(preview) ? [[id, preview]] : []))
      );
    });
  }

  /** Renames a chassis that is not the one in the hand: that is renamed by an edit. */
  rename({ id, title }: KeptEntry, next: string): Promise<void> {
    return this.#change(id, title, async () => {
      const document = await this.#parts.store.load(id);
      if (document === null) return;
      await this.#parts.store.save(asCopy(document, id, next), this.#parts.now());
      this.#parts.tell(`${title} is now called ${next}`);
    });
  }

  /** A second chassis like one that is kept. */
  async double({ id, title }: KeptEntry): Promise<void> {
    await this.#parts.kept.flush();
    await this.#attempt(async () => {
      const document = await this.#parts.store.load(id);
      if (document === null) return;
      const copy = asCopy(document, this.#parts.makeId('document'), `${title}, copy`);
      await this.#parts.store.save(copy, this.#parts.now());
      const preview = this.previews[id];
      if (preview) await this.#parts.beside.keepPreview(copy.id, preview);
      this.#parts.tell(`${copy.identity.title} made`);
    });
    await this.refresh();
  }

  /** Takes a chassis off the list; it can be put back. */
  remove({ id, title }: KeptEntry): Promise<void> {
    return this.#change(id, title, async () => {
      await this.#parts.store.remove(id, this.#parts.now());
      this.#parts.tell(`${title} removed: it can be put back`);
    });
  }

  putBack({ id, title }: KeptEntry): Promise<void> {
    return this.#change(id, title, async () => {
      await this.#parts.store.putBack(id);
      this.#parts.tell(`${title} is back`);
    });
  }

  /** For good, to make room. */
  async forget({ id, title }: KeptEntry): Promise<void> {
    await this.#change(id, title, async () => {
      await this.#parts.store.forget(id);
      this.#parts.tell(`${title} deleted for good`);
    });
    await this.#attempt(() => this.#dropPictures());
  }

  /** Every chassis of the list, for one file of them all. */
  async readAll(): Promise<ChassisDocument[]> {
    await this.refresh();
    const documents: ChassisDocument[] = [];
    await this.#attempt(async () => {
      for (const { id } of this.entries) {
        const document = await this.#parts.store.load(id);
        if (document !== null) documents.push(document);
      }
    });
    return documents;
  }

  /** Keeps chassis that came in together. One that is kept here and says something else stays as it is:
   *  the other comes in beside it. Says what was done, a sentence for each that is not simply kept. */
  async takeIn(documents: readonly ChassisDocument[]): Promise<string[]> {
    await this.#parts.kept.flush();
    const notes: string[] = [];
    for (const document of documents) {
      const { title } = document.identity;
      await this.#attempt(async () => {
        const { store, now, makeId } = this.#parts;
        const here = await store.load(document.id);
        if (here === null) await store.save(document, now());
        else if (shareStructure(here, document) === here) {
          await store.putBack(document.id);
          notes.push(`${title} is here already`);
        } else {
          const copy = asCopy(document, makeId('document'), `${title}, from the file`);
          await store.save(copy, now());
          notes.push(`${title} is here in another state: the one in the file is kept beside it`);
        }
      });
      if (this.problem !== null) notes.push(`${title} was not kept: ${this.problem}`);
    }
    await this.refresh();
    return notes;
  }

  /** The states of a chassis, the present one first. */
  async states(id: string): Promise<readonly KeptState[]> {
    await this.#parts.kept.flush();
    return (await this.#attempt(() => this.#parts.store.states(id))) ?? [];
  }

  loadState(id: string, savedAt: number): Promise<ChassisDocument | null> {
    return this.#attempt(() => this.#parts.store.loadRevision(id, savedAt));
  }

  /** Pictures that no chassis shows any more. Another window may be about to show one: then they stay. */
  async #dropPictures(): Promise<void> {
    const { kept, store, pictures, picturesInHand } = this.#parts;
    if (!(await kept.isAlone())) return;
    await pictures.forgetUnused([...(await store.picturesInUse()), ...picturesInHand()]);
  }

  async #change(id: string, title: string, work: () => Promise<void>): Promise<void> {
    await this.#attempt(async () => {
      const isFree = await this.#parts.kept.whileFree(id, work);
      if (!isFree) this.#parts.tell(openElsewhere(title));
    });
    await this.refresh();
  }

  async #attempt<T>(work: () => Promise<T>): Promise<T | null> {
    try {
      const result = await work();
      this.problem = null;
      return result;
    } catch (error) {
      this.problem = wordsOf(error);
      return null;
    }
  }
}
