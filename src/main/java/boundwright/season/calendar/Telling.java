package boundwright.season.calendar;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.quantity.Notes;
import boundwright.season.Block;
import boundwright.season.Climb;
import boundwright.season.Meet;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRepository.Version;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.Venue;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What a published plan says in a calendar. It is told from the plan alone: why somebody does not train is not in it. */
final class Telling {
  private Telling() {}

  /** An athlete's events, by day and what they are. */
  static Map<String, CalendarEvent.Says> athlete(Version v, long athleteId) {
    Map<String, CalendarEvent.Says> out = new TreeMap<>();
    Optional<SeasonPlan.Year> year = v.plan().of(athleteId);
    if (year.isEmpty()) {
      return out;
    }
    for (PlannedDay d : year.get().days()) {
      Session s = d.session();
      if (s.kind() == SessionKind.MEET) {
        out.put("day|" + d.date(), new CalendarEvent.Says(d.date(), null, meets(v, d.date()), "", notes(s), true));
      } else {
        Venue venue = venue(v, s.venue());
        out.put("day|" + d.date(), new CalendarEvent.Says(d.date(), hours(venue, d.date()), title(s), where(venue), notes(s), true));
      }
    }
    for (Climb c : year.get().climbs()) {
      for (Climb.DecisionDay d : c.decisions()) {
        out.put("decide|" + c.family() + "|" + d.date(), new CalendarEvent.Says(d.date(), null, decides(c, d), "", "", false));
      }
    }
    return out;
  }

  /** The squad's events: a place on a day, a meet, what is decided on a day. */
  static Map<String, CalendarEvent.Says> squad(Version v) {
    Map<String, CalendarEvent.Says> out = new TreeMap<>();
    for (Meet m : v.meets()) {
      String who = v.plan().years().stream().filter(y -> meets(y, m.date())).map(SeasonPlan.Year::athlete).collect(Collectors.joining("\n"));
      out.put("meet|" + m.key(), new CalendarEvent.Says(m.date(), null, m.name(), "", who, true));
    }
    Map<LocalDate, Map<String, List<String>>> days = new TreeMap<>();
    Map<LocalDate, List<String>> decisions = new TreeMap<>();
    for (SeasonPlan.Year y : v.plan().years()) {
      for (PlannedDay d : y.days()) {
        if (d.session().kind() != SessionKind.MEET) {
          String place = d.session().venue() == null ? "" : d.session().venue();
          days.computeIfAbsent(d.date(), k -> new TreeMap<>()).computeIfAbsent(place, k -> new ArrayList<>()).add(y.athlete() + ": " + title(d.session()));
        }
      }
      for (Climb c : y.climbs()) {
        c.decisions().forEach(d -> decisions.computeIfAbsent(d.date(), k -> new ArrayList<>()).add(y.athlete() + ": " + decides(c, d)));
      }
    }
    days.forEach(
        (date, places) ->
            places.forEach(
                (key, lines) -> {
                  Venue venue = venue(v, key);
                  String title = Notes.counted(lines.size(), "athlete") + (venue == null ? "" : ", " + venue.name());
                  out.put("day|" + date + "|" + key, new CalendarEvent.Says(date, hours(venue, date), title, where(venue), String.join("\n", lines), true));
                }));
    decisions.forEach((date, lines) -> out.put("decide|" + date, new CalendarEvent.Says(date, null, "Decide on the approach", "", String.join("\n", lines), false)));
    return out;
  }

  private static boolean meets(SeasonPlan.Year y, LocalDate date) {
    return y.on(date).filter(s -> s.kind() == SessionKind.MEET).isPresent();
  }

  private static String meets(Version v, LocalDate date) {
    String names = v.meets().stream().filter(m -> m.date().equals(date)).map(Meet::name).collect(Collectors.joining(", "));
    return names.isEmpty() ? "Meet" : names;
  }

  private static String title(Session s) {
    String kind = Notes.capital(s.kind().label());
    return s.blocks().isEmpty() ? kind : kind + " " + Athlete.fromSteps(s.steps());
  }

  private static String decides(Climb c, Climb.DecisionDay d) {
    return "If ready, " + Athlete.fromSteps(d.goesTo()) + "; else stay " + Athlete.fromSteps(d.stays()) + " (" + c.family().label() + ")";
  }

  private static String notes(Session s) {
    if (s.blocks().isEmpty()) {
      return "";
    }
    return "Contacts: right " + s.contacts(Foot.RIGHT) + ", left " + s.contacts(Foot.LEFT) + "\n" + s.blocks().stream().map(Telling::line).collect(Collectors.joining("\n"));
  }

  private static String line(Block b) {
    return b.work().sequence().text() + ": " + Notes.counted(b.work().reps(), "rep") + (b.sets() > 1 ? " in " + b.sets() + " sets" : "") + ", "
        + Athlete.fromSteps(b.work().approachSteps());
  }

  private static @Nullable Venue venue(Version v, @Nullable String key) {
    return v.venues().stream().filter(x -> x.key().equals(key)).findFirst().orElse(null);
  }

  private static Venue.@Nullable Hours hours(@Nullable Venue venue, LocalDate date) {
    return venue == null ? null : venue.hours().get(date.getDayOfWeek());
  }

  private static String where(@Nullable Venue venue) {
    return venue == null ? "" : venue.name();
  }
}
