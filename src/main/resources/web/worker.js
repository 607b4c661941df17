// Keeps the runway page and the pages of the meets on this phone, so that they open again when the program cannot be reached. It
// answers only reads; what is entered is kept and sent by the pages themselves.
"use strict";
const STORE = "boundwright-pages-2";
const OURS = /^\/(runway|meet(\/\d+(\/day)?)?)$/;
const PATIENCE_MS = 5000;

self.addEventListener("install", () => self.skipWaiting());

self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches.keys()
      .then((names) => Promise.all(names.filter((n) => n.startsWith("boundwright-") && n !== STORE).map((n) => caches.delete(n))))
      .then(() => self.clients.claim()));
});

// the page that was open before this script was there names what it is made of
self.addEventListener("message", (event) => {
  const keep = Array.isArray(event.data && event.data.keep) ? event.data.keep : [];
  event.waitUntil(
    caches.open(STORE).then((store) => Promise.all(keep.map((path) =>
      fetch(path, { credentials: "same-origin" }).then((answer) => keepable(answer) ? put(store, withoutQuestion(path), answer) : null).catch(() => null)))));
});

self.addEventListener("fetch", (event) => {
  const request = event.request;
  const at = new URL(request.url);
  if (request.method !== "GET" || at.origin !== self.location.origin || request.headers.has("HX-Request")) {
    return;
  }
  if (at.pathname.startsWith("/assets/")) {
    event.respondWith(asset(request, at));
  } else if (request.mode === "navigate") {
    event.respondWith(page(request, at));
  }
});

// an asset's address carries the hash of its bytes, so a kept one is never an old one
async function asset(request, at) {
  const store = await caches.open(STORE);
  const kept = await store.match(request);
  if (kept) {
    return kept;
  }
  try {
    const answer = await fetch(request);
    if (answer.ok) {
      await put(store, at.pathname + at.search, answer.clone());
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

// a new version of a part takes the place of the older one; a full phone keeps what it has
async function put(store, address, answer) {
  try {
    await store.put(address, answer);
  } catch (full) {
    return;
  }
  const path = address.split("?")[0];
  const all = await store.keys();
  await Promise.all(all.filter((r) => {
    const u = new URL(r.url);
    return u.pathname === path && u.pathname + u.search !== address;
  }).map((r) => store.delete(r)));
}

function keepable(answer) {
  return answer.ok && !answer.redirected && answer.type === "basic";
}

async function page(request, at) {
  const store = await caches.open(STORE);
  const ours = OURS.test(at.pathname);
  const kept = ours ? await store.match(at.pathname) : undefined;
  const asked = fetch(request);
  try {
    const answer = await (kept ? Promise.race([asked, later()]) : asked);
    if (ours && keepable(answer)) {
      await put(store, at.pathname, answer.clone());
    }
    return answer.status >= 502 && kept ? kept : answer;
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
    + "<title>No connection \u00b7 boundwright</title><link rel=\"stylesheet\" href=\"/assets/boundwright.css\">"
    + "<main><section class=\"message\"><h1>The program cannot be reached</h1>"
    + "<p>This page needs it. Two kinds of page work without it once they were open on this phone, and keep what you enter there: the runway and a meet.</p>"
    + "<p class=\"actions\"><a class=\"button strong\" href=\"/runway\">To the runway</a> <a class=\"button\" href=\"/meet\">To the meets</a></p></section></main></html>";
  return new Response(text, { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } });
}
