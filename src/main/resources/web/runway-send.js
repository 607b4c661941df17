// Brings the taps that this phone keeps to the program, in order, each until it was answered, and hears what is new there.
// A tap carries its own token, so one that is sent twice is kept once.
(function () {
  "use strict";
  var shelf = window.boundwrightShelf;
  var kept = window.boundwrightKept;
  var EVERY_MS = 10000;
  var AGAIN_MS = 3000;
  var MOST_AT_ONCE = 100;
  // clocks that differ by less than this were not set anew [ms]
  var STEP_MS = 2000;

  var csrf = "";
  var known = { head: "", nr: "", hashes: {} };
  var clock = null;
  var gone = false;
  var why = "";
  var running = null;
  var again = false;
  var heardAt = 0;
  var hear = { told: function () {}, state: function () {} };

  // ---- the clock: server minus phone ----

  function measured(serverNow, askedAt) {
    var wall = Date.now();
    clock = { offset: Math.round(serverNow + (performance.now() - askedAt) / 2 - wall), wall: wall, mono: performance.now() };
    shelf.tell("offset", clock.offset).catch(function () { /* it is measured again at the next answer */ });
  }

  /** Server minus this phone's clock now [ms]. A clock that was set back while the page was open is noticed. */
  function offset() {
    if (!clock) { return 0; }
    var back = (performance.now() - clock.mono) - (Date.now() - clock.wall);
    return back > STEP_MS ? Math.round(clock.offset + back) : clock.offset;
  }

  // ---- asking the program ----

  function ask(path, body) {
    var askedAt = performance.now();
    var asked = { cache: "no-store" };
    if (body !== null) {
      asked.method = "POST";
      asked.body = body;
      asked.headers = { "X-Boundwright-Form": csrf, "Content-Type": "text/plain; charset=utf-8" };
    }
    return kept.ask(path, asked, function (answer, text) {
      if (answer.status === 200 && /json/.test(answer.headers.get("Content-Type") || "")) {
        var told = JSON.parse(text);
        measured(told.now, askedAt);
        return { status: 200, told: told };
      }
      return { status: answer.status, told: null, text: text };
    });
  }

  function sentence(text) {
    var said = new DOMParser().parseFromString(text || "", "text/html").querySelector("pre");
    return said ? said.textContent.trim() : "";
  }

  async function post(body) {
    var answer = await ask("/runway/bring", body);
    if (answer.status === 403) {
      // the browser or the program was started anew since: its form token is another one
      await look();
      answer = await ask("/runway/bring", body);
    }
    if (answer.status !== 200) { throw said(answer); }
    return answer.told;
  }

  function said(answer) {
    return new Error(sentence(answer.text) || "The program answered with status " + answer.status + ".");
  }

  /** Hears what is new: the athletes who changed, or the whole squad. */
  async function look() {
    var have = ["head:" + known.head].concat(Object.keys(known.hashes).map(function (id) { return id + ":" + known.hashes[id]; }));
    var answer = await ask("/runway/parcel" + (known.head ? "?have=" + encodeURIComponent(have.join(",")) : ""), null);
    if (answer.status !== 200 || !answer.told) { throw said(answer); }
    csrf = answer.told.csrf;
    if (answer.told.parcel === undefined) {
      if (answer.told.parts.length > 0) { await take({ parts: answer.told.parts, answers: [] }); }
      return;
    }
    var squad = { parcel: answer.told.parcel, page: answer.told.page, head: answer.told.head, nr: answer.told.now + "/" + Math.random(), hashes: {}, top: {} };
    answer.told.parts.forEach(function (p) { squad.hashes[p.id] = p.hash; squad.top[p.id] = p.top; });
    try { await shelf.tell("squad", squad); } catch (full) { /* said when a tap cannot be kept */ }
    known = { head: squad.head, nr: squad.nr, hashes: Object.assign({}, squad.hashes) };
    await hear.told({ squad: squad, parts: [], answers: [] });
  }

  async function sendWaiting() {
    for (;;) {
      var waiting = (await shelf.taps()).filter(function (t) { return t.state === "waiting"; }).slice(0, MOST_AT_ONCE);
      if (waiting.length === 0) { return; }
      var told = await post(waiting.map(function (t) { return t.line; }).join("\n"));
      await take(told);
    }
  }

  async function take(told) {
    var parts = told.parts.map(function (p) { return ["part:" + p.id, { of: known.nr, text: p.text, hash: p.hash, top: p.top }]; });
    await shelf.answered(told.answers, parts);
    await heard(told);
  }

  async function heard(told) {
    told.parts.forEach(function (p) { known.hashes[p.id] = p.hash; });
    await hear.told({ squad: null, parts: told.parts, answers: told.answers });
  }

  /** Sends what waits and hears what is new; only one of these runs at a time. */
  function run() {
    if (running) { again = true; return running; }
    running = (async function () {
      try {
        do {
          again = false;
          await sendWaiting();
          await look();
        } while (again);
        connection(true, "");
      } catch (e) {
        connection(false, e instanceof TypeError || (e && e.name === "AbortError") ? "" : String(e.message || e));
      } finally {
        running = null;
      }
    })();
    return running;
  }

  /** Sends one line that this phone could not keep, after all that wait; rejects if the program did not take it. */
  async function direct(token, line) {
    if (running) { await running; }
    try { await sendWaiting(); } catch (e) { if (e instanceof TypeError) { throw e; } }
    var told = await post(line);
    await heard(told);
    var answer = told.answers.filter(function (a) { return a.token === token; })[0];
    if (!answer || answer.what === "refused") { throw new Error(answer ? answer.why : "The program did not answer for this tap."); }
  }

  function connection(there, said) {
    heardAt = Date.now();
    gone = !there;
    why = said;
    hear.state();
  }

  function start(options) {
    csrf = options.csrf;
    if (options.known) { known = options.known; }
    if (typeof options.offset === "number") { clock = { offset: options.offset, wall: Date.now(), mono: performance.now() }; }
    hear = options.hear;
    window.addEventListener("online", run);
    kept.offline(function () { connection(false, ""); });
    document.addEventListener("visibilitychange", function () { if (!document.hidden) { run(); } });
    setInterval(function () {
      if (gone || (!document.hidden && Date.now() - heardAt > EVERY_MS) || heardAt > Date.now()) { run(); }
    }, AGAIN_MS);
    return run();
  }

  window.boundwrightSend = {
    start: start, run: run, direct: direct, offset: offset,
    gone: function () { return gone; }, why: function () { return why; }
  };
})();
