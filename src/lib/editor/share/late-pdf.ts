// The PDF writer, fetched when the first PDF is asked for: it is larger than all the rest of sharing.
import { Late } from '../core/late.svelte.ts';

export const latePdf = new Late(() => import('./pdf-works.ts'));
