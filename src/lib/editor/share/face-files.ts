// Where the bundled faces lie, for whoever writes them into a file. They are the files that the page's own
// style sheet names.
import type { FaceFile } from '#drawing/paper/face-runs.ts';
import sansLatin from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-400-normal.woff?url';
import sansLatinBold from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-600-normal.woff?url';
import sansExtra from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-ext-400-normal.woff?url';
import sansExtraBold from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-ext-600-normal.woff?url';
import sansGreek from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-greek-400-normal.woff?url';
import sansGreekBold from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-greek-600-normal.woff?url';
import sansCyrillic from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-cyrillic-400-normal.woff?url';
import sansCyrillicBold from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-cyrillic-600-normal.woff?url';
import monoLatin from '@fontsource/ibm-plex-mono/files/ibm-plex-mono-latin-400-normal.woff?url';
import monoLatinBold from '@fontsource/ibm-plex-mono/files/ibm-plex-mono-latin-600-normal.woff?url';
import monoExtra from '@fontsource/ibm-plex-mono/files/ibm-plex-mono-latin-ext-400-normal.woff?url';
import monoExtraBold from '@fontsource/ibm-plex-mono/files/ibm-plex-mono-latin-ext-600-normal.woff?url';
import monoCyrillic from '@fontsource/ibm-plex-mono/files/ibm-plex-mono-cyrillic-400-normal.woff?url';
import monoCyrillicBold from '@fontsource/ibm-plex-mono/files/ibm-plex-mono-cyrillic-600-normal.woff?url';

const addresses: Readonly<Partial<Record<FaceFile, string>>> = {
  'ibm-plex-sans-latin-400-normal': sansLatin,
  'ibm-plex-sans-latin-600-normal': sansLatinBold,
  'ibm-plex-sans-latin-ext-400-normal': sansExtra,
  'ibm-plex-sans-latin-ext-600-normal': sansExtraBold,
  'ibm-plex-sans-greek-400-normal': sansGreek,
  'ibm-plex-sans-greek-600-normal': sansGreekBold,
  'ibm-plex-sans-cyrillic-400-normal': sansCyrillic,
  'ibm-plex-sans-cyrillic-600-normal': sansCyrillicBold,
  'ibm-plex-mono-latin-400-normal': monoLatin,
  'ibm-plex-mono-latin-600-normal': monoLatinBold,
  'ibm-plex-mono-latin-ext-400-normal': monoExtra,
  'ibm-plex-mono-latin-ext-600-normal': monoExtraBold,
  'ibm-plex-mono-cyrillic-400-normal': monoCyrillic,
  'ibm-plex-mono-cyrillic-600-normal': monoCyrillicBold
};

/** The bytes of a face. Rejects where it cannot be fetched. */
export const loadFace = async (file: FaceFile): Promise<Uint8Array> => {
  const address = addresses[file];
  const answer = address === undefined ? null : await fetch(address);
  if (!answer?.ok) throw new Error(`the face ${file} could not be fetched`);
  return new Uint8Array(await answer.arrayBuffer());
};
