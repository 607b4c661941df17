// A session is picked up with its grip: by a finger or the mouse it is dragged to a day; by Enter or a tap the days offer themselves,
// arrows go from day to day, Enter puts it down, Escape leaves it. The rules' answers come from the server before it is put down.
(function () {
  "use strict";
  var week = document.querySelector("[data-week]");
  if (!week) { return; }
  var held = null;

  function slots() { return Array.prototype.slice.call(week.querySelectorAll("[data-day]")); }
  function buttons() { return Array.prototype.slice.call(week.querySelectorAll(".move-mark button")); }

  function leave(focus) {
    if (!held) { return; }
    var grip = held.grip;
    if (held.ghost) { held.ghost.remove(); }
    held = null;
    week.classList.remove("carrying");
    week.querySelectorAll(".move-mark").forEach(function (mark) { mark.remove(); });
    slots().forEach(function (slot) { slot.classList.remove("move-allowed", "move-costs", "move-refused", "move-here", "move-over"); });
    if (focus) { grip.focus(); }
  }

  function show(mine, html) {
    if (held !== mine) { return; }
    new DOMParser().parseFromString(html, "text/html").querySelectorAll("[data-move-day]").forEach(function (day) {
      var slot = week.querySelector("[data-day='" + day.dataset.moveDay + "']");
      var mark = day.querySelector(".move-mark");
      if (slot && mark) {
        slot.classList.add(Array.prototype.find.call(day.classList, function (c) { return c.indexOf("move-") === 0 && c !== "move-day"; }));
        slot.appendChild(document.importNode(mark, true));
      }
    });
    mine.told = true;
    var here = week.querySelector(".move-here .move-mark");
    if (here) {
      var stay = document.createElement("button");
      stay.type = "button";
      stay.className = "button";
      stay.textContent = "Leave it here";
      stay.addEventListener("click", function () { leave(true); });
      here.appendChild(stay);
    }
    var first = week.querySelector(".move-mark form button") || stay;
    if (!mine.dragged && first) { first.focus(); }
    if (mine.dropped) { drop(mine.dropped); }
  }

  function pick(grip) {
    leave(false);
    var mine = { grip: grip };
    held = mine;
    week.classList.add("carrying");
    fetch(grip.href, { headers: { "HX-Request": "true" }, credentials: "same-origin" }).then(function (answer) {
      if (!answer.ok) { throw new Error(String(answer.status)); }
      return answer.text();
    }).then(function (html) { show(mine, html); }).catch(function () {
      // without the rules' answers nothing is moved here; the page of its own says what is wrong
      if (held === mine) { leave(false); window.location.assign(grip.href); }
    });
  }

  function under(event) {
    return slots().find(function (slot) {
      var box = slot.getBoundingClientRect();
      return event.clientY >= box.top && event.clientY < box.bottom && event.clientX >= box.left && event.clientX < box.right;
    }) || null;
  }

  function drop(slot) {
    var button = slot.querySelector(".move-mark form button");
    if (button) { button.click(); }
  }

  week.querySelectorAll("[data-grip]").forEach(function (grip) {
    grip.addEventListener("click", function (event) {
      event.preventDefault();
      if (grip.dataset.moved) { delete grip.dataset.moved; return; }
      pick(grip);
    });
    grip.addEventListener("dragstart", function (event) { event.preventDefault(); });
    grip.addEventListener("pointerdown", function (event) {
      if (event.button !== 0) { return; }
      if (grip.hasPointerCapture(event.pointerId)) { grip.releasePointerCapture(event.pointerId); }
      var start = { grip: grip, x: event.clientX, y: event.clientY };
      function move(e) {
        if (!start.on && Math.abs(e.clientX - start.x) + Math.abs(e.clientY - start.y) > 8) {
          start.on = true;
          grip.dataset.moved = "yes";
          pick(grip);
          held.dragged = true;
          held.ghost = document.createElement("div");
          held.ghost.className = "move-ghost";
          held.ghost.textContent = grip.dataset.grip;
          document.body.appendChild(held.ghost);
        }
        if (!start.on || !held) { return; }
        e.preventDefault();
        held.ghost.style.left = e.clientX + "px";
        held.ghost.style.top = e.clientY + "px";
        var over = under(e);
        slots().forEach(function (slot) { slot.classList.toggle("move-over", slot === over); });
        if (e.clientY < 60) { window.scrollBy(0, -16); } else if (e.clientY > window.innerHeight - 60) { window.scrollBy(0, 16); }
      }
      function end(e) {
        document.removeEventListener("pointermove", move);
        document.removeEventListener("pointerup", end);
        document.removeEventListener("pointercancel", end);
        // a click follows only where the pointer went down and up on the grip
        setTimeout(function () { delete grip.dataset.moved; }, 0);
        if (!start.on || !held) { return; }
        if (held.ghost) { held.ghost.remove(); held.ghost = null; }
        var slot = e.type === "pointerup" ? under(e) : null;
        if (slot && !held.told) { held.dropped = slot; } else if (slot && slot.querySelector(".move-mark form button")) { drop(slot); } else if (!slot || slot.classList.contains("move-here")) { leave(true); }
        // dropped where it is refused: the reason stays to be read
      }
      document.addEventListener("pointermove", move, { passive: false });
      document.addEventListener("pointerup", end);
      document.addEventListener("pointercancel", end);
    });
  });

  document.addEventListener("keydown", function (event) {
    if (!held) { return; }
    if (event.key === "Escape") { leave(true); return; }
    var step = event.key === "ArrowDown" || event.key === "ArrowRight" ? 1 : event.key === "ArrowUp" || event.key === "ArrowLeft" ? -1 : 0;
    var all = buttons();
    if (step && all.length) {
      event.preventDefault();
      all[(all.indexOf(document.activeElement) + step + all.length) % all.length].focus();
    }
  });
})();
