// What the pages that work without a connection share: a database of this phone, answers that are waited for only so long, the identity of an
// entry, and the pages themselves kept by the browser.
(function () {
  "use strict";
  var PATIENCE_MS = 8000;
  // the machine itself is reached without any network
  var loopback = /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/.test(location.hostname);

  /**
   * A database; make(db) lays its stores out. Answers within(stores, mode, work): one transaction; work(transaction, out) may set out.value.
   * A promise that is kept means that the browser has written it, on the disk and not only on its way there.
   */
  function database(name, make) {
    var opened = null;
    function open() {
      if (opened) { return opened; }
      opened = new Promise(function (resolve, reject) {
        var asked = indexedDB.open(name, 1);
        asked.onupgradeneeded = function () { make(asked.result); };
        asked.onsuccess = function () {
          asked.result.onversionchange = function () { asked.result.close(); opened = null; };
          asked.result.onclose = function () { opened = null; };
          resolve(asked.result);
        };
        asked.onerror = function () { opened = null; reject(asked.error); };
        asked.onblocked = function () { opened = null; reject(new Error("blocked")); };
      });
      return opened;
    }
    return function within(stores, mode, work) {
      return open().then(function (db) {
        return new Promise(function (resolve, reject) {
          var t = db.transaction(stores, mode, mode === "readwrite" ? { durability: "strict" } : {});
          var out = { value: undefined };
          t.oncomplete = function () { resolve(out.value); };
          t.onabort = function () { reject(t.error || new Error("aborted")); };
          t.onerror = function () { /* onabort says it */ };
          try { work(t, out); } catch (e) { try { t.abort(); } catch (ended) { /* over */ } reject(e); }
        });
      });
    };
  }

  /** Asks the program; gives up after a while. read(answer, text) makes of it what the page needs. */
  function ask(path, asked, read) {
    var stop = new AbortController();
    var timer = setTimeout(function () { stop.abort(); }, PATIENCE_MS);
    return fetch(path, Object.assign({ credentials: "same-origin", signal: stop.signal }, asked)).then(function (answer) {
      return answer.text().then(function (text) { return read(answer, text); });
    }).finally(function () { clearTimeout(timer); });
  }

  function token() {
    return Array.from(crypto.getRandomValues(new Uint8Array(16)), function (b) { return b.toString(16).padStart(2, "0"); }).join("");
  }

  /** Calls act when the browser says that there is no network, where that means anything. */
  function offline(act) { if (!loopback) { window.addEventListener("offline", act); } }

  /** Lets the browser keep these paths and what this page is made of. */
  function keepPage(paths) {
    return navigator.serviceWorker.register("/worker.js").then(function () { return navigator.serviceWorker.ready; }).then(function (registration) {
      var made = performance.getEntriesByType("resource").map(function (r) { return new URL(r.name); })
        .filter(function (u) { return u.origin === location.origin && u.pathname.indexOf("/assets/") === 0; })
        .map(function (u) { return u.pathname + u.search; });
      registration.active.postMessage({ keep: made.concat(paths) });
    });
  }

  window.boundwrightKept = { database: database, ask: ask, token: token, offline: offline, keepPage: keepPage };
})();
