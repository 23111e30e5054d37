import type { Desk } from '../desk/desk.ts';

/** Has the browser keep the page, so that it opens without a network; a notice offers a newer version. */
export function registerWorker(desk: Desk): void {
  if (import.meta.env.DEV || !('serviceWorker' in navigator) || !location.protocol.startsWith('http')) return;
  const { serviceWorker } = navigator;
  const offer = (newer: ServiceWorker) => {
    desk.notice.value = {
      kind: 'note',
      text: 'A newer version of this page is here.',
      action: {
        name: 'Use it',
        run: () => {
          serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
          newer.postMessage('take over');
        },
      },
    };
  };
  serviceWorker
    .register('worker.js')
    .then((registration) => {
      // Without one at work before, this is the first visit, not an update.
      const isUpdate = () => serviceWorker.controller !== null;
      if (registration.waiting && isUpdate()) offer(registration.waiting);
      registration.addEventListener('updatefound', () => {
        const newer = registration.installing;
        newer?.addEventListener('statechange', () => {
          if (newer.state === 'installed' && isUpdate()) offer(newer);
        });
      });
    })
    // Without being kept, the page works as long as there is a network.
    .catch(() => {});
}
