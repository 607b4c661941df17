// Plays the stored pictures of a clip, or of two side by side, by their own times: at the speed of the athlete or at half of it.
(function () {
  "use strict";
  var AHEAD = 24;
  // a browser shows no more; of quicker film some pictures are passed over
  var LEAST_MS = 30;
  var lists = {};
  var run = null;

  function pictures() { return Array.prototype.slice.call(document.querySelectorAll("svg[data-play]")); }

  function list(address) {
    if (!lists[address]) {
      lists[address] = fetch(address, { headers: { "Accept": "application/json" } }).then(function (r) {
        if (!r.ok) { throw new Error(String(r.status)); }
        return r.json();
      }).then(function (all) {
        all.images = {};
        var last = -Infinity;
        all.frames = all.frames.filter(function (f) {
          if (f[2] - last < LEAST_MS / 2) { return false; }
          last = f[2];
          return true;
        });
        return all;
      });
    }
    return lists[address];
  }

  function address(all, i) { return all.still.replace("N.jpg", all.frames[i][1] + ".jpg"); }

  function image(all, i) {
    var at = address(all, i);
    if (!all.images[at]) {
      var img = new Image();
      img.src = at;
      all.images[at] = img;
    }
    return all.images[at];
  }

  function indexAt(all, ms) {
    var low = 0;
    var high = all.frames.length - 1;
    while (low < high) {
      var mid = (low + high + 1) >> 1;
      if (all.frames[mid][2] <= ms) { low = mid; } else { high = mid - 1; }
    }
    return low;
  }

  function show(one, i) {
    var f = one.all.frames[i];
    var svg = one.svg;
    var still = svg.querySelector("image");
    if (!still) { return; }
    still.setAttribute("href", address(one.all, i));
    var box = svg.viewBox.baseVal;
    if (box.width < one.all.width) {
      var x = Math.max(0, Math.min(one.all.width - box.width, f[3] - box.width / 2));
      var y = Math.max(0, Math.min(one.all.height - box.height, f[4] - box.height / 2));
      svg.setAttribute("viewBox", x + " " + y + " " + box.width + " " + box.height);
      var turned = svg.querySelector(".turned");
      if (turned) { turned.setAttribute("transform", "translate(" + (2 * x + box.width) + " 0) scale(-1 1)"); }
    }
    one.now = f[0];
  }

  function words() {
    document.querySelectorAll("[data-speed]").forEach(function (b) {
      b.textContent = run && run.speed === Number(b.dataset.speed) ? "stop" : b.dataset.name;
      b.setAttribute("aria-pressed", run && run.speed === Number(b.dataset.speed) ? "true" : "false");
    });
  }

  function stop() {
    if (!run) { return; }
    var was = run;
    run = null;
    was.ones.forEach(function (o) { o.svg.classList.remove("playing"); });
    words();
    was.stopped(was);
  }

  /** The page at the frame where it was stopped. */
  function settle(was) {
    var one = was.ones[0];
    var at = new URL(location.href);
    var target = one.svg.dataset.playTarget;
    if (target === "#stage") {
      at.searchParams.set("frame", String(one.now));
    } else {
      at.searchParams.set("t", (was.clock).toFixed(1));
    }
    window.htmx.ajax("GET", at.pathname + at.search, { source: one.svg, target: target, swap: "outerHTML" });
    history.replaceState(history.state, "", at);
  }

  function start(speed) {
    var svgs = pictures();
    if (!svgs.length) { return; }
    Promise.all(svgs.map(function (s) { return list(s.dataset.play); })).then(function (all) {
      var ones = svgs.map(function (s, k) { return { svg: s, all: all[k], zero: Number(s.dataset.playZero || 0), now: 1 }; });
      if (ones.some(function (o) { return o.all.frames.length < 2; })) { return; }
      var clock = Number(svgs[0].dataset.playAt || 0);
      var end = Math.min.apply(null, ones.map(function (o) { return o.all.frames[o.all.frames.length - 1][2] - o.zero; }));
      var begin = Math.max.apply(null, ones.map(function (o) { return o.all.frames[0][2] - o.zero; }));
      // played to its end, it begins anew
      if (clock > end - 60) { clock = begin; }
      ones.forEach(function (o) { o.svg.classList.add("playing"); });
      run = { speed: speed, ones: ones, clock: clock, stopped: settle };
      words();
      var last = null;
      function step(now) {
        if (!run || run.ones !== ones) { return; }
        var ready = ones.every(function (o) {
          var i = indexAt(o.all, run.clock + o.zero);
          for (var k = i; k < Math.min(o.all.frames.length, i + AHEAD); k++) { image(o.all, k); }
          return image(o.all, i).complete;
        });
        if (last !== null && ready) { run.clock += (now - last) * run.speed; }
        last = now;
        if (run.clock >= end) {
          run.clock = end;
          stop();
          return;
        }
        if (ready) { ones.forEach(function (o) { show(o, indexAt(o.all, run.clock + o.zero)); }); }
        window.requestAnimationFrame(step);
      }
      window.requestAnimationFrame(step);
    }, function () {
      var said = document.getElementById("notice");
      if (said) { said.textContent = "The film's pictures could not be fetched. Try again."; }
    });
  }

  document.addEventListener("click", function (event) {
    var b = event.target.closest && event.target.closest("[data-speed]");
    if (!b) { return; }
    var speed = Number(b.dataset.speed);
    if (run && run.speed === speed) {
      stop();
    } else if (run) {
      run.speed = speed;
      words();
    } else {
      start(speed);
    }
  });

  document.addEventListener("keydown", function (event) {
    if (event.key !== " " || event.target.matches("input, select, textarea, button, a, summary, [role=button]")) { return; }
    var first = document.querySelector("[data-speed]");
    if (first) {
      if (run) { stop(); } else { first.click(); }
      event.preventDefault();
    }
  });

  // another part of the page came while it played
  document.addEventListener("htmx:beforeSwap", function () { if (run) { run.ones.forEach(function (o) { o.svg.classList.remove("playing"); }); run = null; } });

  function unhide() { document.querySelectorAll(".player[hidden]").forEach(function (p) { p.hidden = false; }); }
  document.addEventListener("htmx:afterSwap", unhide);
  unhide();
})();
