// What writes files for others, fetched when the first is asked for: the PDF writer alone is large.
import { Late } from '../core/late.svelte.ts';

export const shareWorks = new Late(() => import('./share-works.ts'));
