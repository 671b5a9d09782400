// Ties what is typed in the schedule to its keeper: kept as it is typed, and put back into its cells when the
// chassis is opened again.
import { untrack } from 'svelte';
import type { EditorState } from '../core/editor-state.svelte.ts';
import type { KeptChassis } from './kept-chassis.svelte.ts';
import type { TypedKeeper } from './typed-keeper.ts';

/** To be called while a component is made.
 *  @param isOpen whether there is a chassis in the hand */
export const keepTyped = (
  editor: EditorState,
  kept: KeptChassis,
  keeper: TypedKeeper,
  isOpen: () => boolean
): void => {
  const putBack = async (id: string): Promise<void> => {
    const typed = await keeper.open(id);
    // By then it is known which window writes this chassis: what is typed there is not for this one.
    await kept.flush();
    if (kept.isFollowing || editor.documents.document.id !== id) return;
    if (editor.schedule.takeUp(typed))
      editor.tell('what was being typed when the page was closed is in its place again');
  };
  // By its id alone: an edit is no other chassis, and what is typed since must not be put back over it.
  const id = $derived(editor.documents.document.id);
  $effect(() => {
    const opened = id;
    if (isOpen()) untrack(() => void putBack(opened));
  });
  $effect(() => {
    const { typed } = editor.schedule;
    if (isOpen() && !kept.isFollowing) keeper.keep(editor.documents.document.id, typed);
  });
};
