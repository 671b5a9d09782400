// Photos as the editor works with them: what is taken in, which one is being scaled or looked at, and the
// list beside the sheet.
import {
  changeElement,
  removeElement,
  type ChassisDocument,
  type Id,
  type MakeId,
  type Photo
} from '#document/index.ts';
import type { Changes, Edit } from '#document/index.ts';
import type { Face, PictureAsset, SvgOptions } from '#drawing/index.ts';
import type { PictureStore } from '#storage/index.ts';
import { PhotoAssets } from './photo-assets.svelte.ts';
import type { ScaleWish } from './photo-edits.ts';
import { PhotoStopped, PictureRefusal, takePicture } from './photo-jobs.ts';

/** What is done to photos comes after the page, with what draws them. */
const photoEdits = () => import('./photo-edits.ts');

interface Host {
  readonly documents: { readonly document: ChassisDocument };
  readonly diagram: {
    readonly which: string;
    readonly face: Face;
    readonly choose: (which: 'pictorial') => void;
  };
  readonly pictures: PictureStore;
  readonly makeId: MakeId;
  readonly edit: (
    edit: Edit,
    options?: { readonly merges?: boolean; readonly words?: string }
  ) => void;
  readonly tell: (words: string) => void;
  page: string;
  readonly dialog: string | null;
  readonly sheet: { readonly fit: () => void } | null;
}

/** What a photo is to be of. */
export interface TakeWish {
  readonly unit?: Id | undefined;
  readonly face?: Face;
  /** The terminal, part or wire that a photo of one spot shows. */
  readonly of?: Photo['of'];
}

export interface Intake {
  readonly name: string;
  readonly done: number;
  readonly total: number;
  /** Of all of them, 0 to 1. */
  readonly share: number;
  readonly words: string;
}

export class PhotoDesk {
  readonly assets: PhotoAssets;
  /** The list of photos stands beside the sheet. */
  isOpen = $state(false);
  /** Pictures that came while a new chassis is being described: they are taken in with it. */
  forNew = $state.raw<readonly File[]>([]);
  /** What is being taken in, or null. */
  intake = $state.raw<Intake | null>(null);
  /** Why the last pictures were not taken, a sentence each. */
  problems = $state.raw<readonly string[]>([]);
  /** The photo whose scale is being set. */
  #scaling = $state.raw<Id | null>(null);
  /** The photo that is looked at by itself. */
  #viewing = $state.raw<Id | null>(null);
  #stop: AbortController | null = null;
  readonly #host: Host;

  constructor(host: Host) {
    this.#host = host;
    this.assets = new PhotoAssets(host.pictures);
  }

  get scaling(): Photo | null {
    return this.#find(this.#scaling);
  }

  get viewing(): Photo | null {
    return this.#find(this.#viewing);
  }

  scale(id: Id | null): void {
    this.#scaling = id;
  }

  view(id: Id | null): void {
    this.#viewing = id;
  }

  /** Pictures that were dropped or pasted: of the chassis in the hand, or of the one that is being described. */
  offer(files: readonly File[]): void {
    if (this.#host.dialog === 'new') this.forNew = [...this.forNew, ...files];
    else void this.take(files);
  }

  /** Takes pictures in, one after the other; the ids of the photos that were made. */
  async take(files: readonly File[], wish: TakeWish = {}): Promise<readonly Id[]> {
    if (files.length === 0 || this.#stop !== null) return [];
    const stop = new AbortController();
    this.#stop = stop;
    this.problems = [];
    const made: Id[] = [];
    const problems: string[] = [];
    try {
      for (const [done, file] of files.entries()) {
        try {
          made.push(await this.#takeOne(file, done, files.length, wish, stop.signal));
        } catch (error) {
          if (error instanceof PhotoStopped) break;
          problems.push(`${file.name} ${reasonOf(error)}`);
        }
      }
    } finally {
      this.#stop = null;
      this.intake = null;
      this.problems = problems;
    }
    if (stop.signal.aborted) this.#host.tell('stopped: no more pictures are taken in');
    else if (problems.length > 0) this.#host.tell(problems.join(' '));
    if (made.length > 0 && wish.of === undefined) this.#showUnderlays();
    return made;
  }

  /** Ends the taking in; what was taken stays. */
  stop(): void {
    this.#stop?.abort();
  }

  change(photo: Photo, fields: Changes<Photo>, options: { merges?: boolean } = {}): void {
    this.#host.edit(changeElement('photo', photo.id, fields), options);
  }

  async shift(photo: Photo, by: 'up' | 'down'): Promise<void> {
    const { shiftPhoto } = await photoEdits();
    const edit = shiftPhoto(this.#host.documents.document, photo, by);
    if (edit === null) this.#host.tell(by === 'up' ? 'it is the topmost' : 'it is the lowest');
    else this.#host.edit(edit);
  }

  remove(photo: Photo): void {
    this.#host.edit(removeElement('photo', photo.id), {
      words: `photo ${photo.name} deleted; undo brings it back`
    });
  }

  async setScale(photo: Photo, wish: ScaleWish): Promise<void> {
    const { scalePhoto } = await photoEdits();
    this.#host.edit(scalePhoto(this.#host.documents.document, photo, wish));
    this.#scaling = null;
  }

  /** Looks up the files of pictures, for a drawing that is to carry them. */
  async filesOf(assets: readonly PictureAsset[]): Promise<NonNullable<SvgOptions['pictures']>> {
    const files: Record<string, Awaited<ReturnType<PhotoAssets['fileOf']>>> = {};
    for (const asset of assets) {
      files[asset.key] = await this.assets.fileOf(asset);
    }
    return ({ key }) => files[key];
  }

  async #takeOne(
    file: File,
    done: number,
    total: number,
    { unit, face, of }: TakeWish,
    signal: AbortSignal
  ): Promise<Id> {
    const show = (share: number, words: string): void => {
      this.intake = { name: file.name, done, total, share: (done + share) / total, words };
    };
    show(0, 'reading');
    const { bytes, ...picture } = await takePicture(file, { signal, onShare: show });
    const { pictures, documents, makeId, diagram } = this.#host;
    const hash = await pictures.keep(bytes, picture.type);
    const { addPhoto, photoName } = await photoEdits();
    const { document } = documents;
    const id = makeId('photo');
    const name = photoName(file.name, document);
    const seen = face ?? (diagram.which === 'pictorial' ? diagram.face : 'below');
    const photo = { id, name, picture: { hash, ...picture }, face: seen, unit, of };
    this.#host.edit(addPhoto(document, photo, makeId));
    this.assets.lookAgain();
    return id;
  }

  /** Turns to the drawing to scale: there the photos lie. */
  #showUnderlays(): void {
    this.#host.page = 'sheet';
    this.#host.diagram.choose('pictorial');
    this.isOpen = true;
    this.#host.sheet?.fit();
  }

  #find(id: Id | null): Photo | null {
    return id === null ? null : (this.#host.documents.document.photos[id] ?? null);
  }
}

const reasonOf = (error: unknown): string =>
  error instanceof PictureRefusal
    ? error.message
    : `could not be kept: ${error instanceof Error ? error.message : String(error)}`;
