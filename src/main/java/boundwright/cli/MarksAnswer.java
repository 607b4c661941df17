package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.flight.Forecast;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.DayVerdict;
import boundwright.load.Finding;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.runway.Beginning;
import boundwright.runway.LogNext;
import boundwright.runway.MarkAdvice;
import boundwright.runway.Opener;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What {@code marks --json} prints; field by field in {@code docs/formats-json.md}. On the flat there is no sand, so
 * the mark, the window and the chance are null.
 */
record MarksAnswer(
    String athlete,
    String sequence,
    int approachSteps,
    boolean flat,
    Contacts contacts,
    @Nullable Double markToSand_m,
    double startToMark_m,
    WindowAnswer window_m,
    Chance chance,
    @Nullable Begin beginning,
    @Nullable Learning learning,
    @Nullable Next next,
    List<Position> positions,
    Spread landing,
    Spread startToMark,
    double runwayNeeded_m,
    double groundNeeded_m,
    int repsAtRung,
    boolean extrapolated,
    String from,
    String sure,
    List<OpenerAnswer> openers,
    List<String> warnings,
    Load load) {

  /** What is printed instead while bounding is stopped: no mark and no dose, only the reason. */
  record Stopped(String athlete, boolean held, String reason) {}

  /** The one verdict of the day; {@code body} is a pain of these days, or null; {@code wayBack} what the stage of a leg on its way back allows today. */
  record Load(String answer, String soFar, String withPlan, String said, @Nullable String body, List<String> wayBack) {
    static Load of(DayVerdict day, List<String> wayBack) {
      return new Load(
          day.answer().label(), day.soFar().answer().label(), day.withPlan().answer().label(), day.said(),
          day.body().map(Finding::said).orElse(null), wayBack);
    }
  }

  /** Contacts per leg. */
  record Contacts(int left, int right) {
    static Contacts of(Sequence sequence) {
      return new Contacts(sequence.count(Foot.LEFT), sequence.count(Foot.RIGHT));
    }
  }

  /** The nearest and the farthest mark that works [m], both null when none does. */
  record WindowAnswer(@Nullable Double min, @Nullable Double max) {}

  /** The chance that was asked of a rep, and that a rep from the mark counts; both in whole hundredths. */
  record Chance(double asked, @Nullable Double counts) {}

  /** What logging the next rep should add. */
  record Next(String way, @Nullable Double tapeToSand_m, double expected, String said, String why) {
    static @Nullable Next of(@Nullable LogNext next) {
      return next == null
          ? null
          : new Next(
              next.way().name().toLowerCase(Locale.ROOT),
              next.tapeToSand_m() == null ? null : (Double) Json.length(next.tapeToSand_m()),
              next.inHundredAfter() / 100.0,
              next.said(),
              next.why());
    }
  }

  /** Where there is no history and no mark that works: the chance to land in the sand, without margins, and how it is said. */
  record Begin(double inSand, String said) {
    static @Nullable Begin of(@Nullable Beginning beginning, LengthUnit unit) {
      return beginning == null ? null : new Begin(Math.floor(beginning.inSand() * 100) / 100, beginning.said(unit));
    }
  }

  /** Two marks from which taps alone teach the most [m]. */
  record Learning(double near_m, double far_m) {}

  /** 5, 50 and 95 % points [m]. */
  record Spread(double p05_m, double p50_m, double p95_m) {
    static Spread of(Estimate e) {
      return new Spread(Json.length(e.p05()), Json.length(e.p50()), Json.length(e.p95()));
    }
  }

  /** One contact; positions from the take-off mark, forward [m]. */
  record Position(int contact, String foot, double p05_m, double p50_m, double p95_m) {}

  /** What works when no mark does. */
  record OpenerAnswer(String way, String said) {
    static OpenerAnswer of(Opener opener) {
      return new OpenerAnswer(opener.way().name().toLowerCase(Locale.ROOT), opener.said());
    }
  }

  static MarksAnswer of(
      Athlete athlete, MarkAdvice advice, boolean flat, @Nullable LogNext next, List<String> warnings, DayVerdict day, List<String> wayBack, LengthUnit unit) {
    Forecast forecast = advice.forecast();
    Sequence sequence = forecast.sequence();
    WindowAnswer window =
        flat || advice.window() == null
            ? new WindowAnswer(null, null)
            : new WindowAnswer(Json.length(advice.window().min_m()), Json.length(advice.window().max_m()));
    return new MarksAnswer(
        athlete.name(),
        sequence.text(),
        forecast.approachSteps(),
        flat,
        Contacts.of(sequence),
        flat ? null : (Double) Json.length(advice.markToSand_m()),
        Json.length(advice.startToMark().p50()),
        window,
        new Chance(
            advice.askedInHundred() / 100.0,
            flat ? null : (Double) (advice.inHundred() / 100.0)),
        flat ? null : Begin.of(advice.beginning(), unit),
        flat ? null : new Learning(Json.length(advice.learning().near_m()), Json.length(advice.learning().far_m())),
        flat ? null : Next.of(next),
        IntStream.rangeClosed(1, sequence.size()).mapToObj(c -> position(forecast, c)).toList(),
        Spread.of(forecast.landing()),
        Spread.of(advice.startToMark()),
        Json.length(advice.runwayNeeded_m()),
        Json.length(advice.groundNeeded_m()),
        forecast.repsAtRung(),
        forecast.extrapolated(),
        advice.from(),
        advice.sure(),
        flat ? List.of() : advice.openers().stream().map(OpenerAnswer::of).toList(),
        warnings,
        Load.of(day, wayBack));
  }

  private static Position position(Forecast forecast, int contact) {
    Estimate at = forecast.position(contact);
    String foot = String.valueOf(forecast.sequence().contacts().get(contact - 1).letter());
    return new Position(contact, foot, Json.length(at.p05()), Json.length(at.p50()), Json.length(at.p95()));
  }
}
