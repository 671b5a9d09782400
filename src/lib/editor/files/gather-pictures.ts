// The pictures that a document shows, out of the store beside it.
import type { ChassisDocument } from '#document/index.ts';
import {
  missingPicturesNote,
  picturesOf,
  type PictureStore,
  type StoredPicture
} from '#storage/index.ts';

/** By hash; those that the store does not have are left out. */
export const gatherPictures = async (
  documents: readonly ChassisDocument[],
  store: PictureStore
): Promise<Map<string, StoredPicture>> => {
  const found = new Map<string, StoredPicture>();
  for (const hash of new Set(documents.flatMap((document) => [...picturesOf(document)]))) {
    const picture = await store.read(hash);
    if (picture !== null) found.set(hash, picture);
  }
  return found;
};

/** A sentence on the pictures of a document that the store does not have, or null. */
export const noteMissing = async (
  document: ChassisDocument,
  store: PictureStore
): Promise<string | null> => {
  const there = new Set<string>();
  for (const hash of picturesOf(document)) if (await store.has(hash)) there.add(hash);
  return missingPicturesNote(document, (hash) => there.has(hash));
};
