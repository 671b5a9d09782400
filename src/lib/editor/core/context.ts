// The editor's state for the components below it.
import { createContext } from 'svelte';
import type { ShareDesk } from '../share/share-desk.svelte.ts';
import type { Late } from './late.svelte.ts';
import type { EditorState } from './editor-state.svelte.ts';

export const [useEditor, provideEditor] = createContext<EditorState>();

/** Links, files and comparisons, for the leaves of sharing. */
export const [useShare, provideShare] = createContext<Late<ShareDesk>>();
