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

/** On this machine's own address another program may serve the same port later: its server is asked first. */
const ON_LOOPBACK = ['127.0.0.1', 'localhost', '[::1]'].includes(self.location.hostname);
/** Set once another program has answered at this address: from then on nothing is answered here. */
let elsewhere = false;

/** The paths of all files of the page. */
const OWN = new Set(FILES.map((file) => new URL(file, self.registration.scope).pathname));

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  // Only what the page is made of: the job that the command serves, notices and whatever else lies here go on as they came.
  if (elsewhere || request.method !== 'GET' || url.origin !== self.location.origin || !OWN.has(url.pathname)) return;
  event.respondWith(ON_LOOPBACK && request.mode === 'navigate' ? answerIfOurs(request) : answer(request));
});

function kept(request: Request): Promise<Response | undefined> {
  return caches.open(CACHE).then((cache) => cache.match(request, { ignoreSearch: true }));
}

async function answer(request: Request): Promise<Response> {
  return (await kept(request)) ?? fetch(request);
}

/** The page as it is kept, where the command or nobody serves this port; another program's own answer, and no more of this worker. */
async function answerIfOurs(request: Request): Promise<Response> {
  const served = await fetch(request).catch(() => null);
  if (served === null || served.headers.get('server') === 'fielded') return answer(request);
  elsewhere = true;
  await self.registration.unregister();
  return served;
}
