import { Workbox } from 'workbox-window/Workbox.js';
import { ownScript } from '../own-script.ts';

/** What there is to say of versions: one stands ready, or another tab has taken it. */
export type VersionNews = 'ready' | 'taken-elsewhere';

export interface Versions {
  /** Makes the new version the one that serves this app, and then loads the page again. */
  take(): void;
}

/** How long after the last look for a new version the next is due, ms. */
const LOOK_EVERY_MS = 60 * 60 * 1000;

/** The first seconds of the first visit belong to the notebook and its plan: to keep the app here fetches every file of it. */
const AFTER_MS = 3000;

/**
 * Keeps the app on this device, so that it works without a network, and tells when a newer one stands ready.
 * Nothing changes until `take` is called: the page goes on with the files that it began with.
 *
 * @returns null where the browser offers no such thing (private windows of some, pages not served safely)
 */
export function followVersions(onNews: (news: VersionNews) => void): Versions | null {
  if (!('serviceWorker' in navigator)) return null;
  const workbox = new Workbox(ownScript(new URL('service-worker.js', document.baseURI)), {
    updateViaCache: 'none',
  });
  let taking = false;
  workbox.addEventListener('waiting', () => onNews('ready'));
  workbox.addEventListener('controlling', (event) => {
    if (taking) location.reload();
    else if (event.isUpdate || event.isExternal) onNews('taken-elsewhere');
  });
  // No network, or a browser that keeps nothing: the page works all the same.
  const isHere = navigator.serviceWorker.controller !== null;
  setTimeout(() => workbox.register({ immediate: true }).catch(() => undefined), isHere ? 0 : AFTER_MS);
  navigator.serviceWorker.controller?.postMessage({ type: 'DROP_OLDER' });
  lookNowAndThen(workbox);
  return {
    take() {
      taking = true;
      workbox.messageSkipWaiting();
    },
  };
}

/** The browser looks only when a page is loaded, and this one may stay open for days. */
function lookNowAndThen(workbox: Workbox): void {
  let lookedAt = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - lookedAt < LOOK_EVERY_MS) return;
    lookedAt = Date.now();
    workbox.update().catch(() => undefined);
  });
}
