// A chassis out to a file: with its pictures where it has any, back to the file it came from where the
// browser can, else to where the person says, else as a download.
import { saveDocument, type ChassisDocument } from '#document/index.ts';
import {
  documentEnding,
  fileNameOf,
  missingPicturesNote,
  picturesOf,
  zipEnding,
  type PictureStore
} from '#storage/index.ts';
import { isFileHandle, writeToPlace, type FilePlace } from './file-place.ts';
import { gatherPictures } from './gather-pictures.ts';

export interface SaverHost {
  readonly download: (name: string, type: string, content: string | Uint8Array) => void;
  /** Null where the person called it off; 'none' where the browser can only download. */
  readonly choosePlace: (name: string) => Promise<FilePlace | 'none' | null>;
}

/** Where the handles of files lie between visits. Both may reject: then a place is asked for again. */
export interface PlaceStore {
  readonly keepPlace: (id: string, handle: unknown) => Promise<void>;
  readonly place: (id: string) => Promise<unknown>;
}

export interface SaveWishes {
  /** Asks for a place even where one is known. */
  readonly elsewhere?: boolean;
  /** Leaves the pictures out. */
  readonly bare?: boolean;
}

export interface SaveOutcome {
  readonly isSaved: boolean;
  /** What happened, for the live line. */
  readonly words: string;
}

/** The packer comes after the page. */
const zipWorks = () => import('#storage/chassis-zip.ts');

const types = { [zipEnding]: 'application/zip', [documentEnding]: 'application/json' } as const;

export class FileSaver {
  readonly #host: SaverHost;
  readonly #pictures: PictureStore;
  /** By document: the file that it is saved back to. */
  readonly #places = new Map<string, FilePlace | null>();
  readonly #placeStore: PlaceStore | null;

  constructor(host: SaverHost, pictures: PictureStore, placeStore: PlaceStore | null = null) {
    this.#host = host;
    this.#pictures = pictures;
    this.#placeStore = placeStore;
  }

  /** The file that a document came from: it is saved back to it. */
  cameFrom(document: ChassisDocument, place: FilePlace): void {
    this.#remember(document, place);
  }

  /** To be called from a click or a key: the browser may ask for a place. */
  async save(document: ChassisDocument, wishes: SaveWishes = {}): Promise<SaveOutcome> {
    const { elsewhere = false, bare = false } = wishes;
    const ending = picturesOf(document).size > 0 && !bare ? zipEnding : documentEnding;
    const name = fileNameOf(document.identity.title, ending);
    const known = elsewhere ? null : await this.#placeOf(document);
    // A file of text cannot take pictures: then another place is asked for.
    const place = known?.name.endsWith(ending) ? known : await this.#host.choosePlace(name);
    if (place === null) return { isSaved: false, words: 'not saved: no place was chosen' };
    const { content, note } = await this.#contentOf(document, ending);
    const { isSaved, words } = await this.#put(place, name, ending, content);
    if (place !== 'none') {
      if (!isSaved) this.#places.set(document.id, null);
      else if (!bare) this.#remember(document, place);
    }
    return { isSaved, words: isSaved ? words + note : words };
  }

  /** Many chassis with their pictures in one file. To be called from a click or a key. */
  async saveAll(documents: readonly ChassisDocument[]): Promise<SaveOutcome> {
    if (documents.length === 0) return { isSaved: false, words: 'nothing is kept yet' };
    const name = `all${zipEnding}`;
    const place = await this.#host.choosePlace(name);
    if (place === null) return { isSaved: false, words: 'not saved: no place was chosen' };
    const pictures = await gatherPictures(documents, this.#pictures);
    const { buildChassisZip } = await zipWorks();
    return this.#put(place, name, zipEnding, buildChassisZip(documents, pictures));
  }

  #remember({ id }: ChassisDocument, place: FilePlace): void {
    this.#places.set(id, place);
    void this.#placeStore?.keepPlace(id, place.handle).catch(() => undefined);
  }

  /** The file of this visit, or of an earlier one. */
  async #placeOf({ id }: ChassisDocument): Promise<FilePlace | null> {
    const known = this.#places.get(id);
    if (known !== undefined) return known;
    const handle = await this.#placeStore?.place(id).catch(() => null);
    return isFileHandle(handle) ? { name: handle.name, handle } : null;
  }

  async #put(
    place: FilePlace | 'none',
    name: string,
    ending: keyof typeof types,
    content: Uint8Array
  ): Promise<SaveOutcome> {
    if (place === 'none') {
      this.#host.download(name, types[ending], content);
      return { isSaved: true, words: `${name} saved` };
    }
    try {
      await writeToPlace(place, content);
      return { isSaved: true, words: `${place.name} saved` };
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      const words = `${place.name} was not saved, what was in it is still there: ${why}. Save again to choose another place`;
      return { isSaved: false, words };
    }
  }

  async #contentOf(
    document: ChassisDocument,
    ending: keyof typeof types
  ): Promise<{ content: Uint8Array; note: string }> {
    if (ending === documentEnding) {
      return { content: new TextEncoder().encode(saveDocument(document)), note: '' };
    }
    const pictures = await gatherPictures([document], this.#pictures);
    const missing = missingPicturesNote(document, (hash) => pictures.has(hash));
    const { buildChassisZip } = await zipWorks();
    const content = buildChassisZip([document], pictures);
    return { content, note: missing === null ? '' : `, but ${missing}` };
  }
}
