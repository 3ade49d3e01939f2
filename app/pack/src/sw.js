// The service worker: holds the whole app, one version at a time, and answers for it with no network.
// `pack` fills in the list of files with their SHA-256 digests, the policy and the version.
"use strict";

const VERSION = "__VERSION__";
const POLICY = "__POLICY__";
const FILES = "__FILES__"; // [path below the scope, digest, media type]

const SCOPE = registration.scope;
const CACHE = `app-${VERSION} ${SCOPE}`; // caches belong to the origin: another sub-path is another app
const RECEIVED = "received";
const META_POLICY = /<meta http-equiv="Content-Security-Policy"[^>]*>\s*/;

const at = (path) => new URL(path, SCOPE).href;

// All or nothing: the version counts as installed only when every file is here with the right bytes.
// It then waits: the page decides when to switch.
self.addEventListener("install", (event) => event.waitUntil(install()));

async function install() {
  const fresh = !(await caches.has(CACHE));
  const cache = await caches.open(CACHE);
  try {
    const earlier = await kept();
    await Promise.all(FILES.map(async ([path, digest, media]) => {
      const bytes = await wanted(path, digest, earlier.get(digest));
      await cache.put(at(path), new Response(served(path, bytes), { headers: headers(digest, media) }));
    }));
  } catch (fault) {
    if (fresh) await caches.delete(CACHE);
    throw fault;
  }
}

/** What earlier versions keep: digest → cached response. */
async function kept() {
  const found = new Map();
  for (const name of await ours()) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      const response = await cache.match(request);
      found.set(response.headers.get("x-digest"), response);
    }
  }
  return found;
}

/** The bytes with this digest: from an earlier version, from the browser's cache, from the server. */
async function wanted(path, digest, earlier) {
  const load = (cache) => fetch(at(path), { cache, credentials: "same-origin" });
  for (const source of [async () => earlier?.clone(), () => load("default"), () => load("reload")]) {
    const response = await source();
    if (!response || !response.ok) continue;
    const bytes = await response.arrayBuffer();
    if (await sha256(bytes) === digest) return bytes;
  }
  throw new Error(`${path} does not have the bytes of version ${VERSION}`);
}

async function sha256(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Two policies only narrow each other: with the header the page needs no meta tag. */
function served(path, bytes) {
  return path === "index.html" ? new TextDecoder().decode(bytes).replace(META_POLICY, "") : bytes;
}

function headers(digest, media) {
  return {
    "content-type": media,
    "content-security-policy": POLICY, // workers have no policy unless a header brings it
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
    "x-digest": digest,
  };
}

self.addEventListener("activate", (event) => event.waitUntil(activate()));

async function activate() {
  for (const name of await ours()) if (name !== CACHE) await caches.delete(name);
  await clients.claim();
}

async function ours() {
  return (await caches.keys()).filter((name) => name.startsWith("app-") && name.endsWith(` ${SCOPE}`));
}

self.addEventListener("message", (event) => {
  if (event.data && event.data.type === "switch") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  url.search = url.hash = "";
  if (!url.href.startsWith(SCOPE)) return;
  if (event.request.method === "GET") event.respondWith(answer(event.request, url.href));
  if (event.request.method === "POST" && url.href === at("received")) event.respondWith(receive(event.request));
});

async function answer(request, href) {
  const cache = await caches.open(CACHE);
  const found = await cache.match(href === SCOPE ? at("index.html") : href);
  if (found) return found;
  return request.mode === "navigate" ? Response.redirect(SCOPE) : fetch(request);
}

/** A file sent from another app: kept until the page takes it. */
async function receive(request) {
  const file = (await request.formData()).get("file");
  if (!(file instanceof File)) return Response.redirect(at("./#/import"), 303);
  const cache = await caches.open(RECEIVED);
  const name = encodeURIComponent(file.name);
  await cache.put(at("received/file"), new Response(file, { headers: { "x-name": name } }));
  return Response.redirect(at("./#/import?received"), 303);
}
