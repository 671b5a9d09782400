// Reading and writing of spreadsheets' text, fetched once the schedule is on screen.
import { Late } from '../core/late.svelte.ts';

export const lateCellText = new Late(() => import('./cell-text.ts'));
