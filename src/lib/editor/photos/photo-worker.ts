// The worker's side of a photo job.
import { warpPixels } from '#drawing/photos/warp.ts';
import { isOnItsSide, uprightTransform } from '#storage/picture-file/orientation.ts';
import { checkPicture, keptSize, tooManyBytes } from './picture-limits.ts';
import { PictureRefusal, type PhotoJob, type PhotoWord, type TakenPicture } from './photo-jobs.ts';

const say = (word: PhotoWord, transfer: Transferable[] = []): void => {
  postMessage(word, { transfer });
};
const share = (value: number, words: string): void => say({ kind: 'share', share: value, words });

/** How well a JPEG is kept: wires and prints on parts stay readable. Looked at, no source. */
const jpegQuality = 0.88;

const decode = async (bytes: Uint8Array, type: string): Promise<ImageBitmap> => {
  try {
    return await createImageBitmap(new Blob([bytes as BlobPart], { type }));
  } catch {
    throw new PictureRefusal(
      'is broken, or too large for this browser: it could not be decoded. Save it anew, or smaller.'
    );
  }
};

const canvasOf = (
  width: number,
  height: number
): { canvas: OffscreenCanvas; context: OffscreenCanvasRenderingContext2D } => {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d');
  if (context === null) {
    throw new PictureRefusal('could not be drawn: this browser ran out of memory for it.');
  }
  return { canvas, context };
};

const take = async (file: Blob): Promise<TakenPicture> => {
  const heavy = tooManyBytes(file.size);
  if (heavy !== null) throw new PictureRefusal(heavy);
  share(0.05, 'reading');
  const checked = checkPicture(new Uint8Array(await file.arrayBuffer()));
  if (!checked.ok) throw new PictureRefusal(checked.problem);
  const { bare, type, orientation } = checked.head;
  share(0.2, 'decoding');
  // Without its metadata no browser turns it: it is turned here, in all of them alike.
  const bitmap = await decode(bare, type);
  share(0.6, 'scaling');
  const lying = keptSize(bitmap.width, bitmap.height);
  const upright = isOnItsSide(orientation) ? { width: lying.height, height: lying.width } : lying;
  const { canvas, context } = canvasOf(upright.width, upright.height);
  // What a picture leaves clear is paper.
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, upright.width, upright.height);
  context.imageSmoothingQuality = 'high';
  context.setTransform(...uprightTransform(orientation, lying.width, lying.height));
  context.drawImage(bitmap, 0, 0, lying.width, lying.height);
  bitmap.close();
  share(0.8, 'packing');
  const packed = await canvas.convertToBlob({ type: 'image/jpeg', quality: jpegQuality });
  share(1, 'keeping');
  return {
    bytes: new Uint8Array(await packed.arrayBuffer()),
    type: 'image/jpeg',
    ...upright
  };
};

const straighten = async ({
  bytes,
  type,
  straightening
}: Extract<PhotoJob, { kind: 'straighten' }>): Promise<ImageBitmap> => {
  share(0.05, 'decoding');
  const bitmap = await decode(bytes, type);
  const { width, height } = bitmap;
  const { context } = canvasOf(width, height);
  context.drawImage(bitmap, 0, 0);
  bitmap.close();
  const photo = context.getImageData(0, 0, width, height);
  const straight = warpPixels(photo, straightening, (done) =>
    share(0.2 + 0.7 * done, 'straightening')
  );
  const out = canvasOf(straight.width, straight.height);
  const data = new ImageData(straight.width, straight.height);
  data.data.set(straight.data);
  out.context.putImageData(data, 0, 0);
  return out.canvas.transferToImageBitmap();
};

const work = async (job: PhotoJob): Promise<void> => {
  try {
    if (!('OffscreenCanvas' in globalThis)) {
      throw new PictureRefusal(
        'cannot be worked on: this browser is too old to do it. A current one can.'
      );
    }
    if (job.kind === 'take') {
      const picture = await take(job.file);
      say({ kind: 'taken', picture }, [picture.bytes.buffer as ArrayBuffer]);
    } else {
      const bitmap = await straighten(job);
      say({ kind: 'straightened', bitmap }, [bitmap]);
    }
  } catch (error) {
    const problem =
      error instanceof PictureRefusal
        ? error.message
        : 'could not be worked on: this browser ran out of memory for it.';
    say({ kind: 'refused', problem });
  }
};

addEventListener('message', ({ data }: MessageEvent<PhotoJob>) => {
  void work(data);
});
