// The pin walk, fetched once the schedule is on screen.
import { Late } from '../core/late.svelte.ts';

export const lateWalk = new Late(() => import('./walk-works.ts'));
