// What feeds a region and what is left open on it, in words.
import { formatVolts } from '#quantity/index.ts';
import { openEndLabel, type OpenEnd } from './open-ends.ts';
import type { Region } from './regions.ts';

/** "V10-1", "V10-1 and V3-5", "V10-1, V3-5 and 4 more". */
export function openEndWords(ends: readonly OpenEnd[]): string {
  const shown = ends.slice(0, 2).map(openEndLabel);
  if (ends.length <= 2) return shown.join(' and ');
  return `${shown.join(', ')} and ${ends.length - 2} more`;
}

const doubts = new WeakMap<readonly OpenEnd[], string>();

/** "what V10-1 and V3-5 do there". */
export function doubtWords(ends: readonly OpenEnd[]): string {
  const known = doubts.get(ends);
  if (known !== undefined) return known;
  const words = `what ${openEndWords(ends)} ${ends.length === 1 ? 'does' : 'do'} there`;
  doubts.set(ends, words);
  return words;
}

const mostNamed = 3;

const feeds = new WeakMap<object, string>();

/** "V17 and T2", "285 V declared on wire 42". */
export function feedWords(region: Pick<Region, 'sources' | 'held'>): string {
  const known = feeds.get(region);
  if (known !== undefined) return known;
  const words = describeFeeds(region);
  feeds.set(region, words);
  return words;
}

function describeFeeds({ sources, held }: Pick<Region, 'sources' | 'held'>): string {
  const parts = new Set(sources.map(({ element }) => element?.part.reference ?? ''));
  const declared = held.map(({ amount }) => `${formatVolts(amount.value)} ${amount.basis}`);
  const all = [...parts, ...declared];
  const shown = all.slice(0, mostNamed);
  if (all.length > mostNamed) shown.push(`${all.length - mostNamed} more`);
  if (shown.length < 2) return shown[0] ?? 'nothing that is recorded';
  return `${shown.slice(0, -1).join(', ')} and ${shown[shown.length - 1] ?? ''}`;
}
