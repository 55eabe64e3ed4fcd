// What was taken to the bed opens from the tablet: a page as it was taken, files under addresses that never change. All else,
// and everything that is sent, goes to the server.

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== location.origin) return;
  if (request.mode === "navigate" && !address.search) event.respondWith(taken(address.pathname, request));
  else if (address.pathname.startsWith("/static/") || address.pathname.endsWith(".webmanifest")) event.respondWith(kept(request));
});

async function taken(path, request) {
  const held = await caches.match(path, { cacheName: "bed-pages" });
  return held ?? fetch(request).catch(() => notTaken());
}

async function kept(request) {
  return (await caches.match(request, { cacheName: "bed-files" })) ?? fetch(request);
}

function notTaken() {
  const words = "This panel was not taken to the bed, and there is no signal. Open it once with a signal and press Take to the bed.";
  return new Response(`<!doctype html><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>No signal</title><p>${words}</p><p><a href="/bed">All panels</a></p>`, {
    status: 503,
    headers: { "content-type": "text/html; charset=utf-8" },
  });
}
