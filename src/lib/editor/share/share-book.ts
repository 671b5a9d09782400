// The leaves of sharing and what stands behind them, as one piece: many small ones would cost the first visit more.
export { readShareLink } from '#storage/share-link.ts';
export { browserShareHost } from './browser-share-host.ts';
export { default as ComparePage } from './ComparePage.svelte';
export { default as HandOnPage } from './HandOnPage.svelte';
export { ShareDesk } from './share-desk.svelte.ts';
