// The offline copy for the pages below it; null where the browser has none.
import { createContext } from 'svelte';
import type { OfflineCopy } from './offline-copy.svelte.ts';

export const [useOfflineCopy, provideOfflineCopy] = createContext<OfflineCopy | null>();
