/// <reference lib="webworker" />
import { base, build, files, prerendered, version } from '$service-worker';

const worker = globalThis as unknown as ServiceWorkerGlobalScope;
const CACHE = `ohmyard-${version}`;
const everything = [...build, ...files, ...prerendered];

worker.addEventListener('install', (event) => {
  const fill = async () => {
    const cache = await caches.open(CACHE);
    await cache.addAll(everything);
    await worker.skipWaiting();
  };
  event.waitUntil(fill());
});

worker.addEventListener('activate', (event) => {
  const clean = async () => {
    for (const key of await caches.keys()) {
      if (key.startsWith('ohmyard-') && key !== CACHE) await caches.delete(key);
    }
    await worker.clients.claim();
  };
  event.waitUntil(clean());
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin) return;
  // The room of a workshop is live, or it is not there.
  if (pathname.startsWith(`${base}/room/`)) return;
  event.respondWith(answer(request));
});

/** From the cache first; an address without its closing slash is sent on to the one with it; a page that is not there is the first page. */
async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  const { pathname } = new URL(request.url);
  const kept = await cache.match(pathname);
  if (kept) return kept;
  if (await cache.match(`${pathname}/`)) return Response.redirect(`${pathname}/`);
  try {
    return await fetch(request);
  } catch {
    const home = request.mode === 'navigate' ? await cache.match(`${base}/`) : undefined;
    return home ?? Response.error();
  }
}
