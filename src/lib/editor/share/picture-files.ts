// Photos as a file of another kind: PDF takes JPEG and PNG alone, a canvas wants pixels.
import type { DisplayList, PictureAsset, PictureFile } from '#drawing/index.ts';
import type { PictureSource } from '../sheet/paint-shape.ts';

const bitmapOf = ({ bytes, type }: PictureFile): Promise<ImageBitmap> =>
  createImageBitmap(new Blob([bytes as BlobPart], { type }));

/** The same picture as JPEG where it is neither that nor PNG. */
export const toJpeg = async (file: PictureFile): Promise<PictureFile> => {
  if (file.type === 'image/jpeg' || file.type === 'image/png') return file;
  const bitmap = await bitmapOf(file);
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0);
  bitmap.close();
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.88 });
  return { bytes: new Uint8Array(await blob.arrayBuffer()), type: 'image/jpeg' };
};

/** The pixels of all pictures of a drawing, at hand. */
export const decodePictures = async (
  list: DisplayList,
  find: (asset: PictureAsset) => PictureFile | undefined
): Promise<PictureSource> => {
  const bitmaps = new Map<string, ImageBitmap>();
  for (const { shape } of list.items) {
    if (shape.kind !== 'picture' || bitmaps.has(shape.asset.key)) continue;
    const file = find(shape.asset);
    if (file !== undefined) bitmaps.set(shape.asset.key, await bitmapOf(file));
  }
  return ({ key }) => bitmaps.get(key) ?? null;
};
