// The pixels of the photos that the sheet shows: fetched from the store, straightened where the scale
// asks for it, and kept while they are in use. What is not there yet is made, one at a time.
import type { Picture } from '#document/index.ts';
import type { PictureAsset } from '#drawing/display-list.ts';
import type { PictureStore, StoredPicture } from '#storage/index.ts';
import { BitmapCache } from './bitmap-cache.ts';
import { PictureRefusal, straightenPicture } from './photo-jobs.ts';

/** So many pictures are held at most; each may have 36 MB of pixels. */
const mostHeld = 10;

export interface AssetWork {
  readonly words: string;
  readonly share: number;
}

/** What makes bitmaps; a parameter, so that the order of things can be tested without a browser. */
export interface AssetMaker {
  readonly decode: (picture: StoredPicture) => Promise<ImageBitmap>;
  readonly straighten: typeof straightenPicture;
}

const browserMaker: AssetMaker = {
  decode: ({ bytes, type }) => createImageBitmap(new Blob([bytes as BlobPart], { type })),
  straighten: straightenPicture
};

export class PhotoAssets {
  /** Counts the pictures that came: whoever shows them paints again. */
  arrivals = $state(0);
  /** What is being made, or null. */
  work = $state.raw<AssetWork | null>(null);
  readonly #store: PictureStore;
  readonly #maker: AssetMaker;
  readonly #bitmaps = new BitmapCache<ImageBitmap>(mostHeld);
  /** By key: what is wanted and not made yet, and what cannot be made. */
  #wanted: Readonly<Record<string, PictureAsset>> = {};
  #missing: Readonly<Record<string, true>> = {};
  #isBusy = false;

  constructor(store: PictureStore, maker: AssetMaker = browserMaker) {
    this.#store = store;
    this.#maker = maker;
  }

  /** The pixels, or null while they are not there; then they are sent for. */
  readonly bitmapOf = (asset: PictureAsset): ImageBitmap | null => {
    const known = this.#bitmaps.find(asset.key);
    if (known !== undefined) return known;
    const { key } = asset;
    if (Object.hasOwn(this.#missing, key) || Object.hasOwn(this.#wanted, key)) return null;
    this.#wanted = { ...this.#wanted, [key]: asset };
    // Painting must not change what is being painted.
    queueMicrotask(() => void this.#next());
    return null;
  };

  /** Looks again for pictures that were not there: some may have come. */
  lookAgain(): void {
    this.#missing = {};
    this.arrivals += 1;
  }

  /** A picture as a file that any program reads, as it is shown. Undefined where it is not kept here. */
  async fileOf(
    asset: PictureAsset
  ): Promise<{ readonly bytes: Uint8Array; readonly type: Picture['type'] } | undefined> {
    const stored = await this.#store.read(asset.hash);
    if (stored === null) return undefined;
    if (asset.straightening === null) return stored;
    const bitmap =
      this.#bitmaps.find(asset.key) ??
      (await this.#maker.straighten({ ...stored, straightening: asset.straightening }));
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    const context = canvas.getContext('2d');
    if (context === null) return undefined;
    context.fillStyle = '#ffffff';
    context.fillRect(0, 0, bitmap.width, bitmap.height);
    context.drawImage(bitmap, 0, 0);
    const packed = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.88 });
    return { bytes: new Uint8Array(await packed.arrayBuffer()), type: 'image/jpeg' };
  }

  async #next(): Promise<void> {
    if (this.#isBusy) return;
    const [first] = Object.values(this.#wanted);
    if (first === undefined) return;
    this.#isBusy = true;
    try {
      const bitmap = await this.#make(first);
      if (bitmap === null) this.#miss(first);
      else this.#bitmaps.hold(first.key, bitmap);
    } catch (error) {
      this.#miss(first);
      if (!(error instanceof PictureRefusal || error instanceof DOMException)) throw error;
    } finally {
      const { [first.key]: _made, ...others } = this.#wanted;
      this.#wanted = others;
      this.#isBusy = false;
      this.work = null;
      this.arrivals += 1;
    }
    await this.#next();
  }

  async #make(asset: PictureAsset): Promise<ImageBitmap | null> {
    const stored = await this.#store.read(asset.hash);
    if (stored === null) return null;
    const { straightening } = asset;
    if (straightening === null) return this.#maker.decode(stored);
    this.work = { words: 'straightening the photo', share: 0 };
    return this.#maker.straighten(
      { ...stored, straightening },
      { onShare: (share) => (this.work = { words: 'straightening the photo', share }) }
    );
  }

  #miss({ key }: PictureAsset): void {
    this.#missing = { ...this.#missing, [key]: true };
  }
}
