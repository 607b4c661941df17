// The little that pages do themselves: say when the program does not answer, print, and keep "other" steps together.
(function () {
  "use strict";
  function say(text) {
    var notice = document.getElementById("notice");
    if (!notice) { return; }
    var box = document.createElement("div");
    box.className = "refusal loud";
    var line = document.createElement("p");
    line.textContent = text;
    box.appendChild(line);
    notice.replaceChildren(box);
    notice.scrollIntoView({ block: "nearest" });
    // what stood beside the buttons was said of an earlier tap
    var here = document.querySelector("#log .said, #log .refusal");
    if (here) {
      here.className = "refusal";
      here.setAttribute("role", "alert");
      here.replaceChildren(line.cloneNode(true));
    }
  }
  document.addEventListener("htmx:sendError", function () {
    say("The program does not answer. See that it is still running, reload this page and look at the last reps before you tap again.");
  });
  // a thumb that bounces must not log a second rep: the fresh buttons wait a moment before they take a tap
  document.addEventListener("htmx:afterSwap", function (event) {
    var sent = event.detail.requestConfig;
    if (!sent || sent.verb !== "post") { return; }
    function hold(held) {
      document.querySelectorAll(".taps button").forEach(function (b) { b.disabled = held; });
    }
    hold(true);
    window.setTimeout(function () { hold(false); }, 900);
  });
  document.addEventListener("input", function (event) {
    if (event.target.id === "other") {
      var radio = document.querySelector("input[name=steps][value=other]");
      if (radio) { radio.checked = true; }
    }
  });
  document.addEventListener("change", function (event) {
    if (event.target.name === "steps" && event.target.type === "radio" && event.target.value !== "other") {
      var other = document.getElementById("other");
      if (other) { other.value = ""; }
    }
  }, true);
  // on a desk there is room for the choice beside the marks
  var choose = document.getElementById("choose");
  if (choose && window.matchMedia("(min-width: 56rem)").matches) { choose.open = true; }
  // a list that was opened stays open when the part of the page around it is written anew
  var opened = [];
  document.addEventListener("htmx:beforeSwap", function () {
    opened = Array.prototype.map.call(document.querySelectorAll("#work details[id][open]"), function (d) { return d.id; });
  });
  document.addEventListener("htmx:afterSwap", function () {
    opened.forEach(function (id) {
      var again = document.getElementById(id);
      if (again && !again.classList.contains("guard")) { again.open = true; }
    });
  });
  // on a phone an athlete's pages stand in one row that is longer than the screen: the one that is shown is in sight
  document.querySelectorAll(".tabs a[aria-current]").forEach(function (here) {
    var row = here.parentElement;
    row.scrollLeft = here.offsetLeft - row.offsetLeft - (row.clientWidth - here.offsetWidth) / 2;
  });
  document.querySelectorAll("[data-print]").forEach(function (button) {
    button.hidden = false;
    button.addEventListener("click", function () { window.print(); });
  });
})();
