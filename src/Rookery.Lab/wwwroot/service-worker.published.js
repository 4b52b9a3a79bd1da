// Keeps the lab's own files, so that it works without a network after its first load. It keeps nothing else: no run, no
// text, nothing about a person.
self.importScripts("./service-worker-assets.js");
const name = "rookery-lab-" + self.assetsManifest.version;
const wanted = self.assetsManifest.assets
    .map(asset => asset.url)
    .filter(url => !/\.(br|gz)$/.test(url) && !/^service-worker/.test(url));

self.addEventListener("install", event => event.waitUntil((async () => {
    const cache = await caches.open(name);
    await cache.addAll(wanted.map(url => new Request(url, { cache: "no-cache" })));
    await self.skipWaiting();
})()));

self.addEventListener("activate", event => event.waitUntil((async () => {
    for (const key of await caches.keys())
        if (key.startsWith("rookery-lab-") && key !== name) await caches.delete(key);
    await self.clients.claim();
})()));

self.addEventListener("fetch", event => {
    if (event.request.method !== "GET") return;
    event.respondWith((async () => {
        const cache = await caches.open(name);
        const address = event.request.mode === "navigate" ? "index.html" : event.request;
        return await cache.match(address, { ignoreSearch: true }) ?? fetch(event.request);
    })());
});
