// At a meet the connection comes and goes. Every attempt is first kept on this phone, then sent; one that could not be
// sent stays here until it was, and is sent once only, because it carries its own token.
(function () {
  "use strict";
  var SHELF = "boundwright.meet.kept";
  var PATIENCE_MS = 8000;
  var AGAIN_MS = 10000;
  var sending = false;

  if (!shelfWorks()) { return; }
  keepPages();
  if (!work()) { return; }

  function work() { return document.getElementById("meet-work"); }

  // ---- the shelf: what is kept on this phone ----

  function shelfWorks() {
    try {
      localStorage.setItem(SHELF + ".try", "1");
      localStorage.removeItem(SHELF + ".try");
      return Boolean(window.fetch && window.crypto && crypto.getRandomValues);
    } catch (full) {
      return false;
    }
  }
  function kept() {
    try {
      var all = JSON.parse(localStorage.getItem(SHELF) || "[]");
      return Array.isArray(all) ? all : [];
    } catch (damaged) {
      return [];
    }
  }
  function shelve(all) { localStorage.setItem(SHELF, JSON.stringify(all)); }
  function take(token) { shelve(kept().filter(function (e) { return e.token !== token; })); draw(); }
  function refuse(token, why) {
    shelve(kept().map(function (e) { if (e.token === token) { e.refused = why; } return e; }));
    draw();
  }
  function freshToken() {
    return Array.from(crypto.getRandomValues(new Uint8Array(16)), function (b) { return b.toString(16).padStart(2, "0"); }).join("");
  }

  // ---- what the coach sees of it ----

  function draw() {
    var box = document.getElementById("kept");
    if (!box) { return; }
    var all = kept().filter(function (e) { return e.path.indexOf(location.pathname + "/") === 0; });
    box.hidden = all.length === 0 && !box.dataset.gone;
    var waiting = all.filter(function (e) { return !e.refused; }).length;
    box.querySelector(".unsent-head").textContent =
      (box.dataset.gone ? "No connection. " : "")
      + (waiting > 0 ? "Kept on this phone, not yet sent: " + waiting + "." : box.dataset.gone ? "What you enter is kept on this phone and sent later." : "")
      + (waiting < all.length ? " Not taken: " + (all.length - waiting) + "." : "");
    box.querySelector("ul").replaceChildren.apply(box.querySelector("ul"), all.map(line));
  }
  function line(entry) {
    var li = document.createElement("li");
    var said = document.createElement("span");
    said.textContent = entry.said + (entry.refused ? ": " + entry.refused : "");
    li.appendChild(said);
    if (entry.refused) { li.appendChild(button("put it back into the form", function () { fill(entry); take(entry.token); })); }
    li.appendChild(button(entry.refused ? "throw it away" : "take back", function () { take(entry.token); }));
    return li;
  }
  function button(name, act) {
    var b = document.createElement("button");
    b.type = "button";
    b.className = "button";
    b.textContent = name;
    b.addEventListener("click", act);
    return b;
  }
  function connection(there) {
    var box = document.getElementById("kept");
    if (there) { delete box.dataset.gone; } else { box.dataset.gone = "1"; }
    draw();
  }
  function fill(entry) {
    var form = document.getElementById("attempt-form");
    entry.fields.forEach(function (f) {
      var field = form.elements[f[0]];
      if (field && f[0] !== "csrf" && f[0] !== "token" && f[0] !== "result") { field.value = f[1]; }
    });
  }

  // ---- entering ----

  document.addEventListener("submit", function (event) {
    var form = event.target;
    if (form.matches("form[data-keep]")) {
      event.preventDefault();
      if (!form.dataset.busy) { enter(form, event.submitter); }
    } else if (form.matches("form[data-online]")) {
      event.preventDefault();
      ask(form.action, new FormData(form)).then(function (a) {
        connection(true);
        if (a.status < 400) { swap(a.text); } else { complain(a.text); }
      }, function () {
        connection(false);
        notice("That needs the connection. Try again when it is back.");
      });
    }
  });

  function enter(form, submitter) {
    var data = new FormData(form);
    var result = submitter ? submitter.value : "VALID";
    data.set("result", result);
    var fields = Array.from(data.entries()).filter(function (f) { return f[0] !== "csrf" && f[0] !== "token"; });
    var entry = { token: freshToken(), path: new URL(form.action).pathname, fields: fields, said: inWords(form, data, result) };
    shelve(kept().concat([entry]));
    notice("");
    draw();
    if (sending) {
      moveOn(form);
    } else {
      form.dataset.busy = "1";
      send(entry.token);
    }
  }

  function inWords(form, data, result) {
    var who = form.elements.entrant.selectedOptions[0].textContent.trim();
    var what = result === "FOUL" ? "foul" : result === "PASS" ? "pass" : String(data.get("distance")).trim() || "valid, no distance";
    var wind = String(data.get("wind")).trim();
    return who + ", round " + data.get("round") + ": " + what + (wind && result !== "PASS" ? ", wind " + wind : "");
  }

  // the next in the order of the round, without asking the program
  function moveOn(form) {
    var who = form.elements.entrant;
    if (who.selectedIndex + 1 < who.options.length) {
      who.selectedIndex += 1;
    } else {
      var rounds = Array.from(form.querySelectorAll("input[name=round]"));
      var at = rounds.findIndex(function (r) { return r.checked; });
      who.selectedIndex = 0;
      if (at + 1 < rounds.length) { rounds[at + 1].checked = true; }
    }
    ["distance", "wind", "gap", "shift"].forEach(function (name) { form.elements[name].value = ""; });
    form.querySelector("h2").textContent =
      "Round " + new FormData(form).get("round") + ", next: " + who.selectedOptions[0].textContent.trim();
  }

  // ---- sending ----

  function ask(address, body) {
    var stop = new AbortController();
    var timer = setTimeout(function () { stop.abort(); }, PATIENCE_MS);
    return fetch(address, {
      method: body ? "POST" : "GET",
      body: body ? new URLSearchParams(body) : undefined,
      headers: { "HX-Request": "true" },
      credentials: "same-origin",
      signal: stop.signal
    }).then(function (answer) {
      return answer.text().then(function (text) { return { status: answer.status, text: text }; });
    }).finally(function () { clearTimeout(timer); });
  }

  function csrf() {
    var field = document.querySelector("input[name=csrf]");
    return field ? field.value : "";
  }

  function post(entry) {
    var body = new URLSearchParams(entry.fields);
    body.set("csrf", csrf());
    body.set("token", entry.token);
    return ask(entry.path, body);
  }

  // one after the other, as they were entered; live is the one just tapped
  async function send(live) {
    if (sending) { return; }
    sending = true;
    var last = null;
    var untouched = live ? true : !touched();
    try {
      for (;;) {
        var entry = kept().filter(function (e) { return !e.refused; })[0];
        if (!entry) { break; }
        var answer = await post(entry);
        if (answer.status === 403) {
          // the browser was started anew since: its form token is another one
          await renew();
          answer = await post(entry);
        }
        if (answer.status < 400) {
          take(entry.token);
          last = answer.text;
        } else if (answer.status === 422 && entry.token === live) {
          take(entry.token);
          last = answer.text;
        } else if (answer.status < 500) {
          refuse(entry.token, sentence(answer.text));
        } else {
          throw new Error("the program is in trouble");
        }
      }
      connection(true);
      if (last !== null && untouched) {
        swap(last);
      } else if (last !== null) {
        notice("");
      }
    } catch (gone) {
      connection(false);
      if (live && kept().some(function (e) { return e.token === live; })) { moveOn(document.getElementById("attempt-form")); }
    } finally {
      sending = false;
      var form = document.getElementById("attempt-form");
      if (form) { delete form.dataset.busy; }
    }
  }

  async function renew() {
    var answer = await ask(location.pathname, null);
    var page = new DOMParser().parseFromString(answer.text, "text/html");
    var field = page.querySelector("input[name=csrf]");
    if (field) { document.querySelectorAll("input[name=csrf]").forEach(function (f) { f.value = field.value; }); }
  }

  function touched() {
    var form = document.getElementById("attempt-form");
    return form !== null && Array.from(form.querySelectorAll("input[autocomplete]")).some(function (f) { return f.value !== f.defaultValue; });
  }

  // ---- the page ----

  function swap(text) {
    var page = new DOMParser().parseFromString(text, "text/html");
    var fresh = page.getElementById("meet-work");
    if (fresh) {
      work().replaceWith(document.adoptNode(fresh));
      if (window.htmx) { window.htmx.process(work()); }
    }
  }
  function sentence(text) {
    var page = new DOMParser().parseFromString(text, "text/html");
    var said = page.querySelector("#attempt-error pre, .refusal pre");
    return said ? said.textContent.trim() : "it was not taken.";
  }
  function complain(text) { notice(sentence(text)); }
  function notice(text) {
    var place = document.getElementById("notice");
    place.replaceChildren();
    if (!text) { return; }
    var box = document.createElement("div");
    box.className = "refusal loud";
    var p = document.createElement("p");
    p.textContent = text;
    box.appendChild(p);
    place.appendChild(box);
  }

  function keepPages() {
    if (!("serviceWorker" in navigator)) { return; }
    navigator.serviceWorker.register("/worker.js").then(function () { return navigator.serviceWorker.ready; }).then(function (registration) {
      var parts = performance.getEntriesByType("resource")
        .map(function (r) { return new URL(r.name); })
        .filter(function (u) { return u.origin === location.origin && u.pathname.indexOf("/assets/") === 0; })
        .map(function (u) { return u.pathname + u.search; });
      registration.active.postMessage({ keep: parts.concat([location.pathname]) });
    }).catch(function () { /* without it the page works as long as it stays open */ });
  }

  window.addEventListener("online", function () { send(null); });
  window.addEventListener("offline", function () { connection(false); });
  document.addEventListener("visibilitychange", function () { if (!document.hidden && kept().length > 0) { send(null); } });
  setInterval(function () {
    var box = document.getElementById("kept");
    if (box && box.dataset.gone) {
      ask(location.pathname, null).then(function (a) { connection(true); if (a.status < 400) { send(null); } }, function () {});
    }
  }, AGAIN_MS);

  // opened from what this phone keeps, the page does not know that the program is away
  draw();
  if (kept().length > 0) {
    send(null);
  } else {
    ask(location.pathname, null).then(function () { connection(true); }, function () { connection(false); });
  }
})();
