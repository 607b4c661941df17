// The strip of a season begins at today; without this it begins with the season.
(function () {
  "use strict";
  var strip = document.querySelector("[data-today-x]");
  var names = strip && strip.querySelector(".season-who");
  if (names) {
    var seen = strip.clientWidth - names.offsetWidth;
    strip.scrollLeft = Math.max(0, Number(strip.dataset.todayX) - seen / 3);
  }
})();
