package boundwright.web.squad;

import boundwright.athlete.Athlete;
import boundwright.athlete.KeptAnswers;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.load.Answer;
import boundwright.load.DayVerdict;
import boundwright.load.Finding;
import boundwright.load.LoadDesk;
import boundwright.quantity.Notes;
import boundwright.runway.Beginning;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.InHundred;
import boundwright.runway.MarkAdvice;
import boundwright.runway.MeasureFirst;
import boundwright.runway.Rungs;
import boundwright.runway.Tapes;
import boundwright.store.Workbench;
import boundwright.track.Attendance;
import boundwright.track.Group;
import boundwright.web.page.Figures;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Lays out the squad of the day: who is here, their marks in every drill, and what is said of several once. */
final class SquadDesk {
  /** Newest reps among which the last result of a drill is looked for (judgement: some weeks of one athlete). */
  private static final int RECENT = 60;

  private final Workbench bench;
  private final KeptAnswers<DayPlan, List<@Nullable Rep>> lasts;

  SquadDesk(Workbench bench) {
    this.bench = bench;
    this.lasts = new KeptAnswers<>(bench.changes());
  }

  /** An athlete with all that is sorted by. */
  private record Row(Athlete athlete, DayVerdict day, List<@Nullable MarkAdvice> advices, List<@Nullable Rep> lasts) {}

  SquadView of(SquadView.Asked asked, String drillAsked) {
    CoachSettings settings = bench.settings().settings();
    LocalDate today = LocalDate.now(bench.clock());
    DayPlan plan = bench.settings().plan();
    int chosen = chosen(drillAsked, plan);
    Attendance.Roll roll = bench.attendance().today();
    List<Group> groups = bench.attendance().groups();
    List<Athlete> here = asked(roll.here(), asked, groups);
    List<Row> rows = rows(here, plan, settings);
    Comparator<Row> order = order(asked);
    rows.sort(asked.down() ? order.reversed() : order);
    boolean common = rows.size() > 1 && rows.stream().map(r -> r.day().held() + r.day().answer().label()).distinct().count() == 1;
    Rungs rungs = bench.advisor().rungs();
    List<@Nullable Integer> alike = alike(rows, plan, rungs);
    return new SquadView(
        plan, Figures.day(today).replace(" " + today.getYear(), ""), chosen, asked, roll.all().size(), roll.said(), heads(asked, plan, alike),
        rows.stream().map(r -> line(r, plan, chosen, common, alike, rungs, settings, today)).toList(), Stream.concat(together(rows, plan, chosen, settings).stream(), measure(rows, plan, settings).stream()).toList(), loads(rows),
        loadInShort(rows), groups.stream().map(g -> link(g, asked)).toList());
  }

  private List<Row> rows(List<Athlete> here, DayPlan plan, CoachSettings settings) {
    Map<Long, DayVerdict> days = bench.loadDesk().days(here);
    List<Map<Long, MarkAdvice>> marks = marks(here.stream().filter(a -> !LoadDesk.of(days, a).held()).toList(), plan, settings);
    Map<Long, List<@Nullable Rep>> newest = lasts.of(here, plan, some -> lasts(some, plan));
    List<Row> rows = new ArrayList<>();
    for (Athlete a : here) {
      List<@Nullable MarkAdvice> advices = new ArrayList<>();
      marks.forEach(m -> advices.add(m.get(a.id())));
      rows.add(new Row(a, LoadDesk.of(days, a), advices, Objects.requireNonNull(newest.get(a.id()))));
    }
    return rows;
  }

  private List<Map<Long, MarkAdvice>> marks(List<Athlete> bounding, DayPlan plan, CoachSettings settings) {
    List<Map<Long, MarkAdvice>> out = new ArrayList<>();
    for (Drill d : plan.drills()) {
      out.add(d.inSand() ? bench.advisor().advise(bounding, d, settings) : Map.of());
    }
    return out;
  }

  /** Works out what is kept of everybody's marks and last results, without the verdicts of their day. */
  void marksAhead() {
    DayPlan plan = bench.settings().plan();
    List<Athlete> here = bench.attendance().today().here();
    marks(here, plan, bench.settings().settings());
    lasts.of(here, plan, some -> lasts(some, plan));
  }

  /** Works out what is kept of everybody's day. */
  void daysAhead() {
    bench.loadDesk().days(bench.attendance().today().here());
  }

  private Map<Long, List<@Nullable Rep>> lasts(List<Athlete> athletes, DayPlan plan) {
    Map<Long, List<@Nullable Rep>> out = new HashMap<>();
    athletes.forEach(a -> out.put(a.id(), lasts(a, plan)));
    return out;
  }

