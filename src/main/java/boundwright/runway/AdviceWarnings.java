package boundwright.runway;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.Forecast;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the coach must know before taping, most important first: with sand, and on the flat where no mark is sought. */
final class AdviceWarnings {
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
      out.add(
          "No mark reaches " + InHundred.said(InHundred.asked(settings.marks().chance()))
              + ": do not rely on this one.");
    }
    if (beginning == null || beginning.reps() > 0) {
      untried(forecast, out);
    }
    if (elsewhere != null) {
      out.add(elsewhere);
    }
    double runway = settings.facility().runway_m();
    if (runwayNeeded > runway) {
      out.add(
          "The runway is too short: start mark to sand needs " + unit.write(runwayNeeded) + ", and " + unit.write(runway)
              + " can be used. Take fewer contacts or fewer approach steps.");
    }
    double beyond = forecast.landing().p95() - mark - settings.facility().pit_m();
    // of a beginner's landing next to nothing is known, and its far end says so and nothing of the pit
    if (beyond > 0 && (beginning == null || forecast.landing().p50() - mark > settings.facility().pit_m())) {
      out.add(
          "One landing in twenty would pass the end of the sand (" + unit.write(settings.facility().pit_m())
              + "). Take fewer contacts.");
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
    double ground = settings.facility().flat_m();
    if (groundNeeded > ground) {
      out.add(
          "The level ground is too short: start to landing needs " + unit.write(groundNeeded) + ", and " + unit.write(ground)
              + " can be used. Take fewer contacts or fewer approach steps.");
    }
    guess(forecast, startToMark, startMeasured, unit, out);
    return out;
  }

  private static void never(Surface surface, List<String> out) {
    if (surface == Surface.CONCRETE) {
      out.add("Never on concrete. Level grass is best; a sprung floor or a raised runway is good.");
    }
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
