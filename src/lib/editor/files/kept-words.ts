// How a kept chassis reads in the list: its wires, how far the work has come, and when it was changed.
import { wireStates } from '#document/index.ts';
import type { KeptEntry } from '#storage/index.ts';
import { counted } from '../core/words.ts';

/** "40 wires: 28 found, 12 fitted"; empty where it is not known. */
export const progressWords = ({ states }: Pick<KeptEntry, 'states'>): string => {
  if (states === undefined) return '';
  const all = wireStates.reduce((sum, state) => sum + states[state], 0);
  const reached = wireStates.filter((state) => states[state] > 0);
  if (all === 0) return 'no wires yet';
  const steps = reached.map((state) => `${states[state]} ${state}`).join(', ');
  return `${counted(all, 'wire')}: ${reached.length === 1 ? `all ${reached[0]}` : steps}`;
};

const minuteMs = 60_000;

/** "a minute ago", "today, 14:02", or the date and the time. A time that lies ahead, as after the clock was set
 *  back, is given in full. */
export const whenWords = (time: number, now: number, locale?: string): string => {
  const ago = now - time;
  if (ago >= 0 && ago < minuteMs) return 'just now';
  const clock = new Intl.DateTimeFormat(locale, { timeStyle: 'short' }).format(time);
  const day = (at: number): string => new Date(at).toDateString();
  if (ago >= 0 && day(time) === day(now)) return `today, ${clock}`;
  return new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' }).format(time);
};
