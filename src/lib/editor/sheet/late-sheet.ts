// The makers of the drawing, fetched once the schedule is on screen.
import { Late } from '../core/late.svelte.ts';

export const lateSheet = new Late(() => import('./sheet-works.ts'));
