// The share desk's hands in the browser. Nothing here decides anything.
import { browserHost } from '../files/browser-host.ts';
import type { ShareHost } from './share-desk.svelte.ts';

export const browserShareHost: ShareHost = {
  download: browserHost.download,
  today: browserHost.today,
  now: () => new Date(),
  address: () => `${location.origin}${location.pathname}`,
  copy: (text) => navigator.clipboard.writeText(text)
};
