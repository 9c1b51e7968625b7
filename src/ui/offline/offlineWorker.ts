/**
 * The service worker of the built page: keeps all of its files on the device, and answers from them. The build writes the list of
 * files in. A new one waits until the page tells it to take over: no page is changed under the hands of whoever works on it.
 */
import { PrecacheController } from "workbox-precaching/PrecacheController.js";
import { PrecacheRoute } from "workbox-precaching/PrecacheRoute.js";
import { registerRoute } from "workbox-routing/registerRoute.js";
import { CacheFirst } from "workbox-strategies/CacheFirst.js";
import { dropOlder, nameFor, type KeptFile } from "./keptFiles";
import { TAKE } from "./take";

interface LastingEvent extends Event {
  waitUntil(job: Promise<unknown>): void;
}

interface OfflineScope {
  /** Put in by the build. */
  readonly __WB_MANIFEST: readonly KeptFile[];
  readonly registration: ServiceWorkerRegistration;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(kind: "install" | "activate", heard: (event: LastingEvent) => void): void;
  addEventListener(kind: "message", heard: (event: MessageEvent) => void): void;
}
declare const self: OfflineScope;

// oxlint-disable-next-line no-underscore-dangle -- the name that the build looks for
const files = self.__WB_MANIFEST;
const { scope } = self.registration;
const own = nameFor(scope, files);

// A store for each version, so that one that comes in never takes anything from the one that is at work.
const kept = new PrecacheController({ cacheName: own });
kept.addToCacheList([...files]);

self.addEventListener("install", (event) => void kept.install(event));
self.addEventListener("activate", (event) =>
  // The page of a first visit works without a network from then on, too.
  event.waitUntil(dropOlder(caches, scope, own).then(() => self.clients.claim())),
);
self.addEventListener("message", ({ data }) => {
  if (data === TAKE) void self.skipWaiting();
});

registerRoute(new PrecacheRoute(kept, { directoryIndex: "index.html", cleanURLs: false }));

// A page of the version before, still open in another tab, asks for parts that this version has no more.
registerRoute(
  ({ url }) => url.href.startsWith(`${scope}assets/`),
  new CacheFirst({
    plugins: [
      { cachedResponseWillBeUsed: async ({ request }) => caches.match(request), cacheWillUpdate: async () => null },
    ],
  }),
);
