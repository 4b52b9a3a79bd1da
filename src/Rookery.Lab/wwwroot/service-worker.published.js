// Keeps the lab's own files, so that it works without a network after its first load. It keeps nothing else: no run, no
// text, no file that somebody opened, nothing about a person.
//
// Every version has a cache of its own, filled whole or not at all: each file is checked against the hash that the list of
// files has of it, so that files of two versions never stand side by side. The browser looks for a new version at every
// load; once its files are here the old ones go, and the next load shows the new.
self.importScripts("./service-worker-assets.js");
const prefix = "rookery-lab-";
const name = prefix + self.assetsManifest.version;
const wanted = self.assetsManifest.assets.filter(asset =>
    !/\.(br|gz)$/.test(asset.url) && !/^service-worker/.test(asset.url));

self.addEventListener("install", event => event.waitUntil((async () => {
    const cache = await caches.open(name);
    // "no-cache" asks the server whether what the browser has is still right: what the first load fetched is not fetched
    // twice.
    await cache.addAll(wanted.map(asset =>
        new Request(asset.url, { integrity: asset.hash, cache: "no-cache", credentials: "omit" })));
    await self.skipWaiting();
})()));

self.addEventListener("activate", event => event.waitUntil((async () => {
    for (const key of await caches.keys())
        if (key.startsWith(prefix) && key !== name) await caches.delete(key);
    await self.clients.claim();
})()));

self.addEventListener("fetch", event => {
    const request = event.request;
    if (request.method !== "GET" || new URL(request.url).origin !== self.location.origin) return;
    event.respondWith((async () => {
        const cache = await caches.open(name);
        const kept = request.mode === "navigate"
            ? await cache.match("index.html")
            : await cache.match(request, { ignoreSearch: true });
        return kept ?? fetch(request);
    })());
});
