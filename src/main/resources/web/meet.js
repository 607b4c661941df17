// At a meet the connection comes and goes. Every entry is kept in this phone's own database before its button lights, then sent:
// in order, once, because it carries its own token. What is kept is laid over the page, so that the next athlete is the right one.
(function () {
  "use strict";
  var kept = window.boundwrightKept;
  var OLD_SHELF = "boundwright.meet.kept";
  var STORE = "entries";
  var AGAIN_MS = 10000;
  var shelf = [];
  var sending = false;
  var offset = null; // how far the program's clock is ahead of this phone's [ms]

  if (!window.fetch || !window.indexedDB || !window.crypto || !crypto.getRandomValues) { return; }
  keepPages();
  if (!work()) { return; }

  function work() { return document.getElementById("meet-work"); }
  function attemptForm() { return document.getElementById("attempt-form"); }

  // ---- the shelf: what is kept on this phone, and what was sent but is not on the page yet ----

  var within = kept.database("boundwright-meet", function (db) { db.createObjectStore(STORE, { keyPath: "seq", autoIncrement: true }); });
  function change(act) {
    return within([STORE], "readwrite", function (t, out) {
      act(t.objectStore(STORE)).onsuccess = function (e) { out.value = e.target.result; };
    });
  }
  function keep(entry) {
    return change(function (store) { return store.add(entry); }).then(function (seq) { entry.seq = seq; shelf.push(entry); });
  }
  function again(entry) { return change(function (store) { return store.put(entry); }); }
  function drop(entry) {
    return change(function (store) { return store.delete(entry.seq); }).then(function () {
      shelf = shelf.filter(function (e) { return e.seq !== entry.seq; });
    });
  }
  function load() {
    return within([STORE], "readonly", function (t) {
      t.objectStore(STORE).getAll().onsuccess = function (e) { shelf = e.target.result; };
    });
  }
  // an earlier version of this page kept entries elsewhere
  async function fetchOld() {
    try {
      var old = JSON.parse(localStorage.getItem(OLD_SHELF) || "[]");
      for (var i = 0; i < old.length; i++) {
        if (!shelf.some(function (e) { return e.token === old[i].token; })) {
          old[i].kind = "attempt";
          await keep(old[i]);
        }
      }
      localStorage.removeItem(OLD_SHELF);
    } catch (nothing) { /* it could not be read then either */ }
  }
  function here(e) { return e.path.indexOf(location.pathname + "/") === 0; }
  function unsent(e) { return !e.sent; }
  function waiting(e) { return !e.sent && !e.refused; }
  function field(entry, name) {
    var f = entry.fields.find(function (x) { return x[0] === name; });
    return f ? f[1] : "";
  }
  function of(entry) { return entry.kind === "undo" ? entry.of : field(entry, "entrant") + "." + field(entry, "round"); }

  // ---- what the coach sees of it ----

  // still: the form stays as it is, because it waits for its answer
  function draw(still) {
    var box = document.getElementById("kept");
    var all = shelf.filter(function (e) { return here(e) && unsent(e); });
    var n = all.filter(waiting).length;
    box.hidden = all.length === 0 && !box.dataset.gone;
    box.querySelector(".unsent-head").textContent =
      (n > 0 ? n + " not sent yet. " : "")
      + (box.dataset.gone ? "No connection. " + (n > 0 ? "" : "What you enter is kept on this phone and sent later. ") : "")
      + (n < all.length ? "Not taken: " + (all.length - n) + "." : "");
    box.querySelector("ul").replaceChildren.apply(box.querySelector("ul"), all.map(line));
    overlay(still);
  }
  function line(entry) {
    var li = document.createElement("li");
    var said = document.createElement("span");
    said.textContent = entry.said + (entry.refused ? ": " + entry.refused : "");
    li.appendChild(said);
    if (entry.refused && entry.kind !== "undo") {
      li.appendChild(button("put it back into the form", function () { fill(entry); takeOut(entry); }));
    }
    li.appendChild(button(entry.refused ? "throw it away" : "take back", function () { takeOut(entry); }));
    return li;
  }
  function takeOut(entry) {
    // what is on its way may arrive: then it is taken back there
    if (entry.busy) { notice("It is being sent just now. Take it back when it has arrived."); return; }
    drop(entry).then(function () { draw(); });
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
    var form = attemptForm();
    entry.fields.forEach(function (f) {
      var to = form.elements[f[0]];
      if (to && ["csrf", "token", "result", "upto"].indexOf(f[0]) < 0) { to.value = f[1]; }
    });
  }

  // lays what is kept over the page as the program wrote it
  function overlay(still) {
    var place = work();
    if (!place || !attemptForm()) { return; }
    place.querySelectorAll(".kept-here").forEach(function (e) { e.remove(); });
    place.querySelectorAll("[data-laid]").forEach(function (e) { e.hidden = false; delete e.dataset.laid; });
    var laid = shelf.filter(function (e) { return here(e) && !e.refused && !shown(e); });
    var entered = new Set(place.dataset.entered.split(",").filter(Boolean));
    laid.forEach(function (e) {
      if (e.kind === "undo") { entered.delete(of(e)); } else { entered.add(of(e)); cell(place, e); }
    });
    if (laid.length > 0) {
      // what the page offers to take back is not the newest any more
      place.querySelectorAll("form[data-undo]").forEach(function (f) { var bar = f.parentElement; bar.hidden = true; bar.dataset.laid = "1"; });
      if (!still && !touched() && !complained(place)) { moveOn(place, entered); }
    }
  }
  function complained(place) {
    var said = place.querySelector("#attempt-error");
    return said !== null && said.textContent.trim() !== "";
  }
  function cell(place, entry) {
    var row = place.querySelector(".ranks li[data-entrant='" + field(entry, "entrant") + "'] .series");
    if (!row) { return; }
    var mark = document.createElement("span");
    mark.className = "kept-here";
    mark.textContent = "round " + field(entry, "round") + ": " + what(entry) + (entry.sent ? "" : ", not sent yet");
    row.appendChild(mark);
  }
  function what(entry) {
    var result = field(entry, "result");
    return result === "FOUL" ? "x" : result === "PASS" ? "\u2013" : field(entry, "distance").trim();
  }
  // the next in the order of the rounds, as the program would say
  function moveOn(place, entered) {
    var form = attemptForm();
    var rounds = place.dataset.orders.split(";").map(function (r) { var p = r.split(":"); return { round: p[0], order: (p[1] || "").split(",").filter(Boolean) }; });
    for (var i = 0; i < rounds.length; i++) {
      var round = rounds[i].round;
      var next = rounds[i].order.find(function (id) { return !entered.has(id + "." + round); });
      if (next) {
        form.elements.entrant.value = next;
        form.elements.round.value = round;
        form.querySelector("h2").textContent = "Round " + round + ", next: " + form.elements.entrant.selectedOptions[0].textContent.trim();
        return;
      }
    }
    form.querySelector("h2").textContent = "All rounds are jumped";
  }

  // ---- entering ----

  // whom the coach chose stays chosen, whatever answer comes meanwhile
  document.addEventListener("change", function (event) {
    var form = event.target.form;
    if (form && form === attemptForm() && (event.target.name === "entrant" || event.target.name === "round")) { form.dataset.chosen = "1"; }
  });
  document.addEventListener("submit", function (event) {
    var form = event.target;
    if (form.matches("form[data-keep]")) {
      event.preventDefault();
      if (!form.dataset.busy) { enter(form, event.submitter); }
    } else if (form.matches("form[data-undo]")) {
      event.preventDefault();
      undo(form);
    } else if (form.matches("form[data-online]")) {
      event.preventDefault();
      var data = new FormData(form, event.submitter);
      ask(form.action, data).then(function (a) {
        connection(true);
        if (a.status < 400) { swap(a.text); } else { complain(a.text); }
      }, function () {
        connection(false);
        notice("That needs the connection. Try again when it is back.");
      });
    }
  });

  function entryOf(kind, path, fields, said) {
    return { kind: kind, token: kept.token(), path: path, fields: fields, said: said, at: Date.now(), offset: offset };
  }

  async function enter(form, submitter) {
    var data = new FormData(form);
    var result = submitter ? submitter.value : "VALID";
    data.set("result", result);
    var fields = Array.from(data.entries()).filter(function (f) { return f[0] !== "csrf" && f[0] !== "token"; });
    var entry = entryOf("attempt", new URL(form.action).pathname, fields, inWords(form, data, result));
    // what this phone itself entered of the same attempt was known when this was entered
    entry.own = shelf.filter(function (e) { return here(e) && e.kind !== "undo" && of(e) === of(entry); }).map(function (e) { return e.token; });
    form.dataset.busy = "1";
    notice("");
    try {
      await keep(entry);
    } catch (full) {
      await unkept(entry);
      delete form.dataset.busy;
      return;
    }
    if (submitter) { submitter.dataset.lit = "1"; }
    // from here on what differs was typed or chosen for the next entry
    fieldsOf(form).forEach(function (f) { f.defaultValue = f.value; });
    delete form.dataset.chosen;
    if (sending || document.getElementById("kept").dataset.gone) {
      clear(form);
      delete form.dataset.busy;
      draw();
      send(null);
    } else {
      draw(true);
      send(entry.token);
    }
  }
  // the phone has no room: sent at once, or left in the form and said
  async function unkept(entry) {
    try {
      var answer = await post(entry);
      connection(true);
      swap(answer.text);
      if (answer.status < 400) { notice("Sent, but this phone has no room to keep entries. Make room before the connection goes."); }
    } catch (gone) {
      connection(false);
      notice("Not kept: this phone has no room left, and there is no connection. It still stands in the form. Write it on paper, make room, tap again.");
    }
  }

  async function undo(form) {
    var bar = form.parentElement;
    var entry = entryOf("undo", new URL(form.action).pathname, [], "Take back " + form.dataset.said);
    entry.of = form.dataset.of;
    try {
      await keep(entry);
    } catch (full) {
      notice("Not kept: this phone has no room left. Make room and tap again.");
      return;
    }
    bar.hidden = true;
    draw();
    send(entry.token);
  }

  function inWords(form, data, result) {
    var who = form.elements.entrant.selectedOptions[0].textContent.trim();
    var told = result === "FOUL" ? "foul" : result === "PASS" ? "pass" : String(data.get("distance")).trim() || "valid, no distance";
    var wind = String(data.get("wind")).trim();
    return who + ", round " + data.get("round") + ": " + told + (wind && result !== "PASS" ? ", wind " + wind : "");
  }

  function clear(form) {
    ["distance", "wind", "gap", "shift"].forEach(function (name) { form.elements[name].value = form.elements[name].defaultValue = ""; });
    form.querySelectorAll("[data-lit]").forEach(function (b) { delete b.dataset.lit; });
  }

  // ---- sending ----

  function ask(address, body) {
    var asked = { method: body ? "POST" : "GET", body: body ? new URLSearchParams(body) : undefined, headers: { "HX-Request": "true" } };
    return kept.ask(address, asked, function (answer, text) {
      var made = /data-made="(\d+)"/.exec(text);
      if (made) { offset = Number(made[1]) - Date.now(); }
      return { status: answer.status, text: text, made: made ? Number(made[1]) : 0 };
    });
  }

  function csrf() {
    var f = document.querySelector("input[name=csrf]");
    return f ? f.value : "";
  }

  function post(entry) {
    var body = new URLSearchParams(entry.fields);
    body.set("csrf", csrf());
    body.set("token", entry.token);
    body.set("at", entry.at);
    body.set("offset", entry.offset === null || entry.offset === undefined ? "" : entry.offset);
    body.set("sent", Date.now());
    body.set("own", (entry.own || []).join(","));
    return ask(entry.path, body);
  }

  // one page of this phone at a time
  function alone(act) {
    return navigator.locks ? navigator.locks.request("boundwright-meet", act) : act();
  }

  async function send(live) {
    if (sending) { return; }
    sending = true;
    try {
      await alone(function () { return sendAll(live); });
    } finally {
      sending = false;
      var form = attemptForm();
      if (form) { delete form.dataset.busy; }
    }
  }

  // one after the other, as they were entered; live is the one just tapped
  async function sendAll(live) {
    var last = null;
    var entry = null;
    try {
      await load();
      while ((entry = shelf.find(waiting))) {
        entry.busy = true;
        var answer = await post(entry);
        if (answer.status === 403) {
          // the browser was started anew since: its form token is another one
          await renew();
          answer = await post(entry);
        }
        delete entry.busy;
        if (answer.status < 400) {
          entry.sent = answer.made || 1;
          await again(entry);
          last = answer.text;
        } else if (answer.status === 422 && entry.token === live && !touched()) {
          await drop(entry);
          last = answer.text;
        } else if (answer.status < 500) {
          entry.refused = sentence(answer.text);
          await again(entry);
        } else {
          throw new Error("the program is in trouble");
        }
        draw(Boolean(live));
      }
      if (last !== null && !touched()) { swap(last); } else if (last !== null) { notice(""); }
      connection(true);
      if (last !== null) { refreshKept(); }
    } catch (gone) {
      if (entry) { delete entry.busy; }
      var form = attemptForm();
      if (form && live && !touched() && shelf.some(function (e) { return e.token === live && e.kind !== "undo" && waiting(e); })) { clear(form); }
      connection(false);
    }
  }

  async function renew() {
    var answer = await ask(location.pathname, null);
    var page = new DOMParser().parseFromString(answer.text, "text/html");
    var f = page.querySelector("input[name=csrf]");
    if (f) { document.querySelectorAll("input[name=csrf]").forEach(function (i) { i.value = f.value; }); }
  }

  function touched() {
    var form = attemptForm();
    return form !== null && (form.dataset.chosen === "1" || fieldsOf(form).some(function (f) { return f.value !== f.defaultValue; }));
  }
  function fieldsOf(form) { return Array.from(form.querySelectorAll("input[autocomplete]")); }

  // ---- the page ----

  function swap(text) {
    var page = new DOMParser().parseFromString(text, "text/html");
    var fresh = page.getElementById("meet-work");
    if (fresh) {
      work().replaceWith(document.adoptNode(fresh));
      if (window.htmx) { window.htmx.process(work()); }
    }
  }
  function shown(e) { return here(e) && e.sent && e.sent <= Number(work().dataset.made); }
  // what the page shows that opens here is in what this phone keeps of the page, too
  function prune() {
    var over = shelf.filter(shown);
    over.forEach(drop);
    shelf = shelf.filter(function (e) { return over.indexOf(e) < 0; });
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
    kept.keepPage([location.pathname]).catch(function () { /* without it the page works as long as it stays open */ });
  }
  // the page that opens without a connection is the one with what was sent
  function refreshKept() {
    if (navigator.serviceWorker && navigator.serviceWorker.controller) {
      navigator.serviceWorker.controller.postMessage({ keep: [location.pathname] });
    }
  }

  load().then(async function () {
    await fetchOld();
    prune();
    window.addEventListener("online", function () { send(null); });
    kept.offline(function () { connection(false); });
    document.addEventListener("visibilitychange", function () {
      if (!document.hidden) { load().then(function () { draw(); if (shelf.some(waiting)) { send(null); } }); }
    });
    setInterval(function () {
      if (document.getElementById("kept").dataset.gone) {
        ask(location.pathname, null).then(function (a) { connection(true); if (a.status < 400) { send(null); } }, function () {});
      }
    }, AGAIN_MS);
    // opened from what this phone keeps, the page does not know that the program is away
    draw();
    if (shelf.some(waiting)) {
      send(null);
    } else {
      ask(location.pathname, null).then(function () { connection(true); }, function () { connection(false); });
    }
  }, function () { notice("This phone keeps nothing for this page (a private window, perhaps): enter with a connection only."); });
})();
