// Keeps the pages of the meets on this phone, so that they open again when the program cannot be reached. It answers
// only reads; what is entered is kept and sent by meet.js.
"use strict";
const STORE = "boundwright-meets-1";
const PATIENCE_MS = 5000;

self.addEventListener("install", () => self.skipWaiting());

self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches.keys()
      .then((names) => Promise.all(names.filter((n) => n.startsWith("boundwright-meets-") && n !== STORE).map((n) => caches.delete(n))))
      .then(() => self.clients.claim()));
});

// the page that was open before this script was there names what it is made of
self.addEventListener("message", (event) => {
  const keep = Array.isArray(event.data && event.data.keep) ? event.data.keep : [];
  event.waitUntil(
    caches.open(STORE).then((store) => Promise.all(keep.map((path) =>
      fetch(path, { credentials: "same-origin" }).then((answer) => answer.ok ? store.put(withoutQuestion(path), answer) : null).catch(() => null)))));
});

self.addEventListener("fetch", (event) => {
  const request = event.request;
  const at = new URL(request.url);
  if (request.method !== "GET" || at.origin !== self.location.origin || request.headers.has("HX-Request")) {
    return;
  }
  if (at.pathname.startsWith("/assets/")) {
    event.respondWith(asset(request));
  } else if (request.mode === "navigate") {
    event.respondWith(page(request, at));
  }
});

// an asset's address carries the hash of its bytes, so a kept one is never an old one
async function asset(request) {
  const store = await caches.open(STORE);
  const kept = await store.match(request);
  if (kept) {
    return kept;
  }
  try {
    const answer = await fetch(request);
    if (answer.ok) {
      await store.put(request, answer.clone());
    }
    return answer;
  } catch (gone) {
    const older = await store.match(request, { ignoreSearch: true });
    if (older) {
      return older;
    }
    throw gone;
  }
}

async function page(request, at) {
  const store = await caches.open(STORE);
  const ours = /^\/meet(\/\d+)?$/.test(at.pathname);
  const kept = ours ? await store.match(at.pathname) : undefined;
  const asked = fetch(request);
  try {
    const answer = await (kept ? Promise.race([asked, later()]) : asked);
    if (ours && answer.ok && answer.type === "basic") {
      await store.put(at.pathname, answer.clone());
    }
    return answer;
  } catch (gone) {
    asked.catch(() => null);
    return kept || away();
  }
}

function later() {
  return new Promise((resolve, reject) => setTimeout(() => reject(new Error("no answer")), PATIENCE_MS));
}

function withoutQuestion(path) {
  return path.startsWith("/assets/") ? path : path.split("?")[0];
}

function away() {
  const text = "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
    + "<title>No connection · boundwright</title><link rel=\"stylesheet\" href=\"/assets/boundwright.css\">"
    + "<main><section class=\"message\"><h1>The program cannot be reached</h1>"
    + "<p>This page needs it. A meet that was open on this phone opens without it, and what you enter there is kept.</p>"
    + "<p><a class=\"button\" href=\"/meet\">To the meets</a></p></section></main></html>";
  return new Response(text, { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } });
}
