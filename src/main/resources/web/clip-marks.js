// Putting marks on a frame and drawing a box round the athlete. The fields hold what was put; this only fills them.
(function () {
  "use strict";
  var GRAB_PX = 24;
  var NS = "http://www.w3.org/2000/svg";

  function place(event, svg) {
    var p = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    return { x: p.x, y: p.y };
  }
  marks(document.getElementById("marks-picture"));
  box(document.getElementById("box-picture"));

  function marks(svg) {
    if (!svg) { return; }
    var form = document.getElementById("marks-form");
    var drawn = document.getElementById("marks-drawn");
    var full = { w: Number(svg.dataset.width), h: Number(svg.dataset.height) };
    var view = { x: 0, y: 0, w: full.w, h: full.h };
    var last = null;
    var rows = Array.prototype.slice.call(form.querySelectorAll(".mark-row"));

    form.classList.add("tapping");

    function fields(row) { return row.querySelectorAll(".px input"); }
    function spot(row) {
      var f = fields(row);
      return f[0].value.trim() === "" || f[1].value.trim() === "" ? null : { x: Number(f[0].value.replace(",", ".")), y: Number(f[1].value.replace(",", ".")) };
    }
    // where the camera turned a mark belongs to its frame, and is drawn in every other by the maps to the common picture
    var maps = (svg.dataset.maps || "").split(";").filter(Boolean).map(function (m) { return m.split(",").map(Number); });
    function shown() { return Number(form.elements.frame.value); }
    function map(frame) { return maps[Math.min(maps.length - 1, Math.max(0, frame - 1 - Number(svg.dataset.first)))]; }
    function through(m, p) {
      var w = m[6] * p.x + m[7] * p.y + m[8];
      return { x: (m[0] * p.x + m[1] * p.y + m[2]) / w, y: (m[3] * p.x + m[4] * p.y + m[5]) / w, ahead: w > 0 };
    }
    function turnedBack(m) {
      return [m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
        m[5] * m[6] - m[3] * m[8], m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
        m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7], m[0] * m[4] - m[1] * m[3]];
    }
    function inFrame(row, at) {
      var own = Number(row.querySelector("[data-frame]").value) || shown();
      if (!at || !maps.length || own === shown()) { return at; }
      var common = through(map(own), at);
      var here = through(turnedBack(map(shown())), common);
      return common.ahead && here.ahead ? here : null;
    }
    function put(row, x, y) {
      var f = fields(row);
      row.querySelector("[data-frame]").value = shown();
      f[0].value = Math.min(full.w, Math.max(0, x)).toFixed(1);
      f[1].value = Math.min(full.h, Math.max(0, y)).toFixed(1);
      last = row;
      draw();
    }
    function draw() {
      var px = view.w / Math.max(1, svg.clientWidth);
      drawn.replaceChildren();
      var spare = { ground: 0, corner: 0 };
      rows.forEach(function (row) {
        var at = spot(row);
        row.querySelector(".take-away").hidden = !at;
        if (row.dataset.kind in spare) {
          row.classList.toggle("spare", !at && spare[row.dataset.kind]++ > 0);
        }
        at = inFrame(row, at);
        if (!at || isNaN(at.x) || isNaN(at.y)) { return; }
        var r = 9 * px;
        var g = document.createElementNS(NS, "g");
        g.setAttribute("class", "mark-put" + (row === last ? " last" : ""));
        ["under", "over"].forEach(function (c) {
          var p = document.createElementNS(NS, "path");
          p.setAttribute("class", c);
          p.setAttribute("d", "M" + (at.x - r) + " " + at.y + "h" + 2 * r + "M" + at.x + " " + (at.y - r) + "v" + 2 * r);
          g.appendChild(p);
        });
        var name = document.createElementNS(NS, "text");
        var far = row.querySelector(".far input");
        name.setAttribute("x", at.x + 6 * px);
        name.setAttribute("y", at.y - 8 * px);
        name.setAttribute("font-size", 14 * px);
        name.setAttribute("stroke-width", 3 * px);
        name.textContent = row.dataset.kind === "ground" && far.value ? far.value : row.querySelector("legend").textContent;
        g.appendChild(name);
        drawn.appendChild(g);
      });
    }
    // a thing of the place that stands where its distance is known takes one tap instead of a figure
    var places = document.getElementById("known-places");
    places.hidden = false;
    places.addEventListener("click", function (event) {
      var known = event.target.closest("button[data-back]");
      var row = last && last.dataset.kind === "ground" ? last : null;
      if (!known || !row) { return; }
      var way = form.querySelector("input[name=count][value=way]");
      var written = rows.some(function (r) { return r !== row && r.dataset.kind === "ground" && r.querySelector(".far input").value.trim() !== ""; });
      // figures that count the other way would be read as counting back from the sand
      if (way.checked && written) { places.querySelector("span").textContent = "The other marks count forward. Count them back from the sand first, then this is the"; return; }
      form.querySelector("input[name=count][value=sand]").checked = true;
      row.querySelector(".far input").value = known.dataset.back;
      draw();
    });
    function chosenKind() { return new FormData(form).get("put"); }
    function free(kind) {
      var same = rows.filter(function (r) { return r.dataset.kind === kind; });
      return same.filter(function (r) { return !spot(r); })[0] || (same.length === 1 ? same[0] : null);
    }
    function near(event) {
      var best = null;
      var least = GRAB_PX;
      rows.forEach(function (row) {
        var at = inFrame(row, spot(row));
        if (!at) { return; }
        var s = new DOMPoint(at.x, at.y).matrixTransform(svg.getScreenCTM());
        var off = Math.hypot(event.clientX - s.x, event.clientY - s.y);
        if (off < least) { least = off; best = row; }
      });
      return best;
    }

    var held = null;
    var start = null;
    svg.addEventListener("pointerdown", function (event) {
      if (event.button > 0) { return; }
      held = near(event);
      start = { x: event.clientX, y: event.clientY, view: { x: view.x, y: view.y }, panned: false };
      if (held) { last = held; draw(); }
      svg.setPointerCapture(event.pointerId);
    });
    svg.addEventListener("pointermove", function (event) {
      if (!start) { return; }
      if (held) {
        var p = place(event, svg);
        put(held, p.x, p.y);
      } else if (Math.hypot(event.clientX - start.x, event.clientY - start.y) > 10 && view.w < full.w) {
        start.panned = true;
        look(start.view.x - (event.clientX - start.x) * view.w / svg.clientWidth, start.view.y - (event.clientY - start.y) * view.w / svg.clientWidth, view.w);
      }
    });
    function putNew(x, y) {
      var row = free(chosenKind());
      if (!row) { return; }
      var part = row.closest("details");
      if (part) { part.open = true; }
      put(row, x, y);
      if (chosenKind() === "pole-0") { form.querySelector("input[name=put][value=pole-1]").checked = true; }
    }
    svg.addEventListener("pointerup", function (event) {
      var tap = start && !held && !start.panned && Math.hypot(event.clientX - start.x, event.clientY - start.y) <= 10;
      start = null;
      held = null;
      if (!tap) { return; }
      var p = place(event, svg);
      putNew(p.x, p.y);
    });
    svg.addEventListener("pointercancel", function () { start = null; held = null; });
    svg.addEventListener("keydown", function (event) {
      var by = event.shiftKey ? 10 : 1;
      if (event.key === "Enter") {
        putNew(view.x + view.w / 2, view.y + view.h / 2);
        event.preventDefault();
        return;
      }
      var steps = { ArrowLeft: [-by, 0], ArrowRight: [by, 0], ArrowUp: [0, -by], ArrowDown: [0, by] }[event.key];
      if (!steps || !last) { return; }
      var at = inFrame(last, spot(last));
      if (!at) { return; }
      put(last, at.x + steps[0], at.y + steps[1]);
      event.preventDefault();
    });

    function look(x, y, w) {
      view.w = Math.min(full.w, Math.max(full.w / 8, w));
      view.h = view.w * full.h / full.w;
      view.x = Math.min(full.w - view.w, Math.max(0, x));
      view.y = Math.min(full.h - view.h, Math.max(0, y));
      svg.setAttribute("viewBox", view.x + " " + view.y + " " + view.w + " " + view.h);
      svg.classList.toggle("zoomed", view.w < full.w);
      draw();
    }
    function zoom(by) {
      var at = last && inFrame(last, spot(last));
      var c = at || { x: view.x + view.w / 2, y: view.y + view.h / 2 };
      var w = Math.min(full.w, Math.max(full.w / 8, view.w * by));
      look(c.x - w / 2, c.y - w * full.h / full.w / 2, w);
    }
    document.getElementById("marks-larger").addEventListener("click", function () { zoom(0.5); });
    document.getElementById("marks-smaller").addEventListener("click", function () { zoom(2); });
    rows.forEach(function (row) {
      row.querySelector(".take-away").addEventListener("click", function () {
        row.querySelectorAll("input").forEach(function (f) { f.value = ""; });
        if (last === row) { last = null; }
        draw();
      });
      row.addEventListener("input", draw);
    });
    window.addEventListener("resize", draw);

    // another frame comes into the same page, so that what was put and not kept yet stays put
    var still = document.getElementById("marks-still");
    var gone = document.getElementById("marks-gone");
    still.addEventListener("error", function () { still.setAttribute("visibility", "hidden"); gone.hidden = false; });
    still.addEventListener("load", function () { still.removeAttribute("visibility"); gone.hidden = true; });
    form.querySelectorAll("a[data-step]").forEach(function (a) {
      a.addEventListener("click", function (event) {
        var by = Number(a.dataset.step);
        var n = Math.min(Number(svg.dataset.stills), Math.max(1, Number(form.elements.frame.value) + by));
        // of a dropped film some pictures are left: the first of them at least as far on, or else the last
        var left = (svg.dataset.left ? svg.dataset.left.split(",") : []).map(function (f) { return Number(f) + 1; });
        if (by < 0) { left.reverse(); }
        if (left.length) { n = left.filter(function (f) { return by < 0 ? f <= n : f >= n; })[0] || left[left.length - 1]; }
        form.elements.frame.value = n;
        still.setAttribute("href", svg.dataset.pictures.replace("N.jpg", n - 1 + ".jpg"));
        svg.setAttribute("aria-label", "frame " + n + " of the film");
        draw();
        event.preventDefault();
      });
    });
    draw();
  }

  function box(svg) {
    if (!svg) { return; }
    var rect = document.getElementById("box-drawn");
    var fields = ["x", "y", "w", "h"].map(function (n) { return document.getElementById("box-" + n); });
    var start = null;
    function write(a, b) {
      var v = [Math.min(a.x, b.x), Math.min(a.y, b.y), Math.abs(a.x - b.x), Math.abs(a.y - b.y)];
      ["x", "y", "width", "height"].forEach(function (n, i) { rect.setAttribute(n, v[i]); });
      fields.forEach(function (f, i) { f.value = v[i].toFixed(1); });
    }
    svg.classList.add("zoomed");
    svg.addEventListener("pointerdown", function (event) { start = place(event, svg); svg.setPointerCapture(event.pointerId); });
    svg.addEventListener("pointermove", function (event) { if (start) { write(start, place(event, svg)); } });
    svg.addEventListener("pointerup", function () { start = null; });
    svg.addEventListener("pointercancel", function () { start = null; });
  }
})();
