// Keeps the whole editor in the browser, so that it opens without a network. Everything comes from where the
// editor itself came from; nothing else is ever asked for. A newer version is fetched beside the one at work and
// waits until a window says so.
import { CachedCopy } from '#editor/offline/cached-copy.ts';
import { build, files, prerendered, version } from '$service-worker';

const worker = globalThis as unknown as ServiceWorkerGlobalScope;

/** For those who look at the sources. */
const isNeeded = (path: string): boolean => !path.endsWith('/screenshot.png');
const paths = [...build, ...files.filter(isNeeded), ...prerendered];
const copy = new CachedCopy({ caches, fetch: (request) => fetch(request) }, version, paths);

worker.addEventListener('install', (event) => event.waitUntil(copy.install()));
worker.addEventListener('activate', (event) =>
  event.waitUntil(copy.dropOld().then(() => worker.clients.claim()))
);
worker.addEventListener('message', ({ data }) => {
  if (data === 'take over') void worker.skipWaiting();
});
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const isOurs = new URL(request.url).origin === worker.location.origin;
  if (request.method === 'GET' && isOurs) event.respondWith(copy.answer(request));
});