  private List<@Nullable Rep> lasts(Athlete athlete, DayPlan plan) {
    List<@Nullable Rep> out = new ArrayList<>();
    List<Rep> recent = plan.drills().isEmpty() ? List.of() : bench.reps().recent(athlete.id(), RECENT);
    for (Drill d : plan.drills()) {
      out.add(
          recent.stream()
              .filter(r -> r.sequence().contacts().equals(d.sequence().contacts()) || r.sequence().mirrored().contacts().equals(d.sequence().contacts()))
              .findFirst()
              .orElse(null));
    }
    return out;
  }

  /** Those whose name holds what was typed, and who are in the group asked for. */
  static List<Athlete> asked(List<Athlete> all, SquadView.Asked asked, List<Group> groups) {
    String part = asked.query().toLowerCase(Locale.ROOT);
    Group group = groups.stream().filter(g -> g.id() == asked.group()).findFirst().orElse(null);
    return all.stream()
        .filter(a -> a.name().toLowerCase(Locale.ROOT).contains(part))
        .filter(a -> group == null || group.members().contains(a.id()))
        .toList();
  }

  private static Comparator<Row> order(SquadView.Asked asked) {
    Comparator<Row> byName = Comparator.comparing(r -> r.athlete().name().toLowerCase(Locale.ROOT));
    String sort = asked.sort();
    if (sort.equals("load")) {
      return Comparator.<Row, Boolean>comparing(r -> r.day().held()).thenComparing(r -> r.day().answer()).thenComparing(byName);
    }
    if (!sort.matches("(mark|chance|last)\\d{1,2}")) {
      return byName;
    }
    int drill = Integer.parseInt(sort.replaceAll("\\D", "")) - 1;
    // who has nothing there comes last whichever way round
    double none = asked.down() ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    return Comparator.<Row>comparingDouble(r -> figure(r, sort, drill, none)).thenComparing(byName);
  }

  private static double figure(Row row, String sort, int drill, double none) {
    if (drill < 0 || drill >= row.advices().size()) {
      return none;
    }
    MarkAdvice advice = row.advices().get(drill);
    Rep last = row.lasts().get(drill);
    if (sort.startsWith("last")) {
      return last == null ? none : last.date().toEpochDay();
    }
    return advice == null ? none : sort.startsWith("mark") ? advice.markToSand_m() : advice.chance();
  }

  /** For each drill the approach steps if everybody who bounds has the same, so that the head says it once; else null. */
  private static List<@Nullable Integer> alike(List<Row> rows, DayPlan plan, Rungs rungs) {
    List<@Nullable Integer> out = new ArrayList<>();
    for (Drill d : plan.drills()) {
      List<Integer> steps = rows.stream().filter(r -> !r.day().held()).map(r -> rungs.stepsFor(r.athlete(), d)).distinct().toList();
      out.add(d.steps() != null ? d.steps() : steps.size() == 1 ? steps.get(0) : null);
    }
    return out;
  }

  private static List<SquadView.Head> heads(SquadView.Asked asked, DayPlan plan, List<@Nullable Integer> alike) {
    List<SquadView.Head> out = new ArrayList<>();
    out.add(head("Athlete", "", 0, asked, "name"));
    for (int i = 1; i <= plan.drills().size(); i++) {
      Drill d = plan.drills().get(i - 1);
      Integer steps = alike.get(i - 1);
      String how = (steps == null ? "own steps" : Figures.fromSteps(steps)) + ", " + d.sets() + " \u00d7 " + d.reps();
      out.add(
          d.inSand()
              ? head(d.sequence().text(), how, i, asked, "mark" + i, "chance" + i, "last" + i)
              : head(d.sequence().text(), how + ", flat", i, asked, "last" + i));
    }
    out.add(head("Load", "", 0, asked, "load"));
    return List.copyOf(out);
  }

  private static SquadView.Head head(String label, String how, int drill, SquadView.Asked asked, String... columns) {
    List<SquadView.Sort> sorts = new ArrayList<>();
    String aria = "none";
    for (String c : columns) {
      boolean now = c.equals(asked.sort());
      aria = now ? asked.aria(c) : aria;
      boolean down = now && !asked.down();
      sorts.add(new SquadView.Sort(drill == 0 ? label : c.replaceAll("\\d", ""), href(asked.query(), asked.group(), c, down), now));
    }
    return new SquadView.Head(label, how, drill, List.copyOf(sorts), aria);
  }

