// The runway in one hand. A tap is kept on this phone first, then it is shown as logged, learned from and sent.
(function () {
  "use strict";
  var shelf = window.boundwrightShelf;
  var send = window.boundwrightSend;
  var order = window.boundwrightOrder;
  var draw = window.boundwrightDraw;
  var root = document.getElementById("rw");
  var GO_ON_MS = 1600;
  var LOOK_MS = 2600;
  var BOUNCE_MS = 600;

  var model = null;
  var S = {
    squad: null, page: null, taps: [], who: 0, hand: 0, once: null, before: [], tapes: {}, free: {}, look: null, last: null, giving: null,
    trouble: "", busy: false, cards: {}
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
    if (told.squad) {
      opened(told.squad, Object.keys(told).filter(function (k) { return k.indexOf("part:") === 0 && told[k].of === told.squad.version; })
        .map(function (k) { return told[k].text; }));
    }
    listen();
    await send.start({
      csrf: root.dataset.csrf, version: told.squad ? told.squad.version : "", offset: told.offset,
      hear: { told: heard, state: show }
    });
    if (!S.squad) { draw.waiting(send.gone() ? "No connection, and this phone has not seen the squad yet. " + send.why() : "Fetching the squad\u2026"); }
  }

  function opened(squad, parts) {
    S.squad = squad;
    S.page = squad.page;
    model.open(squad.parcel);
    parts.forEach(function (text) { model.refresh(text); });
    relearn();
    if (S.seat.day !== S.page.day) {
      S.seat = { day: S.page.day, who: 0, hand: 0, came: [], before: S.seat.came && S.seat.came.length > 0 ? S.seat.came : S.before };
      S.before = S.seat.before;
    }
    S.who = has(S.who) ? S.who : has(S.seat.who) ? S.seat.who : ids()[0] || 0;
    S.hand = S.seat.hand || 0;
    show();
  }

  // what is not yet on the program's side is learned on top of what is
  function relearn() {
    S.cards = {};
    model.entries(waiting().map(function (t) { return t.line; }));
  }

  async function heard(news) {
    try { S.taps = await shelf.taps(); } catch (shut) { /* said already */ }
    if (news.squad) {
      opened(news.squad, []);
    } else if (S.squad) {
      news.parts.forEach(function (p) { model.refresh(p.text); });
      relearn();
      show();
    }
  }

  // ---- who, and what ----

  function ids() { return S.page ? S.page.athletes.map(function (a) { return a.id; }) : []; }
  function has(id) { return ids().indexOf(id) >= 0; }
  function athlete(id) { return S.page.athletes.filter(function (a) { return a.id === id; })[0] || { id: id, name: "", steps: [], top: [] }; }
  function waiting() { return S.taps.filter(function (t) { return t.state === "waiting"; }); }
  function mine() { return S.taps.filter(function (t) { return t.day === S.page.day; }); }
  function takenBack(token) { return S.taps.some(function (t) { return t.kind === "UNDO" && t.of === token && t.state !== "refused"; }); }
  function doer(tap) {
    var to = tap.athleteId;
    S.taps.forEach(function (t) { if (t.kind === "HAND" && t.of === tap.token && t.state !== "refused") { to = t.to; } });
    return to;
  }
  function repsHere() {
    return S.page ? mine().filter(function (t) { return t.kind === "REP" && t.state !== "refused" && !takenBack(t.token); }) : [];
  }
  function came() { return repsHere().map(doer); }

  function card(id, drill) {
    var key = id + "/" + drill;
    if (!S.cards[key]) { S.cards[key] = model.card(id, drill); }
    return S.cards[key];
  }

  // the drill by hand holds for all who come; each goes on from there when the reps are done
  function drillOf(id) {
    var n = S.page.drills.length;
    if (n === 0) { return 0; }
    if (S.once && S.once.id === id) { return S.once.drill; }
    for (var d = Math.min(S.hand || 1, n); d <= n; d++) {
      var c = card(id, d);
      if (c.repsDone < c.repsPlanned) { return d; }
    }
    return n;
  }

  function asked(id) {
    var d = drillOf(id);
    var plan = d > 0 ? S.page.drills[d - 1] : null;
    var free = S.free[id] && S.free[id].drill === d ? S.free[id] : {};
    return {
      drill: d,
      sand: plan ? plan.sand : true,
      sequence: free.sequence || (plan ? plan.sequence : card(id, 0).letters),
      steps: free.steps !== undefined ? free.steps : plan ? athlete(id).steps[d - 1] : card(id, 0).steps,
      surface: free.surface || S.page.surface,
      own: Boolean(free.sequence || free.steps !== undefined || free.surface)
    };
  }

  // the tape lies where it lay for the last rep from the same run-up today, until the coach says that it was moved
  function tapeOf(id) {
    var a = asked(id);
    if (!a.sand) { return null; }
    var key = id + "/" + a.sequence + "/" + a.steps + "/" + a.surface;
    if (S.tapes[key] !== undefined) { return S.tapes[key]; }
    var lay = null;
    repsHere().forEach(function (t) {
      if (doer(t) === id && t.key === key.slice(String(id).length + 1) && t.mark_m !== null) { lay = t.mark_m; }
    });
    if (lay !== null) { return lay; }
    var c = card(id, a.drill);
    return a.own || c.held || c.mark_m === undefined ? null : c.mark_m;
  }
  function moveTape(id, mark_m) {
    var a = asked(id);
    S.tapes[id + "/" + a.sequence + "/" + a.steps + "/" + a.surface] = mark_m;
  }

  // ---- doing ----

  function freshToken() {
    return Array.from(crypto.getRandomValues(new Uint8Array(16)), function (b) { return b.toString(16).padStart(2, "0"); }).join("");
  }
  function written(fields) {
    return Object.keys(fields).filter(function (k) { return fields[k] !== null && fields[k] !== undefined && fields[k] !== ""; })
      .map(function (k) { return k + "=" + encodeURIComponent(String(fields[k])); }).join("&");
  }

  /** Keeps a tap, then learns from it; answers false if it could neither be kept nor sent. */
  async function enter(tap, fields) {
    tap.token = freshToken();
    tap.day = S.page.day;
    tap.state = "waiting";
    tap.line = written(Object.assign({ token: tap.token, kind: tap.kind, athleteId: tap.athleteId, atMs: Date.now(), offsetMs: send.offset() }, fields));
    try {
      tap.nr = await shelf.keep(tap);
    } catch (full) {
      return sendAtOnce(tap, full);
    }
    S.trouble = "";
    S.taps.push(tap);
    S.cards = {};
    var said = "";
    try { said = model.add(tap.line) || ""; } catch (refused) { said = String(refused.message || refused); }
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
        kind: "REP", athleteId: id, drill: a.drill, outcome: outcome, mark_m: mark, key: a.sequence + "/" + a.steps + "/" + a.surface,
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
      S.last = { tap: tap, said: done.said, going: true };
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
    stopGoingOn();
    goOn = setTimeout(function () {
      goOn = null;
      if (S.last) { S.last.going = false; }
      var next = order.next(came(), S.before, ids(), S.who);
      draw.light(null);
      if (next) { turnTo(next); }
    }, ms);
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

  // a chip belongs to the rep just logged while the page still stands there, else to the next one
  async function touch(key) {
    var just = S.last && S.last.going ? S.last.tap : null;
    var faults = just ? (just.looked ? just.faults.slice() : null) : S.look;
    if (key === "") {
      faults = faults !== null && faults.length === 0 ? null : [];
    } else if (faults !== null && faults.indexOf(key) >= 0) {
      faults = faults.filter(function (k) { return k !== key; });
      if (faults.length === 0) { faults = null; }
    } else {
      faults = (faults || []).concat([key]);
    }
    if (!just) { S.look = faults; show(); return; }
    wait(LOOK_MS);
    var done = await enter({ kind: "LOOK", athleteId: just.athleteId, of: just.token },
      { of: just.token, looked: faults === null ? "no" : "yes", faults: (faults || []).join(",") });
    if (done !== null) { just.looked = faults !== null; just.faults = faults || []; }
    show();
  }

  async function undo(tap) {
    stopGoingOn();
    var who = doer(tap);
    var done = await enter({ kind: "UNDO", athleteId: who, of: tap.token }, { of: tap.token });
    if (done !== null) {
      S.last = { tap: tap, said: done.said, undone: true };
      turnTo(who);
    }
    show();
  }

  async function hand(tap, to) {
    stopGoingOn();
    var from = doer(tap);
    if (to === from) { S.giving = null; show(); return; }
    var done = await enter({ kind: "HAND", athleteId: from, of: tap.token, to: to }, { of: tap.token, to: to });
    if (done !== null) { S.last = { tap: tap, said: done.said, handed: to }; }
    S.giving = null;
    keepSeat();
    show();
  }

  async function throwAway(tap) {
    try { await shelf.drop([tap.nr]); S.taps = S.taps.filter(function (t) { return t !== tap; }); relearn(); } catch (shut) { S.trouble = "It could not be thrown away."; }
    show();
  }

  // ---- the page ----

  function show() {
    if (!S.page) { return; }
    draw.all({
      S: S, id: S.who, athlete: has(S.who) ? athlete(S.who) : null, asked: has(S.who) ? asked(S.who) : null,
      card: has(S.who) ? card(S.who, asked(S.who).drill) : null, tape_m: has(S.who) ? tapeOf(S.who) : null, model: model,
      five: order.lastOnes(came(), ids(), S.who, 5), next: order.after(came(), S.before, ids(), S.who), name: function (id) { return athlete(id).name; },
      waiting: waiting(), refused: S.taps.filter(function (t) { return t.state === "refused"; }), mine: mine(), takenBack: takenBack, doer: doer,
      gone: send.gone(), why: send.why()
    });
  }

  function listen() {
    draw.listen({
      log: log, touch: touch, turnTo: turnTo, undo: undo, hand: hand, throwAway: throwAway,
      last: function () { return S.last; },
      give: function (tap) { stopGoingOn(); S.giving = S.giving === tap ? null : tap; show(); },
      previous: function () { turnTo(order.previous(came(), ids(), S.who)); },
      next: function () { turnTo(order.after(came(), S.before, ids(), S.who)); },
      drill: function (d) { S.hand = d; S.once = { id: S.who, drill: d }; S.free = {}; keepSeat(); show(); },
      tape: function (m) { moveTape(S.who, m); show(); },
      free: function (f) { S.free[S.who] = Object.assign({ drill: drillOf(S.who) }, S.free[S.who], f); show(); }
    });
  }

  begin().catch(function (e) { draw.waiting("The page could not begin: " + (e.message || e) + " Reload it."); });
})();
