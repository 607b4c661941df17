package boundwright.runway;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.Forecast;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the coach must know before taping, most important first: with sand, and on the flat where no mark is sought. The sentences of the place
 * are those of every drill.
 */
public final class AdviceWarnings {
  /** What nobody bounds or jumps on, and what is good. */
  public static final String CONCRETE = "Never on concrete. Level grass is best; a sprung floor or a raised runway is good.";

  private AdviceWarnings() {}

  /** For a last flight that ends in sand. */
  static List<String> inSand(
      Forecast forecast,
      double mark,
      boolean open,
      @Nullable Beginning beginning,
      Estimate startToMark,
      int startMeasured,
      double runwayNeeded,
      @Nullable String elsewhere,
      Surface surface,
      CoachSettings settings) {
    LengthUnit unit = settings.unit();
    List<String> out = new ArrayList<>();
    never(surface, out);
    if (!open && beginning == null) {
      out.add(noMark(settings.marks()));
    }
    if (beginning == null || beginning.reps() > 0) {
      untried(forecast, out);
    }
    if (elsewhere != null) {
      out.add(elsewhere);
    }
    if (runwayNeeded > settings.facility().runway_m()) {
      out.add(tooShort(true, runwayNeeded, "contacts", settings));
    }
    double beyond = forecast.landing().p95() - mark - settings.facility().pit_m();
    // of a beginner's landing next to nothing is known, and its far end says so and nothing of the pit
    if (beyond > 0 && (beginning == null || forecast.landing().p50() - mark > settings.facility().pit_m())) {
      out.add(pastTheSand("contacts", settings));
    }
    guess(forecast, startToMark, startMeasured, unit, out);
    return out;
  }

  /** For a drill on the flat. */
  static List<String> onTheFlat(
      Forecast forecast,
      Estimate startToMark,
      int startMeasured,
      double groundNeeded,
      @Nullable String elsewhere,
      Surface surface,
      CoachSettings settings) {
    LengthUnit unit = settings.unit();
    List<String> out = new ArrayList<>();
    never(surface, out);
    untried(forecast, out);
    if (elsewhere != null) {
      out.add(elsewhere);
    }
    if (groundNeeded > settings.facility().flat_m()) {
      out.add(tooShort(false, groundNeeded, "contacts", settings));
    }
    guess(forecast, startToMark, startMeasured, unit, out);
    return out;
  }

  private static void never(Surface surface, List<String> out) {
    if (surface == Surface.CONCRETE) {
      out.add(CONCRETE);
    }
  }

  /** Where no mark reaches the asked chance. */
  public static String noMark(MarkSettings asked) {
    return "No mark reaches " + InHundred.said(InHundred.asked(asked.chance())) + ": do not rely on this one.";
  }

  /**
   * Where there is less room than a rep needs.
   *
   * @param inSand whether it ends in the sand, else on level ground
   * @param needed start mark to sand or to landing [m]
   * @param fewer of what to take fewer, beside approach steps
   */
  public static String tooShort(boolean inSand, double needed, String fewer, CoachSettings settings) {
    LengthUnit unit = settings.unit();
    return (inSand ? "The runway is too short: start mark to sand" : "The level ground is too short: start to landing") + " needs "
        + unit.write(needed) + ", and " + unit.write(inSand ? settings.facility().runway_m() : settings.facility().flat_m())
        + " can be used. Take fewer " + fewer + " or fewer approach steps.";
  }

  /** Where the far end of the landing lies behind the pit; {@code fewer} as for {@link #tooShort}. */
  public static String pastTheSand(String fewer, CoachSettings settings) {
    return "One landing in twenty would pass the end of the sand (" + settings.unit().write(settings.facility().pit_m()) + "). Take fewer "
        + fewer + ".";
  }

  private static void untried(Forecast forecast, List<String> out) {
    if (forecast.extrapolated()) {
      out.add(
          "Nothing logged " + Athlete.fromSteps(forecast.approachSteps())
              + " yet: the lengths are carried over. Watch the first rep from the side.");
    }
  }

  private static void guess(Forecast forecast, Estimate length, int measured, LengthUnit unit, List<String> out) {
    if (forecast.approachSteps() > 0 && measured == 0) {
      out.add(guess(forecast, length, unit));
    }
  }

  /** What is said of a start mark that was never measured. */
  static String guess(Forecast forecast, Estimate length, LengthUnit unit) {
    return "The start mark is a guess from typical steps (" + unit.write(length.p05()) + " to " + unit.write(length.p95())
        + "). Measure one run-up of " + forecast.approachSteps() + " steps and enter it.";
  }
}
