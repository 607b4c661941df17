// The runway in one hand. A tap is kept on this phone first, then it is shown as logged, learned from and sent.
(function () {
  "use strict";
  var shelf = window.boundwrightShelf;
  var kept = window.boundwrightKept;
  var send = window.boundwrightSend;
  var order = window.boundwrightOrder;
  var draw = window.boundwrightDraw;
  var root = document.getElementById("rw");
  var GO_ON_MS = 1600;
  var LOOK_MS = 2600;
  var BOUNCE_MS = 600;
  var AFTER_THUMB_MS = 80;

  var model = null;
  var S = {
    page: null, people: [], top: {}, taps: [], who: 0, hand: 0, once: null, before: [], tapes: {}, free: {}, look: null, last: null,
    giving: null, trouble: "", busy: false, cards: {}, seat: {}
  };
  var goOn = null;

  // ---- beginning ----

  async function begin() {
    var told = {};
    try {
      told = await shelf.told();
      S.taps = await shelf.taps();
    } catch (shut) {
      S.trouble = "This browser keeps nothing for this page. Taps are sent at once while there is a connection; without one they cannot be logged.";
    }
    S.seat = told.seat || {};
    S.before = S.seat.before || [];
    model = await import(root.dataset.model);
    var known = null;
    if (told.squad) {
      var parts = Object.keys(told).filter(function (k) { return k.indexOf("part:") === 0 && told[k].of === told.squad.nr; })
        .map(function (k) { return { id: Number(k.slice(5)), text: told[k].text, hash: told[k].hash, top: told[k].top }; });
      known = { head: told.squad.head, nr: told.squad.nr, hashes: Object.assign({}, told.squad.hashes) };
      parts.forEach(function (p) { known.hashes[p.id] = p.hash; });
      open(told.squad, parts);
    }
    listen();
    await send.start({ csrf: root.dataset.csrf, known: known, offset: told.offset, hear: { told: heard, state: show } });
    if (!S.page) { draw.waiting(send.gone() ? "No connection, and this phone has not seen the squad yet. " + send.why() : "Fetching the squad\u2026"); }
  }

  function open(squad, parts) {
    S.page = squad.page;
    S.top = Object.assign({}, squad.top);
    model.open(squad.parcel);
    refresh(parts);
    relearn();
    if (S.seat.day !== S.page.day) {
      S.before = S.seat.came && S.seat.came.length > 0 ? S.seat.came : S.before;
      S.seat = { day: S.page.day, who: 0, hand: 0, came: [], before: S.before };
      S.tapes = {};
      S.free = {};
    }
    S.who = has(S.who) ? S.who : has(S.seat.who) ? S.seat.who : ids()[0] || 0;
    S.hand = S.seat.hand || 0;
    show();
  }

  function refresh(parts) {
    if (parts.length > 0) { model.refresh(parts.map(function (p) { return p.text; }).join("\n")); }
    parts.forEach(function (p) { S.top[p.id] = p.top; });
  }

  // what is not yet on the program's side is learned on top of what is
  function relearn() {
    model.entries(waiting().map(function (t) { return t.line; }).join("\n"));
    changed();
  }

  function changed() {
    S.cards = {};
    S.people = model.squad();
  }

  async function heard(news) {
    var before = S.taps;
    try {
      var all = await shelf.taps();
      var there = new Set(all.map(function (t) { return t.token; }));
      // what was tapped while the shelf was read is not lost from sight
      S.taps = all.concat(S.taps.filter(function (t) { return !there.has(t.token) && (before.indexOf(t) < 0 || t.nr === undefined); }));
    } catch (shut) { /* said already */ }
    if (news.squad) {
      open(news.squad, []);
    } else if (S.page) {
      refresh(news.parts);
      relearn();
      show();
    }
  }

  // ---- who, and what ----

  function ids() { return S.people.map(function (p) { return p.athleteId; }); }
  function has(id) { return ids().indexOf(id) >= 0; }
  function person(id) { return S.people.filter(function (p) { return p.athleteId === id; })[0] || { athleteId: id, name: "", held: false, drills: [] }; }
  function waiting() { return S.taps.filter(function (t) { return t.state === "waiting"; }); }
  function mine() { return S.taps.filter(function (t) { return t.day === S.page.day; }); }
  function takenBack(token) { return S.taps.some(function (t) { return t.kind === "UNDO" && t.of === token && t.state !== "refused"; }); }
  function doer(tap) {
    var to = tap.athleteId;
    S.taps.forEach(function (t) { if (t.kind === "HAND" && t.of === tap.token && t.state !== "refused") { to = t.to; } });
    return to;
  }
  // the athletes of this phone's reps of today, in order
  function came() {
    return S.page ? mine().filter(function (t) { return t.kind === "REP" && t.state !== "refused" && !takenBack(t.token); }).map(doer) : [];
  }

  // the planned order of the day, with what everybody has done of it on whatever phone
  function plan() {
    var done = {};
    S.people.forEach(function (p) { done[p.athleteId] = p.drills.reduce(function (n, d) { return n + d.repsDone; }, 0); });
    return { order: S.page.order || [], done: done };
  }

  function card(id, drill) {
    var key = id + "/" + drill;
    if (!S.cards[key]) { S.cards[key] = model.card(id, drill); }
    return S.cards[key];
  }

  // the drill by hand holds for all who come; each goes on from there when the reps are done
  function drillOf(id) {
    if (S.once && S.once.id === id) { return S.once.drill; }
    var all = person(id).drills;
    var open = all.filter(function (d) { return d.drill >= S.hand && d.repsDone < d.repsPlanned; })[0];
    return open ? open.drill : all.length > 0 ? all[all.length - 1].drill : 0;
  }

  // what the next rep is: the drill, or what the coach wrote in its place
  function asked(id) {
    var c = card(id, drillOf(id));
    var free = S.free[id] && S.free[id].drill === c.drill ? S.free[id] : {};
    return {
      drill: c.drill, sand: c.inSand, sequence: free.sequence || c.sequence, steps: free.steps !== undefined ? free.steps : c.steps,
      surface: free.surface || c.surface, own: free.sequence !== undefined || free.steps !== undefined || free.surface !== undefined
    };
  }

  // the tape lies where it lay for the last rep of this drill today, until the coach says that it was moved
  function tapeKey(id) { var a = asked(id); return [id, a.sequence, a.steps, a.surface].join("/"); }
  function tapeOf(id) {
    var a = asked(id);
    var c = card(id, a.drill);
    if (!a.sand) { return null; }
    if (S.tapes[tapeKey(id)] !== undefined) { return S.tapes[tapeKey(id)]; }
    return a.own ? null : c.lay_m !== null ? c.lay_m : c.mark_m;
  }
  function moveTape(id, mark_m) { S.tapes[tapeKey(id)] = mark_m; }

  // ---- doing ----

  function written(fields) {
    return Object.keys(fields).filter(function (k) { return fields[k] !== null && fields[k] !== undefined && fields[k] !== ""; })
      .map(function (k) { return k + "=" + encodeURIComponent(String(fields[k])); }).join("&");
  }

  /** Keeps a tap, then learns from it; answers false if it could neither be kept nor sent. */
  async function enter(tap, fields) {
    tap.token = kept.token();
    tap.day = S.page.day;
    tap.state = "waiting";
    tap.line = written(Object.assign({ token: tap.token, kind: tap.kind, athleteId: tap.athleteId, atMs: Date.now(), offsetMs: send.offset() }, fields));
    // what makes no sense is said now, not when it is sent
    model.tidy(tap.line);
    try {
      tap.nr = await shelf.keep(tap);
    } catch (full) {
      return sendAtOnce(tap, full);
    }
    S.trouble = "";
    var said = "";
    if (!S.taps.some(function (t) { return t.token === tap.token; })) {
      S.taps.push(tap);
      try { said = model.add(tap.line) || ""; } catch (refused) { said = String(refused.message || refused); }
      changed();
    }
    send.run();
    return { said: said };
  }

  async function sendAtOnce(tap, why) {
    var reason = why && why.name === "QuotaExceededError" ? "This phone's storage is full" : "This phone cannot keep taps";
    try {
      await send.direct(tap.token, tap.line);
      S.trouble = reason + ". This one was sent at once; without a connection none can be logged. Make room on the phone.";
      tap.state = "sent";
      S.taps.push(tap);
      return { said: "" };
    } catch (gone) {
      S.trouble = reason + (gone instanceof TypeError || gone.name === "AbortError" ? " and there is no connection" : ": " + gone.message)
        + ". This was not logged. Write it down, and make room on the phone.";
      return null;
    }
  }

  async function log(outcome, button) {
    if (S.busy || !S.page || !has(S.who)) { return; }
    S.busy = true;
    stopGoingOn();
    draw.busy(true);
    var id = S.who;
    try {
      var a = asked(id);
      var lengths = draw.lengths(model);
      if (lengths.refused) { draw.refused(lengths.refused); return; }
      draw.refused("");
      var mark = a.sand ? tapeOf(id) : null;
      var abandoned = outcome === "ABANDONED";
      var look = S.look;
      var tap = {
        kind: "REP", athleteId: id, drill: a.drill, outcome: outcome,
        looked: look !== null, faults: look === null ? [] : look.slice()
      };
      var done = await enter(tap, {
        sequence: a.sequence, steps: a.steps, surface: a.surface, outcome: outcome,
        mark_m: mark, landing_m: abandoned ? null : lengths.landing_m, prints: lengths.prints, after: abandoned ? lengths.after : null,
        looked: tap.looked ? "yes" : "no", faults: tap.faults.join(",")
      });
      if (done === null) { return; }
      draw.light(button);
      draw.emptyLengths();
      if (S.once && S.once.id === id) { S.once = null; }
      S.look = null;
      S.last = { tap: tap, of: tap.token, id: id, outcome: outcome, said: done.said, going: true };
      keepSeat();
      wait(GO_ON_MS);
    } catch (e) {
      S.trouble = "This was not logged: " + (e.message || e);
    } finally {
      show();
      setTimeout(function () { S.busy = false; draw.busy(false); }, BOUNCE_MS);
    }
  }

  // the page goes on by itself, after a moment in which the look at this rep can still be said
  function wait(ms) {
    clearTimeout(goOn);
    goOn = setTimeout(leave, ms);
  }
  function leave() {
    if (thumb) { goOn = setTimeout(leave, AFTER_THUMB_MS); return; }
    goOn = null;
    if (S.last) { S.last.going = false; }
    var next = order.next(came(), S.before, ids(), S.who, plan());
    draw.light(null);
    if (next) { turnTo(next); }
  }
  function stopGoingOn() {
    if (goOn) { clearTimeout(goOn); goOn = null; if (S.last) { S.last.going = false; } draw.light(null); }
  }

  function turnTo(id) {
    stopGoingOn();
    if (S.once && S.once.id !== id) { S.once = null; }
    S.who = id;
    S.look = null;
    S.giving = null;
    draw.emptyLengths();
    keepSeat();
    show();
  }

  function keepSeat() {
    S.seat = { day: S.page.day, who: S.who, hand: S.hand, came: came(), before: S.before };
    shelf.tell("seat", S.seat).catch(function () { /* only the place on the page */ });
  }

  // null is not looked at, none is clean; a fault may be named with its contact, as knee-up@3
  function toggled(faults, key) {
    if (key === "") { return faults !== null && faults.length === 0 ? null : []; }
    var fault = key.split("@")[0];
    var rest = (faults || []).filter(function (k) { return key === fault ? k.split("@")[0] !== fault : k !== key && k !== fault; });
    var there = faults !== null && (key === fault ? rest.length < faults.length : faults.indexOf(key) >= 0);
    if (!there) { return rest.concat([key]); }
    if (key !== fault && !rest.some(function (k) { return k.split("@")[0] === fault; })) { rest.push(fault); }
    return rest.length === 0 ? null : rest;
  }

  // a chip belongs to the rep just logged while the page still stands there, else to the next one
  async function touch(key) {
    var just = S.last && S.last.going ? S.last.tap : null;
    var faults = just ? (just.looked ? just.faults.slice() : null) : S.look;
    faults = toggled(faults, key);
    if (!just) { S.look = faults; show(); return; }
    wait(LOOK_MS);
    // said before it is kept: the next chip may be pressed before the phone has written this one, and builds on it
    var before = { looked: just.looked, faults: just.faults };
    just.looked = faults !== null;
    just.faults = faults || [];
    var done = await enter({ kind: "LOOK", athleteId: just.athleteId, of: just.token },
      { of: just.token, looked: faults === null ? "no" : "yes", faults: (faults || []).join(",") });
    if (done === null) { Object.assign(just, before); }
    show();
  }

  // of names a rep: its token, or its number where it was not tapped on a phone
  async function undo(of, id) {
    stopGoingOn();
    var done = await enter({ kind: "UNDO", athleteId: id, of: of }, { of: of });
    if (done !== null) {
      S.last = { undone: true, id: id, said: done.said };
      turnTo(id);
    }
    show();
  }

  async function hand(of, from, to) {
    stopGoingOn();
    S.giving = null;
    if (to !== from) {
      var done = await enter({ kind: "HAND", athleteId: from, of: of, to: to }, { of: of, to: to });
      if (done !== null) { S.last = { of: of, id: to, from: from, handed: true, said: done.said }; }
      keepSeat();
    }
    show();
  }

  async function throwAway(tap) {
    try { await shelf.drop([tap.nr]); S.taps = S.taps.filter(function (t) { return t !== tap; }); relearn(); } catch (shut) { S.trouble = "It could not be thrown away."; }
    show();
  }

  // ---- the page ----

  // while a thumb is down nothing under it is drawn anew: the tap would fall on a button that is gone, and be lost
  var thumb = false;
  var owed = false;
  function lifted() {
    thumb = false;
    if (owed) { owed = false; show(); }
  }
  document.addEventListener("pointerdown", function () { thumb = true; }, true);
  document.addEventListener("click", lifted);
  ["pointerup", "pointercancel"].forEach(function (kind) {
    document.addEventListener(kind, function () { setTimeout(lifted, AFTER_THUMB_MS); }, true);
  });

  function show() {
    if (!S.page) { return; }
    if (thumb) { owed = true; return; }
    var there = has(S.who);
    draw.all({
      S: S, id: S.who, asked: there ? asked(S.who) : null, card: there ? card(S.who, asked(S.who).drill) : null, person: person(S.who),
      tape_m: there ? tapeOf(S.who) : null, model: model, five: order.lastOnes(came(), ids(), S.who, 5),
      next: order.after(came(), S.before, ids(), S.who, plan()), name: function (id) { return person(id).name; },
      waiting: waiting(), refused: S.taps.filter(function (t) { return t.state === "refused"; }), gone: send.gone(), why: send.why()
    });
  }

  function listen() {
    draw.listen({
      log: log, touch: touch, turnTo: turnTo, undo: undo, hand: hand, throwAway: throwAway,
      last: function () { return S.last; },
      give: function (of, id) { stopGoingOn(); S.giving = S.giving && S.giving.of === of ? null : { of: of, id: id }; show(); },
      previous: function () { turnTo(order.previous(came(), ids(), S.who)); },
      next: function () { turnTo(order.after(came(), S.before, ids(), S.who, plan())); },
      drill: function (d) { S.hand = d; S.once = { id: S.who, drill: d }; S.free = {}; keepSeat(); show(); },
      tape: function (m) { moveTape(S.who, m); show(); },
      free: function (f) { S.free[S.who] = Object.assign({ drill: drillOf(S.who) }, (S.free[S.who] || {}).drill === drillOf(S.who) ? S.free[S.who] : {}, f); show(); }
    });
  }

  // ---- opening again without a connection ----

  function keepPage() {
    if (!window.isSecureContext || !("serviceWorker" in navigator)) {
      draw.tier("Keep this page open",
        "This address is plain http, so the browser does not keep the page itself. While it stays open everything works without a connection,"
        + " and every tap is kept on this phone even if the page is closed or the battery dies. To open it again you need the connection,"
        + " or an https address of the program (serve --https).");
      return;
    }
    kept.keepPage([root.dataset.model, "/runway"]).then(function () {
      draw.tier("Opens without a connection too",
        "This phone keeps this page, today\u2019s squad and every tap, also when the page is closed or the battery dies. The meets that were"
        + " open here do the same. All other pages need the connection.");
    }).catch(function (e) {
      draw.tier("Keep this page open", "The browser did not keep the page (" + (e.message || e) + "). While it stays open everything works without a connection.");
    });
  }

  keepPage();
  begin().catch(function (e) { draw.waiting("The page could not begin: " + (e.message || e) + " Reload it."); });
})();
