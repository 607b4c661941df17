package boundwright.season.conflict;

import boundwright.season.Away;
import boundwright.season.Meet;
import boundwright.season.SeasonInput;
import boundwright.season.SessionKind;
import boundwright.season.Venue;
import boundwright.season.year.YearProblem;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Says a clash in the coach's words: each part with its days and how it could give way. */
final class ClashWords {
  private final SeasonInput input;
  private final Field field;

  ClashWords(SeasonInput input, Field field) {
    this.input = input;
    this.field = field;
  }

  /** Days of one rule of one athlete are one part. */
  private record Alike(Demand.Kind kind, int athlete, int what, int at) {}

  List<Clash.Part> parts(List<Demand> demands) {
    Map<Alike, List<Demand>> alike = new LinkedHashMap<>();
    for (Demand d : demands) {
      boolean daily = d.kind() == Demand.Kind.OWN_WEEKS || d.kind() == Demand.Kind.SPACING;
      alike.computeIfAbsent(new Alike(d.kind(), d.athlete(), d.what(), daily ? -1 : d.at()), k -> new ArrayList<>()).add(d);
    }
    return alike.values().stream().map(this::part).toList();
  }

  private Clash.Part part(List<Demand> same) {
    Demand d = same.get(0);
    String athlete = d.athlete() < 0 ? null : input.squad().get(d.athlete()).name();
    List<LocalDate> days = same.stream().flatMap(x -> days(x).stream()).sorted().toList();
    return new Clash.Part(athlete, days, said(d), wayOut(d));
  }

  private List<LocalDate> days(Demand d) {
    return switch (d.kind()) {
      case SESSIONS -> List.of(input.day(7 * d.at()), input.day(Math.min(field.days - 1, 7 * d.at() + 6)));
      case TAPER -> {
        YearProblem.Taper t = field.problems.get(d.athlete()).tapers().get(d.at());
        yield List.of(input.day(t.from()), input.day(t.meet()));
      }
      case AWAY -> {
        Away a = away(d);
        yield List.of(a.span().from(), a.span().to());
      }
      case DAY_WISH, MEET, CAPACITY, SPACING, OWN_WEEKS -> List.of(input.day(d.at()));
    };
  }

  private Away away(Demand d) {
    return input.squad().get(d.athlete()).away().get(d.at());
  }

  private static SessionKind kind(int at) {
    return Arrays.stream(SessionKind.values()).filter(k -> k.at() == at).findFirst().orElseThrow();
  }

  private String said(Demand d) {
    return switch (d.kind()) {
      case SESSIONS -> d.least() + " x " + kind(d.what()).label() + " in the week";
      case DAY_WISH -> d.what() < 0 ? "the wish for a day without a session" : "the wish for " + kind(d.what()).label();
      case MEET -> "jumps at " + input.meets().stream().filter(m -> m.date().equals(input.day(d.at()))).map(Meet::name).findFirst().orElse("a meet");
      case AWAY -> away(d).why().label();
      case CAPACITY -> venue(d).name() + " takes " + venue(d).athletes();
      case TAPER -> "the load falls before a main meet by at least " + Math.round(100 * input.rules().taper().leastCut()) + " %";
      case SPACING -> "days between hard sessions";
      case OWN_WEEKS -> "the load of seven days beside the athlete's own weeks";
    };
  }

  private Venue venue(Demand d) {
    return input.venues().get(d.what());
  }

  private String wayOut(Demand d) {
    return switch (d.kind()) {
      case SESSIONS -> "ask for one less, or free a day on which the guard allows it";
      case DAY_WISH -> "drop the wish, or move it to another day";
      case MEET -> "leave this meet out, or make another the main one";
      case AWAY -> away(d).why() == Away.Why.HELD ? "none: a hold stands until whoever set it lifts it" : "be there on that day, if it can be arranged";
      case CAPACITY -> "open another place on that day, or send somebody on another day";
      case TAPER -> "enter this meet as a usual one, or the meets within its taper not at all";
      case SPACING, OWN_WEEKS -> "none: the guard's limit stands; give up one of the others";
    };
  }
}