  private static String href(String query, long group, String sort, boolean down) {
    return "/?sort=" + sort + (down ? "&down=1" : "") + (query.isEmpty() ? "" : "&q=" + URLEncoder.encode(query, StandardCharsets.UTF_8))
        + (group == 0 ? "" : "&group=" + group);
  }

  private static SquadView.GroupLink link(Group g, SquadView.Asked asked) {
    boolean now = g.id() == asked.group();
    return new SquadView.GroupLink(g.id(), g.name(), href(asked.query(), now ? 0 : g.id(), asked.sort(), asked.down()), now);
  }

  private static SquadView.Line line(
      Row row, DayPlan plan, int chosen, boolean common, List<@Nullable Integer> alike, Rungs rungs, CoachSettings settings, LocalDate today) {
    List<SquadView.Cell> cells = new ArrayList<>();
    for (int i = 0; i < plan.drills().size() && !row.day().held(); i++) {
      String steps = alike.get(i) == null ? Figures.rung(rungs.stepsFor(row.athlete(), plan.drills().get(i))) : "";
      cells.add(cell(row, i, steps, settings, today));
    }
    DayVerdict day = row.day();
    String contacts = day.soFar().contacts() + (day.planned() ? " of " + day.withPlan().contacts() : "");
    return new SquadView.Line(
        row.athlete(), cells, day.held() ? "no bounding" : day.answer().label(), day.answer().label(), common, contacts,
        "/athlete/" + row.athlete().id() + (chosen == 0 ? "" : "?drill=" + chosen));
  }

  private static SquadView.Cell cell(Row row, int i, String steps, CoachSettings settings, LocalDate today) {
    MarkAdvice advice = row.advices().get(i);
    String last = last(row.lasts().get(i), settings, today);
    if (advice == null) {
      return new SquadView.Cell(i + 1, List.of(), true, "", true, last, steps);
    }
    Beginning beginning = advice.beginning();
    boolean certain = advice.window() != null;
    String chance = beginning == null ? InHundred.said(advice.inHundred()) : beginning.odds();
    return new SquadView.Cell(
        i + 1, Figures.of(settings.unit(), advice.markToSand_m()), certain || beginning != null, chance, certain || beginning != null, last, steps);
  }

  private static String last(@Nullable Rep rep, CoachSettings settings, LocalDate today) {
    if (rep == null) {
      return "";
    }
    Outcome outcome = rep.outcome();
    Double landing = rep.landing_m();
    String what = outcome != null ? outcome.label() : landing != null ? settings.unit().write(landing) : "done";
    return rep.date().equals(today) ? what : what + ", " + Figures.day(rep.date(), today);
  }

  /** What body and load say of those who are not simply allowed. */
  private static List<SquadView.Together> loads(List<Row> rows) {
    Map<String, List<String>> said = new LinkedHashMap<>();
    for (Row r : rows) {
      String day = said(r.day());
      if (!day.isEmpty()) {
        said.computeIfAbsent(day, k -> new ArrayList<>()).add(r.athlete().name());
      }
    }
    return named(said, rows.size());
  }

  /** Those notes in a line: {@code No bounding: Tovi Plover. Caution: 5.} */
  private static String loadInShort(List<Row> rows) {
    List<String> held = rows.stream().filter(r -> r.day().held()).map(r -> r.athlete().name()).toList();
    List<String> out = new ArrayList<>();
    if (!held.isEmpty()) {
      out.add("No bounding: " + Names.few(held) + ".");
    }
    for (Answer answer : List.of(Answer.REFUSED, Answer.CAUTION)) {
      long n = rows.stream().filter(r -> !r.day().held() && r.day().answer() == answer).count();
      if (n > 0) {
        String label = Notes.capital(answer.label());
        out.add(label + ": " + (n > 1 && n == rows.size() ? "everybody" : String.valueOf(n)) + ".");
      }
    }
    return String.join(" ", out);
  }

  /**
   * A sentence about a mark.
   *
   * @param inSight what everybody who is meant has in common, figures included
   * @param folded the rest; figures may differ from athlete to athlete
   */
  private record Said(String inSight, String folded) {
    /** A warning: its first clause is in sight where the rest differs. */
    static Said warning(String sentence, MarkAdvice advice) {
      if (sentence.equals(advice.elsewhere())) {
        return new Said("the reps were made on another surface", sentence);
      }
      String head = sentence.split("[:;.](?=\\s)", 2)[0];
      return new Said(head, sentence);
    }

