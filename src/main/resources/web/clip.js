// The page of a clip: keys, swiping, dragging points. Everything is drawn by the program; this only says what was meant.
(function () {
  "use strict";
  var SWIPE_PX = 22;
  var GRAB_PX = 26;

  function byId(id) { return document.getElementById(id); }
  function stage() { return byId("stage"); }
  function picture() { return stage() ? byId("body-picture") : null; }
  function press(id) {
    var e = byId(id);
    if (e) { e.click(); }
    return Boolean(e);
  }

  // ---- putting a point elsewhere ----

  function place(event, svg) {
    var p = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    return { x: p.x, y: p.y };
  }
  function move(dot, x, y) {
    dot.setAttribute("cx", x.toFixed(2));
    dot.setAttribute("cy", y.toFixed(2));
    dot.dataset.moved = "1";
  }
  function keep(dot) {
    var form = byId("correct");
    if (!dot.dataset.moved || !form) { return; }
    delete dot.dataset.moved;
    var values = { kind: "move", point: dot.dataset.point, x: dot.getAttribute("cx"), y: dot.getAttribute("cy") };
    Array.prototype.forEach.call(form.querySelectorAll("input[type=hidden]"), function (f) { values[f.name] = f.value; });
    window.htmx.ajax("POST", form.dataset.address, { target: "#clip-work", swap: "outerHTML", values: values });
  }
  function back(dot) {
    if (dot.dataset.fromX) {
      dot.setAttribute("cx", dot.dataset.fromX);
      dot.setAttribute("cy", dot.dataset.fromY);
      delete dot.dataset.moved;
    }
  }
  function remember(dot) {
    if (!dot.dataset.fromX) {
      dot.dataset.fromX = dot.getAttribute("cx");
      dot.dataset.fromY = dot.getAttribute("cy");
    }
  }

  // ---- fingers and mouse ----

  var held = null;
  var from = 0;
  var pointer = null;

  function nearest(event) {
    var best = null;
    var least = GRAB_PX;
    picture().querySelectorAll(".dots circle").forEach(function (d) {
      var r = d.getBoundingClientRect();
      var off = Math.hypot(event.clientX - r.left - r.width / 2, event.clientY - r.top - r.height / 2);
      if (off < least) { least = off; best = d; }
    });
    return best;
  }
  document.addEventListener("pointerdown", function (event) {
    var svg = picture();
    if (!svg || !svg.contains(event.target) || event.button > 0) { return; }
    var moves = byId("move-points");
    var dot = event.pointerType === "mouse" || (moves && moves.checked) ? nearest(event) : null;
    pointer = event.pointerId;
    from = event.clientX;
    held = dot;
    if (dot) {
      remember(dot);
      dot.focus({ preventScroll: true });
      event.preventDefault();
      svg.setPointerCapture(event.pointerId);
    }
  });
  document.addEventListener("pointermove", function (event) {
    if (event.pointerId !== pointer || !picture()) { return; }
    if (held) {
      var p = place(event, picture());
      move(held, p.x, p.y);
    } else if (Math.abs(event.clientX - from) >= SWIPE_PX) {
      var on = event.clientX < from;
      from = event.clientX;
      press(on ? "step-on" : "step-back");
    }
  });
  function release(event) {
    if (event.pointerId !== pointer) { return; }
    pointer = null;
    if (held) {
      var dot = held;
      held = null;
      if (event.type === "pointerup") { keep(dot); } else { back(dot); }
    }
  }
  document.addEventListener("pointerup", release);
  document.addEventListener("pointercancel", release);
  document.addEventListener("dragstart", function (event) { if (event.target.closest && event.target.closest("svg")) { event.preventDefault(); } });

  // ---- keys ----

  function typing(e) { return e.matches("input:not([type=checkbox]):not([type=radio]), select, textarea, [contenteditable]"); }

  function far(n) {
    var svg = picture();
    var at = Number(stage().dataset.frame) + n;
    if (!svg) { return; }
    var address = new URL(location.href);
    address.searchParams.set("frame", String(Math.max(1, at)));
    var begin = byId("correct").elements.begin;
    if (begin) { address.searchParams.set("begin", begin.value); }
    window.htmx.ajax("GET", address.pathname + address.search, { source: stage(), target: "#stage", swap: "outerHTML" });
    history.replaceState(history.state, "", address);
  }

  function onDot(event, dot) {
    var by = event.shiftKey ? 10 : 1;
    var steps = { ArrowLeft: [-by, 0], ArrowRight: [by, 0], ArrowUp: [0, -by], ArrowDown: [0, by] }[event.key];
    if (steps) {
      remember(dot);
      move(dot, Number(dot.getAttribute("cx")) + steps[0], Number(dot.getAttribute("cy")) + steps[1]);
    } else if (event.key === "Enter") {
      keep(dot);
    } else if (event.key === "Escape") {
      back(dot);
      picture().focus();
    } else {
      return false;
    }
    return true;
  }

  // a point that was moved and not kept goes back, so that what is seen is what is kept
  document.addEventListener("focusout", function (event) {
    if (event.target.matches && event.target.matches(".dots circle") && event.target.dataset.moved && !held) { back(event.target); }
  });

  document.addEventListener("keydown", function (event) {
    if (event.ctrlKey || event.metaKey || event.altKey || !(stage() || byId("pair")) || typing(event.target)) { return; }
    if (event.target.matches(".dots circle") && stage() && onDot(event, event.target)) {
      event.preventDefault();
      return;
    }
    // arrows scroll the film strip while it has the focus
    if (event.target.matches(".film-strip") && event.key.indexOf("Arrow") === 0) { return; }
    var key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    var onPicture = event.target.closest && event.target.closest("#body-picture");
    var done = true;
    if (key === "ArrowLeft") {
      if (event.shiftKey && stage()) { far(-10); } else { press("step-back"); }
    } else if (key === "ArrowRight") {
      if (event.shiftKey && stage()) { far(10); } else { press("step-on"); }
    } else if ((key === "ArrowUp" || key === "ArrowDown") && onPicture) {
      press(key === "ArrowUp" ? "contact-back" : "contact-on");
    } else {
      var named = { t: "do-touchdown", o: "do-toeoff", x: "do-legs", Delete: "do-drop", b: "do-begin", r: "do-RIGHT", l: "do-LEFT", u: "do-undo" }[key];
      done = named ? press(named) : false;
    }
    if (done) { event.preventDefault(); }
  });

  // ---- after the program drew anew ----

  function atHand() {
    ["step-back", "step-on"].forEach(function (id) {
      var a = byId(id);
      if (a && a.dataset.still) { new Image().src = a.dataset.still; }
    });
  }
  var strip = 0;
  var hadFocus = "";
  var moving = false;
  var stood = null;
  document.addEventListener("htmx:beforeSwap", function () {
    var list = document.querySelector(".film-strip");
    strip = list ? list.scrollLeft : 0;
    hadFocus = document.activeElement && document.activeElement.id ? document.activeElement.id : "";
    // where the picture stands on the screen, if it is in sight
    var box = stage() ? stage().getBoundingClientRect() : null;
    stood = box && box.top < window.innerHeight && box.bottom > 0 ? box.top : null;
    moving = Boolean(byId("move-points") && byId("move-points").checked);
  });
  document.addEventListener("htmx:afterSwap", function (event) {
    var s = stage();
    if (!s) { return; }
    // who steps on has read what was answered
    if (event.detail && event.detail.target && event.detail.target.id === "stage") {
      document.querySelectorAll(".clip-work > .said, .clip-work > .refusal").forEach(function (e) { e.remove(); });
    }
    var list = document.querySelector(".film-strip");
    if (list) { list.scrollLeft = strip; }
    document.querySelectorAll(".col-pictures").forEach(function (a) {
      if (a.dataset.contact === s.dataset.contact) {
        a.setAttribute("aria-current", "true");
        var li = a.parentElement;
        if (li.offsetLeft < list.scrollLeft || li.offsetLeft + li.offsetWidth > list.scrollLeft + list.clientWidth) {
          list.scrollLeft = li.offsetLeft - list.offsetLeft;
        }
      } else {
        a.removeAttribute("aria-current");
      }
    });
    if (stood !== null) { window.scrollBy(0, s.getBoundingClientRect().top - stood); }
    if (moving && byId("move-points")) { byId("move-points").checked = true; }
    if (hadFocus && byId(hadFocus) && document.activeElement === document.body) { byId(hadFocus).focus({ preventScroll: true }); }
    atHand();
  });
  atHand();

  // ---- sending films ----

  var films = byId("film-form");
  if (films) {
    films.addEventListener("submit", function () {
      var button = films.querySelector("button[type=submit]");
      button.textContent = "Sending, leave this page open";
      window.setTimeout(function () { button.disabled = true; }, 0);
    });
    // a film let go beside the field is taken too; without this the browser would leave the page and play it
    document.addEventListener("dragover", function (event) { event.preventDefault(); });
    document.addEventListener("drop", function (event) {
      var field = byId("film");
      if (!field || event.target === field) { return; }
      event.preventDefault();
      if (event.dataTransfer && event.dataTransfer.files.length) { field.files = event.dataTransfer.files; }
    });
    window.addEventListener("pageshow", function () {
      var button = films.querySelector("button[type=submit]");
      if (button && button.disabled) { button.disabled = false; button.textContent = "Take the films"; }
    });
  }
})();
