// Squad pages: names are found as they are typed, who is here is counted, and a drill can be dragged to its place.
(function () {
  "use strict";
  var find = document.querySelector("[data-find]");
  if (find) {
    var button = document.querySelector("[data-find-button]");
    if (button) { button.hidden = true; }
    find.addEventListener("input", function () {
      var part = find.value.trim().toLowerCase();
      document.querySelectorAll("[data-name]").forEach(function (line) {
        line.hidden = line.dataset.name.toLowerCase().indexOf(part) < 0;
      });
    });
    // Enter in the search must not lose ticks that were not kept yet
    find.form.addEventListener("submit", function (event) {
      if (document.querySelector(".roll-call")) { event.preventDefault(); }
    });
  }
  var count = document.querySelector("[data-count]");
  if (count) {
    count.closest("form").addEventListener("change", function () {
      var boxes = count.closest("form").querySelectorAll("input[name=here]");
      var here = Array.prototype.filter.call(boxes, function (b) { return b.checked; }).length;
      count.textContent = here === boxes.length ? "all " + here + " here" : here + " of " + boxes.length + " here";
    });
  }
  var plan = document.querySelector("[data-plan]");
  if (!plan) { return; }
  var keep = plan.querySelector("[data-keep]");
  if (keep) { keep.hidden = true; }
  // listened for on the whole page: a line that is moved in the page loses the pointer that it had captured
  var line = null;
  var before = null;
  function drop(keepIt) {
    if (!line) { return; }
    var moved = line;
    line = null;
    moved.classList.remove("dragged");
    if (!keepIt) {
      moved.parentNode.insertBefore(moved, before);
    } else if (moved.nextElementSibling !== before) {
      // not through htmx: the page is written anew with the numbers in their new order
      HTMLFormElement.prototype.submit.call(plan);
    }
  }
  plan.querySelectorAll("[data-grip]").forEach(function (grip) {
    grip.addEventListener("pointerdown", function (event) {
      event.preventDefault();
      if (grip.hasPointerCapture(event.pointerId)) { grip.releasePointerCapture(event.pointerId); }
      line = grip.closest("li");
      before = line.nextElementSibling;
      line.classList.add("dragged");
    });
  });
  document.addEventListener("pointermove", function (event) {
    if (!line) { return; }
    var others = Array.prototype.filter.call(line.parentNode.children, function (l) { return l !== line; });
    var below = others.find(function (l) {
      var box = l.getBoundingClientRect();
      return event.clientY < box.top + box.height / 2;
    });
    if ((below || null) !== line.nextElementSibling) { line.parentNode.insertBefore(line, below || null); }
  });
  document.addEventListener("pointerup", function () { drop(true); });
  document.addEventListener("pointercancel", function () { drop(false); });
  document.addEventListener("keydown", function (event) { if (event.key === "Escape") { drop(false); } });
})();