    /** A beginning's odds stand in sight, what settles them below. */
    static Said beginning(Beginning b) {
      return new Said(b.odds() + " land in the sand", Notes.capital(b.soon()) + ".");
    }

    /** Alike are those that differ in the figures of what is folded. */
    String alike() {
      return inSight + "|" + folded.replaceAll("\\d", "");
    }

    boolean isWarning() {
      return folded.startsWith(inSight);
    }
  }

  /** What is said once of several about the drill that is chosen: beginnings and warnings. */
  private static List<SquadView.Together> together(List<Row> rows, DayPlan plan, int chosen, CoachSettings settings) {
    Map<Said, List<String>> said = new LinkedHashMap<>();
    if (chosen > 0 && plan.drills().get(chosen - 1).inSand()) {
      for (Row r : rows) {
        MarkAdvice advice = r.advices().get(chosen - 1);
        if (advice != null) {
          Beginning b = advice.beginning();
          if (b != null) {
            said.computeIfAbsent(Said.beginning(b), k -> new ArrayList<>()).add(r.athlete().name());
          }
          advice.warningsBesideStart(settings.unit())
              .forEach(w -> said.computeIfAbsent(Said.warning(w, advice), k -> new ArrayList<>()).add(r.athlete().name()));
        }
      }
    }
    Map<String, List<Said>> alike = new LinkedHashMap<>();
    said.keySet().forEach(w -> alike.computeIfAbsent(w.alike(), k -> new ArrayList<>()).add(w));
    return alike.values().stream().map(sentences -> inShort(sentences, said, rows.size())).toList();
  }

  /** One line with all names; each athlete's own figures are folded below it where they differ. */
  private static SquadView.Together inShort(List<Said> sentences, Map<Said, List<String>> said, int everybody) {
    Said first = sentences.get(0);
    List<String> names = sentences.stream().flatMap(w -> said.getOrDefault(w, List.of()).stream()).toList();
    if (sentences.size() > 1) {
      List<String> each = sentences.stream().map(w -> Names.few(said.getOrDefault(w, List.of())) + ": " + w.folded()).toList();
      return together(names, first.inSight() + ".", everybody, each);
    }
    return first.isWarning()
        ? together(names, first.folded(), everybody, List.of())
        : together(names, first.inSight() + ".", everybody, List.of(first.folded()));
  }

  /** What is said of all needs no name: the sentence begins with a capital instead. */
  private static SquadView.Together together(List<String> names, String said, int everybody, List<String> each) {
    boolean all = names.size() > 1 && names.size() == everybody;
    return new SquadView.Together(all ? "" : Names.few(names), all ? Notes.capital(said) : said, each);
  }

  private static List<SquadView.Together> named(Map<String, List<String>> said, int everybody) {
    List<SquadView.Together> out = new ArrayList<>();
    said.forEach(
        (what, names) ->
            out.add(new SquadView.Together(names.size() > 1 && names.size() == everybody ? "Everybody" : Names.few(names), what, List.of())));
    return List.copyOf(out);
  }

  /** What is said of a day that is not simply allowed: the stop, the body, or what else decides; else empty. */
  private static String said(DayVerdict day) {
    if (day.held()) {
      return "no bounding. " + day.reason();
    }
    return day.answer() == Answer.ALLOWED ? "" : day.answer().label() + ". " + day.body().map(Finding::said).orElseGet(day::lead);
  }

  /** The run-up to measure first; how far the start may be out is folded below it. */
  private static Optional<SquadView.Together> measure(List<Row> rows, DayPlan plan, CoachSettings settings) {
    List<Tapes.Wish> wishes = new ArrayList<>();
    for (Row r : rows) {
      for (int i = 0; i < plan.drills().size(); i++) {
        MarkAdvice advice = r.advices().get(i);
        if (advice != null) {
          wishes.add(new Tapes.Wish(r.athlete().name(), plan.drills().get(i).sequence().text(), advice));
        }
      }
    }
    return MeasureFirst.of(wishes).map(m -> new SquadView.Together("", m.asked(), List.of(m.guess(settings.unit()))));
  }

  /** The drill asked for, or the first that ends in sand, or the first. */
  private static int chosen(String asked, DayPlan plan) {
    int drills = plan.drills().size();
    if (asked.matches("\\d{1,4}") && Integer.parseInt(asked) >= 1 && Integer.parseInt(asked) <= drills) {
      return Integer.parseInt(asked);
    }
    for (int i = 0; i < drills; i++) {
      if (plan.drills().get(i).inSand()) {
        return i + 1;
      }
    }
    return drills == 0 ? 0 : 1;
  }
}
