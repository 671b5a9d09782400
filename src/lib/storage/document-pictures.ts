// Which pictures a document shows, and which of them are missing.
import type { ChassisDocument } from '#document/index.ts';

/** The hashes of the pictures that a document's photos show. */
export const picturesOf = ({ photos }: Pick<ChassisDocument, 'photos'>): Set<string> =>
  new Set(Object.values(photos).map(({ picture }) => picture.hash));

/** A sentence on photos whose picture is not there, or null.
 *  @param isThere by hash */
export const missingPicturesNote = (
  { photos }: Pick<ChassisDocument, 'photos'>,
  isThere: (hash: string) => boolean
): string | null => {
  const missing = Object.values(photos).filter(({ picture }) => !isThere(picture.hash));
  if (missing.length === 0) return null;
  const names = missing.slice(0, 5).map(({ name }) => `“${name}”`);
  const more = missing.length > names.length ? ` and ${missing.length - names.length} more` : '';
  const words =
    missing.length === 1
      ? `the picture of ${names.join('')} is missing: its place is kept, add it again`
      : `${missing.length} pictures are missing, of ${names.join(', ')}${more}: their places are kept, add them again`;
  return words;
};
