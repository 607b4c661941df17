// Draws the runway page from what is known and tells what was touched. No decision is made here.
(function () {
  "use strict";
  var now = null;
  var act = null;
  var seen = {};

  function $(id) { return document.getElementById(id); }
  function text(id, said) { var e = $(id); if (e.textContent !== said) { e.textContent = said; } }
  function show(id, there) { $(id).hidden = !there; }
  function button(name, touched, label) {
    var b = document.createElement("button");
    b.type = "button";
    b.textContent = name;
    if (label) { b.setAttribute("aria-label", label); }
    b.addEventListener("click", touched);
    return b;
  }
  function shortName(name) {
    var parts = name.split(/\s+/);
    var last = parts[parts.length - 1].charAt(0);
    // a number in place of a family name tells people apart, its first digit does not
    return parts.length < 2 || /\d/.test(last) ? name : parts[0] + " " + last + ".";
  }
  function parts(place, list) {
    place.replaceChildren.apply(place, list.map(function (p) {
      var s = document.createElement("span");
      var f = document.createElement("span");
      var u = document.createElement("span");
      f.className = "fig";
      f.textContent = p.text;
      u.className = "unit";
      u.textContent = " " + p.small + " ";
      s.append(f, u);
      return s;
    }));
  }
  function written(list) { return list.map(function (p) { return p.text + " " + p.small; }).join(" "); }

  // ---- the card ----

  function all(v) {
    now = v;
    var first = $("rw").hidden;
    show("rw-wait", false);
    show("rw", true);
    net(v);
    show("rw-trouble", v.S.trouble !== "");
    text("rw-trouble", v.S.trouble);
    if (v.card === null) { nobody(); return; }
    five(v);
    card(v);
    tape(v);
    drills(v);
    line(v);
    taps(v);
    chips(v);
    everybody(v);
    fields(v);
    ticks(v);
    logged(v);
    if (first) { begin(); }
  }

  function nobody() {
    text("rw-name", "Nobody is on the list yet");
    $("rw-mark").replaceChildren();
    ["rw-label", "rw-works", "rw-start", "rw-say"].forEach(function (id) { text(id, ""); });
  }

  function five(v) {
    $("rw-five").replaceChildren.apply($("rw-five"), v.five.map(function (id) {
      return button(shortName(v.name(id)), function () { act.turnTo(id); }, v.name(id));
    }));
  }

  function card(v) {
    var c = v.card;
    var own = v.asked.own;
    text("rw-name", c.name);
    var warning = c.held ? "" : c.caution || c.warnings[0] || "";
    show("rw-warn", warning !== "");
    text("rw-warn", warning);
    var figure = $("rw-mark");
    if (c.held || c.mark.length === 0 || own) {
      figure.className = "figure words";
      figure.textContent = own ? "No mark: this is not in the plan" : c.held ? "No bounding. " + c.reason : c.reason;
      text("rw-label", "");
      text("rw-works", "");
      $("rw-start").replaceChildren();
      strip({ strip: "", stripWide: "" });
    } else {
      text("rw-label", !c.inSand ? "level ground it takes" : c.open ? "take-off mark to sand" : "best mark to sand; none works as you ask");
      figure.className = "figure" + (c.mark.length > 1 ? " long" : c.mark[0].text.length > 5 ? " six" : "") + (c.open || !c.inSand ? "" : " shut");
      parts(figure, c.mark);
      text("rw-works", [c.works, c.chance === "" ? "" : c.chance + " count"].filter(Boolean).join("; "));
      start(c);
      strip(c);
    }
    text("rw-say", c.held ? "" : sayNext(v));
    text("rw-more", c.held ? "" : c.roomLeft);
    var why = c.held ? c.reason : [c.restsOn, c.startSaid ? "Run-up " + c.startSaid + "." : "", c.warnings.join(" "), c.caution].filter(Boolean).join(" ");
    text("rw-rests", why);
  }

  function start(c) {
    var place = $("rw-start");
    if (c.start.length === 0) { place.textContent = c.startSaid; return; }
    parts(place, c.start);
    place.prepend("start ");
    place.append(c.from);
  }

  function strip(c) {
    if (seen.strip === c.strip) { return; }
    seen.strip = c.strip;
    picture($("rw-strip"), c.strip);
    picture($("rw-wide"), c.stripWide);
  }

  function picture(place, svg) {
    place.replaceChildren();
    if (svg === "") { return; }
    var read = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
    if (read.nodeName === "svg") { place.appendChild(document.importNode(read, true)); }
  }

  // what to say to this athlete now: about the last rep's fault, or what to measure, or how to begin
  function sayNext(v) {
    var last = v.card.done[0];
    var cue = last ? cues(v, last.faults) : "";
    return cue !== "" ? cue : v.card.next || v.card.first;
  }
  function faultOf(v, key) { return v.S.page.faults.filter(function (f) { return f.key === key.split("@")[0]; })[0]; }
  function cues(v, faults) {
    var known = faults.map(function (k) { return faultOf(v, k); }).filter(Boolean);
    return known.length > 0 && known[0].say ? "Say: " + known[0].say : "";
  }
  function faultsInWords(v, looked, faults) {
    if (!looked) { return "not looked at"; }
    return faults.length === 0 ? "clean" : faults.map(function (k) { var f = faultOf(v, k); return f ? f.label : k; }).join(", ");
  }

  function tape(v) {
    var place = $("rw-tape");
    place.replaceChildren();
    if (!v.asked.sand || v.tape_m === null || v.card.held) { return; }
    var lies = v.model.write(v.tape_m);
    if (v.card.mark_m === null || v.asked.own || lies === v.model.write(v.card.mark_m)) { return; }
    var b = button("I moved it to " + v.model.write(v.card.mark_m), function () { act.tape(now.card.mark_m); });
    b.className = "button";
    b.id = "rw-moved";
    place.append("Tape lies at " + lies, b);
  }

  function drills(v) {
    var select = $("rw-drill");
    var lines = v.person.drills.map(function (d) {
      return (d.drill > 0 ? d.drill + ". " : "") + d.letters + " " + d.from + (d.repsPlanned > 0 ? ", " + d.repsDone + " of " + d.repsPlanned : "");
    });
    if (seen.drills !== lines.join("|")) {
      seen.drills = lines.join("|");
      select.replaceChildren.apply(select, v.person.drills.map(function (d, i) { return new Option(lines[i], d.drill); }));
    }
    select.value = String(v.asked.drill);
  }

  // ---- the tray ----

  function net(v) {
    var n = v.waiting.length;
    var said = n > 0 ? n + " not sent yet" : "";
    if (v.gone) { said += (said ? ". " : "") + (v.why || "No connection: taps are kept on this phone."); }
    if (v.refused.length > 0) { said += (said ? ". " : "") + v.refused.length + " not taken, see below"; }
    $("rw-net").className = said ? "rw-net" : "rw-net quietly";
    text("rw-net", said || "all sent");
  }

  function outcomeSaid(o) { return o ? o.toLowerCase() : ""; }

  function line(v) {
    var l = v.S.last;
    var said = "";
    if (v.S.giving) {
      said = "Whose was it?";
    } else if (l && l.undone) {
      said = shortName(v.name(l.id)) + ": taken back.";
    } else if (l && l.handed) {
      said = "Now " + shortName(v.name(l.id)) + "\u2019s.";
    } else if (l) {
      var cue = l.tap.looked ? cues(v, l.tap.faults) : "";
      said = shortName(v.name(l.id)) + ": " + outcomeSaid(l.outcome) + ". " + (cue || (l.said || "").split(":")[0].replace(/\.$/, "") + ".");
      said = said.replace(/ \.$/, "");
    }
    text("rw-said", said);
    var may = Boolean(l && !l.undone);
    $("rw-what").disabled = !may;
    $("rw-what").setAttribute("aria-expanded", v.S.giving ? "true" : "false");
    $("rw-what").setAttribute("aria-label", may ? said + " Another athlete's?" : said || "no rep yet");
    show("rw-undo", may);
    text("rw-next-name", v.next === null ? "" : shortName(v.name(v.next)));
    $("rw-next").setAttribute("aria-label", "next athlete" + (v.next === null ? "" : ", " + v.name(v.next)));
  }

  function taps(v) {
    var flat = !v.asked.sand;
    $("rw-taps").classList.toggle("flat", flat);
    document.querySelectorAll("#rw-taps button").forEach(function (b) {
      var of = b.dataset.outcome;
      b.hidden = of === "DONE" ? !flat : flat && of !== "ABANDONED";
    });
  }

  function chips(v) {
    var box = $("rw-chips");
    box.classList.toggle("giving", Boolean(v.S.giving));
    if (v.S.giving) {
      var g = v.S.giving;
      var others = [v.S.who].concat(v.five).filter(function (id) { return id !== g.id; }).slice(0, 5);
      box.replaceChildren.apply(box, others.map(function (id) {
        return button(shortName(v.name(id)), function () { act.hand(g.of, g.id, id); }, "It was " + v.name(id));
      }).concat([button("all", function () { $("rw-all").open = true; $("rw-all").scrollIntoView({ block: "start" }); }, "Show everybody")]));
      return;
    }
    var look = v.S.last && v.S.last.going ? (v.S.last.tap.looked ? v.S.last.tap.faults : null) : v.S.look;
    var top = v.S.top[v.id] || [];
    var made = [["", "clean"]].concat(top.map(function (k) { return [k, (faultOf(v, k) || { label: k }).label]; }));
    box.replaceChildren.apply(box, made.map(function (m) {
      var b = button(m[1], function () { act.touch(m[0]); });
      var on = look !== null && (m[0] === "" ? look.length === 0 : look.some(function (k) { return k.split("@")[0] === m[0]; }));
      b.setAttribute("aria-pressed", on ? "true" : "false");
      return b;
    }));
  }

  function busy(there) { $("rw-taps").setAttribute("aria-busy", there ? "true" : "false"); }
  function light(b) {
    document.querySelectorAll("#rw-taps .lit").forEach(function (x) { x.classList.remove("lit"); });
    if (b) { b.classList.add("lit"); }
  }

  // ---- below ----

  function everybody(v) {
    var ids = v.S.people;
    $("rw-everybody").replaceChildren.apply($("rw-everybody"), ids.map(function (p) {
      var li = document.createElement("li");
      var b = button(p.name + (p.held ? ", no bounding" : ""), function () {
        if (now.S.giving) { act.hand(now.S.giving.of, now.S.giving.id, p.athleteId); } else { act.turnTo(p.athleteId); window.scrollTo(0, 0); }
      });
      if (p.athleteId === v.id) { b.setAttribute("aria-current", "true"); }
      li.appendChild(b);
      return li;
    }));
  }

  function put(id, value) { var f = $(id); if (document.activeElement !== f) { f.value = value; } }

  function fields(v) {
    put("rw-f-tape", v.tape_m === null ? "" : v.model.write(v.tape_m));
    put("rw-f-steps", String(v.asked.steps));
    put("rw-f-surface", v.asked.surface);
    put("rw-f-sequence", v.asked.sequence);
    var feet = v.card.feet.join("");
    if (seen.feet === feet) { return; }
    seen.feet = feet;
    $("rw-f-prints").replaceChildren.apply($("rw-f-prints"), v.card.feet.slice(1).map(function (foot, i) {
      var div = document.createElement("div");
      div.className = "field";
      var label = document.createElement("label");
      label.textContent = "Contact " + (i + 2) + ", " + (foot === "R" ? "right" : "left");
      label.htmlFor = "rw-p-" + (i + 2);
      var input = document.createElement("input");
      input.id = label.htmlFor;
      input.autocomplete = "off";
      div.append(label, input);
      return div;
    }));
    $("rw-f-after").replaceChildren.apply($("rw-f-after"), [new Option("not known", "")].concat(v.card.feet.map(function (f, i) { return new Option(i + 1, i + 1); })));
  }

  /** What was measured of the next rep: {landing_m, prints, after}, or {refused}. */
  function lengths(model) {
    try {
      var landing = $("rw-f-landing").value.trim();
      var prints = Array.from($("rw-f-prints").querySelectorAll("input")).map(function (f) { return f.value.trim() === "" ? "-" : String(model.read(f.value)); });
      while (prints.length > 0 && prints[prints.length - 1] === "-") { prints.pop(); }
      return { landing_m: landing === "" ? null : model.read(landing), prints: prints.join(","), after: $("rw-f-after").value };
    } catch (e) {
      return { refused: e.message };
    }
  }
  function emptyLengths() {
    $("rw-f-landing").value = "";
    $("rw-f-after").value = "";
    $("rw-f-prints").querySelectorAll("input").forEach(function (f) { f.value = ""; });
  }
  function refused(said) {
    text("rw-f-refused", said);
    if (said) { $("rw-other").open = true; $("rw-f-refused").scrollIntoView({ block: "center" }); }
  }

  function ticks(v) {
    var look = v.S.last && v.S.last.going ? (v.S.last.tap.looked ? v.S.last.tap.faults : null) : v.S.look;
    $("rw-ticks").replaceChildren.apply($("rw-ticks"), v.S.page.faults.map(function (f) {
      var li = document.createElement("li");
      var on = (look || []).some(function (k) { return k.split("@")[0] === f.key; });
      var b = button(f.label, function () { act.touch(f.key); });
      b.className = "button";
      b.setAttribute("aria-pressed", on ? "true" : "false");
      li.appendChild(b);
      if (on) {
        v.card.feet.forEach(function (foot, i) {
          var key = f.key + "@" + (i + 1);
          var c = button(String(i + 1), function () { act.touch(key); }, f.label + " on contact " + (i + 1) + ", " + (foot === "R" ? "right" : "left"));
          c.className = "button";
          c.setAttribute("aria-pressed", look.indexOf(key) >= 0 ? "true" : "false");
          li.appendChild(c);
        });
      }
      return li;
    }));
  }

  function logged(v) {
    var rows = v.card.done.map(function (d) {
      var li = document.createElement("li");
      var notYet = v.waiting.some(function (t) { return t.token === d.of; });
      li.append(d.letters + ": " + d.said + "; " + faultsInWords(v, d.looked, d.faults) + (notYet ? "; not sent yet" : ""));
      var u = button("Undo", function () { act.undo(d.of, v.id); }, "Undo: " + d.said);
      var g = button("another\u2019s", function () { act.give(d.of, v.id); }, "Another athlete's: " + d.said);
      u.className = g.className = "button";
      li.append(u, g);
      return li;
    });
    v.refused.forEach(function (t) {
      var li = document.createElement("li");
      li.className = "refused";
      li.append("Not taken, " + v.name(t.athleteId) + " " + outcomeSaid(t.outcome || t.kind) + ": " + t.why);
      var b = button("throw it away", function () { act.throwAway(t); });
      b.className = "button";
      li.append(b);
      rows.unshift(li);
    });
    $("rw-logged").replaceChildren.apply($("rw-logged"), rows);
    if (v.refused.length > 0) { $("rw-today").open = true; }
  }

  // ---- touch ----

  function begin() {
    var main = $("main");
    main.tabIndex = -1;
    main.focus({ preventScroll: true });
  }

  function listen(actions) {
    act = actions;
    document.querySelectorAll("#rw-taps button").forEach(function (b) { b.addEventListener("click", function () { act.log(b.dataset.outcome, b); }); });
    $("rw-prev").addEventListener("click", function () { act.previous(); });
    $("rw-next").addEventListener("click", function () { act.next(); });
    $("rw-undo").addEventListener("click", function () { var l = act.last(); act.undo(l.of, l.id); });
    $("rw-what").addEventListener("click", function () { var l = act.last(); act.give(l.of, l.id); });
    $("rw-drill").addEventListener("change", function (e) { act.drill(Number(e.target.value)); });
    field("rw-f-tape", function (t) { act.tape(t === "" ? null : now.model.read(t)); });
    field("rw-f-steps", function (t) {
      if (!/^\d{1,2}$/.test(t)) { throw new Error("Approach steps are a whole number, 0 to 26."); }
      act.free({ steps: Number(t) });
    });
    field("rw-f-sequence", function (t) { act.free({ sequence: t }); });
    field("rw-f-surface", function (t) { act.free({ surface: t }); });
    swipes($("rw-card"));
    document.addEventListener("keydown", function (e) {
      if (/^(INPUT|SELECT|TEXTAREA)$/.test(e.target.nodeName) || e.altKey || e.ctrlKey || e.metaKey) { return; }
      if (e.key === "ArrowRight") { act.next(); } else if (e.key === "ArrowLeft") { act.previous(); }
    });
  }

  function field(id, taken) {
    $(id).addEventListener("change", function (e) {
      try { refused(""); taken(e.target.value.trim()); } catch (why) { refused(why.message); }
    });
  }

  function swipes(place) {
    var from = null;
    place.addEventListener("touchstart", function (e) { from = e.touches.length === 1 ? e.touches[0] : null; }, { passive: true });
    place.addEventListener("touchend", function (e) {
      if (!from) { return; }
      var dx = e.changedTouches[0].clientX - from.clientX;
      var dy = e.changedTouches[0].clientY - from.clientY;
      from = null;
      if (Math.abs(dx) < 60 || Math.abs(dx) < 2 * Math.abs(dy)) { return; }
      if (dx < 0) { act.next(); } else { act.previous(); }
    }, { passive: true });
  }

  function waiting(said) { text("rw-wait", said); }
  function tier(said, why) { text("rw-tier", said); text("rw-tier-why", why); }

  window.boundwrightDraw = {
    all: all, listen: listen, waiting: waiting, busy: busy, light: light, lengths: lengths, emptyLengths: emptyLengths, refused: refused, tier: tier, written: written
  };
})();
