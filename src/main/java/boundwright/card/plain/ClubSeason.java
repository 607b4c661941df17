package boundwright.card.plain;

import boundwright.athlete.Athlete;
import boundwright.card.plain.PlainReport.Part;
import boundwright.jump.Event;
import boundwright.load.account.DayLoad;
import boundwright.meet.MeetSheet;
import boundwright.meet.Placing;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The squad from one day to another: who came, what was done, how far they are, and the meets. */
final class ClubSeason {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMMM yyyy", Locale.ENGLISH);

  private final PlainReports.Sources from;
  private final LocalDate first;
  private final LocalDate last;
  private final LocalDate today;
  private final LengthUnit unit;

  ClubSeason(PlainReports.Sources from, LocalDate first, LocalDate last, LocalDate today, LengthUnit unit) {
    this.from = from;
    this.first = first;
    this.last = last;
    this.today = today;
    this.unit = unit;
  }

  List<Part> parts() {
    List<Athlete> squad = from.athletes().all();
    List<MeetSheet> meets =
        from.meets().all().stream()
            .filter(m -> !m.date().isBefore(first) && !m.date().isAfter(last) && squad.stream().anyMatch(a -> m.entrantOf(a.id()).isPresent()))
            .sorted(Comparator.comparing(MeetSheet::date))
            .toList();
    List<Result> results = results(squad, meets);
    Map<Long, List<DayLoad>> work = from.work().since(squad, first);
    List<List<String>> rows = new ArrayList<>();
    SortedMap<YearMonth, Set<LocalDate>> days = new TreeMap<>();
    SortedMap<YearMonth, Integer> contacts = new TreeMap<>();
    List<DayLoad> done = new ArrayList<>();
    for (Athlete a : squad) {
      List<DayLoad> own = work.getOrDefault(a.id(), List.of()).stream().filter(d -> !d.isEmpty() && !d.date().isAfter(last)).toList();
      done.addAll(own);
      for (DayLoad d : own) {
        days.computeIfAbsent(YearMonth.from(d.date()), m -> new HashSet<>()).add(d.date());
        contacts.merge(YearMonth.from(d.date()), d.contacts(), Integer::sum);
      }
      rows.add(
          List.of(
              a.name(), String.valueOf(own.size()), String.valueOf(own.stream().mapToInt(DayLoad::contacts).sum()), Athlete.fromSteps(a.rung()).replaceFirst("^from ", ""), best(a, results)));
    }
    Set<LocalDate> all = new HashSet<>();
    days.values().forEach(all::addAll);
    int sum = contacts.values().stream().mapToInt(Integer::intValue).sum();
    List<Part> out = new ArrayList<>();
    out.add(
        Part.of(
            "Who came, and how far they are",
            List.of(Notes.counted(squad.size(), "athlete") + ", training on " + Notes.counted(all.size(), "day") + ", " + sum + " contacts with the ground in jumps and bounds." + PlainReports.runThroughs(done)),
            List.of("Athlete", "Days", "Contacts", "Run-up", "Best in a meet"), rows));
    List<List<String>> months = new ArrayList<>();
    days.forEach((m, on) -> months.add(List.of(MONTH.format(m), String.valueOf(on.size()), String.valueOf(contacts.getOrDefault(m, 0)))));
    out.add(Part.of("Month by month", months.isEmpty() ? List.of("No training was entered.") : List.of(), List.of("Month", "Days", "Contacts"), months));
    out.add(
        Part.of(
            "Meets", results.isEmpty() ? List.of("No result was entered.") : List.of(), List.of("Meet", "Athlete", "Best", "Place"),
            results.stream().map(this::row).toList()));
    return out;
  }

  /** How somebody of the squad did. */
  private record Result(MeetSheet meet, Athlete athlete, Placing placing) {}

  private static List<Result> results(List<Athlete> squad, List<MeetSheet> meets) {
    List<Result> out = new ArrayList<>();
    for (MeetSheet m : meets) {
      List<Placing> placings = m.meet().placings();
      for (Athlete a : squad) {
        PlainReports.placing(m, placings, a).ifPresent(p -> out.add(new Result(m, a, p)));
      }
    }
    return out;
  }

  private List<String> row(Result r) {
    String when = r.meet().name() + ", " + DAY.format(r.meet().date()) + ", " + r.meet().event().label();
    return List.of(when, r.athlete().name(), mark(r.placing()), place(r.placing(), r.meet()));
  }

  /** Of each event, as one is not to be compared with the other. */
  private String best(Athlete athlete, List<Result> results) {
    List<String> out = new ArrayList<>();
    for (Event event : Event.values()) {
      results.stream()
          .filter(r -> r.athlete().id() == athlete.id() && r.meet().event() == event)
          .flatMap(r -> Stream.ofNullable(r.placing().best_m()))
          .max(Double::compare)
          .ifPresent(best -> out.add(event.label() + " " + unit.write(best)));
    }
    return out.isEmpty() ? "–" : String.join(", ", out);
  }

  private String mark(Placing p) {
    Double best = p.best_m();
    return best == null ? "no valid jump" : unit.write(best);
  }

  private String place(Placing p, MeetSheet meet) {
    Integer rank = p.rank();
    return rank == null ? "–" : rank + " of " + meet.entrants().size() + PlainReports.soFar(meet, today);
  }
}
