// The rules, fetched once the schedule is on screen. Until they are there nothing has been judged, and
// whatever shows findings has to say so.
import { Late } from './late.svelte.ts';

export const lateChecks = new Late(() => import('#checks/check-again.ts'));
