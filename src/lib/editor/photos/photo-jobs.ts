// Work on pictures that must not hold up the page: each job has a worker of its own, which gives its
// memory back when it is done and can be stopped at any moment.
import type { Picture } from '#document/index.ts';
import type { Straightening } from '#drawing/index.ts';

export type PhotoJob =
  /** A file, to be made upright and scaled down, with nothing left in it but the picture. */
  | { readonly kind: 'take'; readonly file: Blob }
  | {
      readonly kind: 'straighten';
      readonly bytes: Uint8Array;
      readonly type: Picture['type'];
      readonly straightening: Straightening;
    };

export interface TakenPicture {
  readonly bytes: Uint8Array;
  readonly type: Picture['type'];
  readonly width: number;
  readonly height: number;
}

/** What a worker says. */
export type PhotoWord =
  | { readonly kind: 'share'; readonly share: number; readonly words: string }
  | { readonly kind: 'taken'; readonly picture: TakenPicture }
  | { readonly kind: 'straightened'; readonly bitmap: ImageBitmap }
  /** What is wrong, without the picture's name: "is empty: choose another." */
  | { readonly kind: 'refused'; readonly problem: string };

/** A picture that could not be read; the message goes after its name. */
export class PictureRefusal extends Error {}

export class PhotoStopped extends Error {}

export interface JobOptions {
  /** The share that is done, 0 to 1. */
  readonly onShare?: (share: number, words: string) => void;
  readonly signal?: AbortSignal;
}

const run = (
  job: PhotoJob,
  { onShare, signal }: JobOptions
): Promise<Exclude<PhotoWord, { kind: 'share' | 'refused' }>> =>
  new Promise((resolve, reject) => {
    if (signal?.aborted === true) return reject(new PhotoStopped('stopped'));
    const worker = new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module' });
    const end = (): void => {
      worker.terminate();
      signal?.removeEventListener('abort', onAbort);
    };
    const onAbort = (): void => {
      end();
      reject(new PhotoStopped('stopped'));
    };
    signal?.addEventListener('abort', onAbort);
    worker.addEventListener('message', ({ data }: MessageEvent<PhotoWord>) => {
      if (data.kind === 'share') return onShare?.(data.share, data.words);
      end();
      if (data.kind === 'refused') reject(new PictureRefusal(data.problem));
      else resolve(data);
    });
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      end();
      reject(new PictureRefusal('could not be worked on: this browser ran out of memory for it.'));
    });
    worker.postMessage(job);
  });

/** Makes a file ready to be kept. Rejects with a PictureRefusal or PhotoStopped. */
export const takePicture = async (file: Blob, options: JobOptions = {}): Promise<TakenPicture> => {
  const word = await run({ kind: 'take', file }, options);
  if (word.kind !== 'taken') throw new PictureRefusal('could not be read.');
  return word.picture;
};

/** Makes the straightened picture. Rejects with a PictureRefusal or PhotoStopped. */
export const straightenPicture = async (
  job: Omit<Extract<PhotoJob, { kind: 'straighten' }>, 'kind'>,
  options: JobOptions = {}
): Promise<ImageBitmap> => {
  const word = await run({ kind: 'straighten', ...job }, options);
  if (word.kind !== 'straightened') throw new PictureRefusal('could not be straightened.');
  return word.bitmap;
};
