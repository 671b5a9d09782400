// The editor's state for the components below it.
import { createContext } from 'svelte';
import type { EditorState } from './editor-state.svelte.ts';

export const [useEditor, provideEditor] = createContext<EditorState>();
