// What this phone keeps: every tap as a line, in the order in which it was made, and the last that the program told.
// A promise that is kept means that the browser has written it; nothing is shown as logged before.
(function () {
  "use strict";
  var within = window.boundwrightKept.database("boundwright-runway", function (db) {
    var taps = db.createObjectStore("taps", { keyPath: "nr", autoIncrement: true });
    taps.createIndex("token", "token", { unique: true });
    db.createObjectStore("told");
  });

  /** Keeps a tap: {token, line, athleteId, drill, said, state: "waiting"}. */
  function keep(tap) {
    return within(["taps"], "readwrite", function (t, out) {
      t.objectStore("taps").add(tap).onsuccess = function (e) { out.value = e.target.result; };
    });
  }

  /** All taps that are kept, in order. */
  function taps() {
    return within(["taps"], "readonly", function (t, out) {
      t.objectStore("taps").getAll().onsuccess = function (e) { out.value = e.target.result; };
    });
  }

  /**
   * Keeps what the program answered and told with it, together: a tap is not counted as sent before the phone knows of it from the
   * program itself. answers: [{token, what, why}]; told: [[key, value]].
   */
  function answered(answers, told) {
    return within(["taps", "told"], "readwrite", function (t) {
      var store = t.objectStore("taps");
      answers.forEach(function (a) {
        store.index("token").get(a.token).onsuccess = function (e) {
          var tap = e.target.result;
          if (!tap) { return; }
          tap.state = a.what === "refused" ? "refused" : "sent";
          tap.why = a.why || "";
          store.put(tap);
        };
      });
      told.forEach(function (pair) { t.objectStore("told").put(pair[1], pair[0]); });
    });
  }

  /** Throws a tap away that was not taken, or old ones that were sent. */
  function drop(numbers) {
    return within(["taps"], "readwrite", function (t) { numbers.forEach(function (nr) { t.objectStore("taps").delete(nr); }); });
  }

  function tell(key, value) {
    return within(["told"], "readwrite", function (t) { t.objectStore("told").put(value, key); });
  }

  function told() {
    return within(["told"], "readonly", function (t, out) {
      out.value = {};
      t.objectStore("told").openCursor().onsuccess = function (e) {
        var at = e.target.result;
        if (at) { out.value[at.key] = at.value; at.continue(); }
      };
    });
  }

  window.boundwrightShelf = { keep: keep, taps: taps, answered: answered, drop: drop, tell: tell, told: told };
})();
