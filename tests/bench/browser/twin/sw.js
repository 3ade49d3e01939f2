// Answers for the twin with no network: its three files, as they were when it was installed.

const CACHE = "twin";

self.addEventListener("install", (event) => event.waitUntil(
  caches.open(CACHE).then((cache) => cache.addAll(["./", "./twin.js"])),
));

self.addEventListener("activate", (event) => event.waitUntil(clients.claim()));

self.addEventListener("fetch", (event) => event.respondWith(
  caches.match(event.request, { ignoreSearch: true }).then((kept) => kept ?? fetch(event.request)),
));
