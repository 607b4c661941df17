// Who is up next. Of a running order that was planned for the day, the next that is due, as long as they come about so. Else learned from how
// the athletes actually come: how often one goes on before the next stands there, and who mostly follows whom today; before that, how it
// was in the last session; before that, the list of the squad.
// Nothing here touches the page: lists in, a number out.
(function () {
  "use strict";

  // The turns of a session: who, and how many reps in a row.
  function turns(came) {
    var out = [];
    came.forEach(function (id) {
      var last = out[out.length - 1];
      if (last && last.id === id) { last.reps += 1; } else { out.push({ id: id, reps: 1 }); }
    });
    return out;
  }

  // What was seen most often; of those seen equally often, the one seen last.
  function mostOften(seen) {
    var counts = new Map();
    seen.forEach(function (x, i) { counts.set(x, { n: (counts.get(x) ? counts.get(x).n : 0) + 1, last: i }); });
    var best = null;
    counts.forEach(function (c, x) {
      if (best === null || c.n > best.n || (c.n === best.n && c.last > best.last)) { best = { x: x, n: c.n, last: c.last }; }
    });
    return best === null ? null : best.x;
  }

  function successor(came, now, here) {
    var all = turns(came);
    var seen = [];
    for (var i = 0; i + 1 < all.length; i++) {
      if (all[i].id === now && here.indexOf(all[i + 1].id) >= 0) { seen.push(all[i + 1].id); }
    }
    return mostOften(seen);
  }

  // How many reps in a row one does before the next: 1 until a turn with more was seen to its end.
  function repsOfTurn(came) {
    var all = turns(came);
    var ended = all.slice(0, -1).map(function (t) { return t.reps; });
    return mostOften(ended) || 1;
  }

  // What is still due of a planned order: each athlete's reps are ticked off from its beginning.
  function due(planned, done) {
    var left = new Map(done);
    return planned.filter(function (id) {
      var n = left.get(id) || 0;
      left.set(id, n - 1);
      return n <= 0;
    });
  }

  function counts(ids) {
    var out = new Map();
    ids.forEach(function (id) { out.set(id, (out.get(id) || 0) + 1); });
    return out;
  }

  // They come about as planned while of the last six at most one more was not due than was; of a larger squad two are due at a time.
  var LOOKED_BACK = 6;
  var LARGE = 6;
  function asPlanned(came, planned) {
    var missed = 0;
    var close = new Set(planned).size < LARGE ? 1 : 2;
    for (var i = Math.max(0, came.length - LOOKED_BACK); i < came.length; i++) {
      missed += due(planned, counts(came.slice(0, i))).slice(0, close).indexOf(came[i]) < 0 ? 1 : -1;
    }
    return missed < 2;
  }

  function planNext(came, here, now, plan) {
    if (!plan || plan.order.length === 0) { return null; }
    var done = counts(came);
    var elsewhere = false;
    Object.keys(plan.done || {}).forEach(function (key) {
      var id = Number(key);
      if (plan.done[key] > (done.get(id) || 0)) { done.set(id, plan.done[key]); elsewhere = true; }
    });
    // beside another phone this one sees some of the squad only, and holds them to their own order
    var held = plan.order.filter(function (id) { return here.indexOf(id) >= 0 && (!elsewhere || came.indexOf(id) >= 0); });
    if (!asPlanned(came, held)) { return null; }
    var open = due(plan.order, done).filter(function (id) { return id !== now && here.indexOf(id) >= 0; });
    return open.length > 0 ? open[0] : null;
  }

  /**
   * Who is next after `now`.
   * came: athletes of today's reps in order; before: of the last session; here: who is here, in the order of the list.
   * plan: {order: athletes in the planned order of their reps, done: reps that each has done today, by number}; may be missing.
   */
  function next(came, before, here, now, plan) {
    if (here.length === 0) { return null; }
    var planned = planNext(came, here, now, plan);
    if (planned !== null) { return planned; }
    var all = turns(came);
    var last = all[all.length - 1];
    if (last && last.id === now && last.reps < repsOfTurn(came) && here.indexOf(now) >= 0) { return now; }
    return after(came, before, here, now, plan);
  }

  // The same when `now` is done for this turn, or passed by.
  function after(came, before, here, now, plan) {
    var planned = planNext(came, here, now, plan);
    if (planned !== null) { return planned; }
    var known = successor(came, now, here);
    if (known !== null && known !== now) { return known; }
    var others = here.filter(function (id) { return id !== now; });
    if (others.length === 0) { return here[0]; }
    var waiting = others.filter(function (id) { return came.indexOf(id) < 0; });
    var then = successor(before, now, waiting);
    if (then !== null) { return then; }
    // a first round goes on down the list; once nobody is left there, the one who waits longest
    var at = here.indexOf(now);
    for (var i = 1; i <= here.length; i++) {
      var id = here[(at + i) % here.length];
      if (waiting.indexOf(id) >= 0 && (at + i < here.length || before.length === 0 || before.indexOf(id) >= 0)) { return id; }
    }
    return longestWaiting(came, others.filter(function (o) { return came.indexOf(o) >= 0; })) || others[0];
  }

  function longestWaiting(came, ids) {
    var best = null;
    ids.forEach(function (id) {
      var at = came.lastIndexOf(id);
      if (best === null || at < best.at) { best = { id: id, at: at }; }
    });
    return best === null ? null : best.id;
  }

  /** The last ones who came before `now`, newest first, each once; filled up from the list. */
  function lastOnes(came, here, now, most) {
    var out = [];
    came.slice().reverse().concat(here).forEach(function (id) {
      if (id !== now && out.indexOf(id) < 0 && here.indexOf(id) >= 0 && out.length < most) { out.push(id); }
    });
    return out;
  }

  /** Who came before `now`: the one whose turn it was last, or else the one before in the list. */
  function previous(came, here, now) {
    var all = turns(came);
    for (var i = all.length - 1; i >= 0; i--) {
      if (all[i].id !== now && here.indexOf(all[i].id) >= 0) {
        if (i === all.length - 1 || all[i + 1].id === now) { return all[i].id; }
      }
    }
    var at = here.indexOf(now);
    return here.length === 0 ? null : here[(at + here.length - 1) % here.length];
  }

  window.boundwrightOrder = { next: next, after: after, previous: previous, lastOnes: lastOnes };
})();
