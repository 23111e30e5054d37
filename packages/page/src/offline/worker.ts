/// <reference lib="webworker" />
// Keeps one whole version of the page, so that it opens without a network. A newer version is fetched beside it and takes
// over when no tab shows the old one, or when a tab asks: a page never runs on parts of two versions. Jobs are not kept
// here but in the browser's own store, which no version touches.
declare const self: ServiceWorkerGlobalScope;

/** Filled in when the page is built: a name that changes with any file, and every file. */
const VERSION = '__VERSION__';
const FILES: readonly string[] = JSON.parse('__FILES__');
const CACHE = `fielded ${VERSION}`;

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches.open(CACHE).then((cache) => cache.addAll(FILES.map((file) => new Request(file, { cache: 'reload' })))),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(
          names.filter((name) => name.startsWith('fielded ') && name !== CACHE).map((name) => caches.delete(name)),
        ),
      )
      .then(() => self.clients.claim()),
  );
});

self.addEventListener('message', (event) => {
  if (event.data === 'take over') void self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  // The job that the command serves is read anew each time.
  if (request.method !== 'GET' || url.origin !== self.location.origin || url.pathname.endsWith('/job.json')) return;
  const wanted = request.mode === 'navigate' && !url.pathname.endsWith('/fielded.html') ? './' : request;
  event.respondWith(
    caches
      .open(CACHE)
      .then((cache) => cache.match(wanted, { ignoreSearch: true }))
      .then((kept) => kept ?? fetch(request)),
  );
});
