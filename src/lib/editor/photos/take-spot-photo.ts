// Asks for a picture of one spot, by camera or file, and ties it to the terminal, part or wire.
import type { Id } from '#document/index.ts';
import type { EditorState } from '../core/editor-state.svelte.ts';
import { choosePictures } from './picture-files.ts';
import { unitOfSpot, type SpotOf } from './spot-photos.ts';

/** The ids of the photos that were made; none where the person gave up. To be called from a click or key.
 *  Progress and problems are shown by the page. On a telephone the system offers its camera. */
export const takeSpotPhoto = async (
  { photos, documents }: EditorState,
  of: SpotOf
): Promise<readonly Id[]> => {
  const files = await choosePictures({ many: true });
  return photos.take(files, { of, unit: unitOfSpot(documents.document, of) });
};
