import { answerTo, forgetOldShells, keepShell, type Shell } from "./shell.ts";

declare const self: ServiceWorkerGlobalScope;
/** Written in by the build, which alone knows its files (client/vite.config.ts). */
declare const __SHELL__: Shell;

/** The service worker: the pages open where no server answers. What they show and save is their own affair. */
self.addEventListener("install", (event) => {
  event.waitUntil(keepShell(__SHELL__).then(() => self.skipWaiting()));
});

self.addEventListener("activate", (event) => {
  event.waitUntil(forgetOldShells(__SHELL__).then(() => self.clients.claim()));
});

self.addEventListener("fetch", (event) => {
  const answer = answerTo(event.request, __SHELL__, self.location.origin);
  if (answer) event.respondWith(answer);
});
