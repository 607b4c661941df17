package boundwright.runway;

import boundwright.athlete.Surface;
import boundwright.flight.Forecast;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the coach must know before taping, most important first; on the flat nothing is said about sand. */
final class AdviceWarnings {
  private final Forecast forecast;
  private final Estimate startToMark;
  private final int startMeasured;
  private final Surface surface;
  private final CoachSettings settings;
  private final LengthUnit unit;

  AdviceWarnings(Forecast forecast, Estimate startToMark, int startMeasured, Surface surface, CoachSettings settings) {
    this.forecast = forecast;
    this.startToMark = startToMark;
    this.startMeasured = startMeasured;
    this.surface = surface;
    this.settings = settings;
    this.unit = settings.unit();
  }

  /** For a rep that ends in sand. */
  List<String> intoSand(double mark, Optional<Window> window, double runwayNeeded) {
    List<String> out = new ArrayList<>();
    concrete(out);
    if (window.isEmpty()) {
      out.add(
          "No mark reaches " + AdviceWords.percent(settings.marks().chance())
              + " on both sides. The mark shown is the best there is, not good enough to rely on.");
    }
    extrapolated(out);
    double runway = settings.facility().runway_m();
    if (runwayNeeded > runway) {
      out.add(
          "The runway is too short: start mark to sand needs " + unit.write(runwayNeeded) + ", and " + unit.write(runway)
              + " can be used. Take fewer contacts or fewer approach steps.");
    }
    double beyond = forecast.landing().p95() - mark - settings.facility().pit_m();
    if (beyond > 0) {
      out.add(
          "One landing in twenty would pass the end of the sand (" + unit.write(settings.facility().pit_m())
              + "). Take fewer contacts.");
    }
    startMark(out);
    return out;
  }

  /** For a rep on level ground without sand. */
  List<String> onTheFlat(double groundNeeded) {
    List<String> out = new ArrayList<>();
    concrete(out);
    extrapolated(out);
    double ground = settings.facility().flat_m();
    if (groundNeeded > ground) {
      out.add(
          "The level ground is too short: start mark to landing needs " + unit.write(groundNeeded) + ", and "
              + unit.write(ground) + " can be used. Take fewer contacts or fewer approach steps.");
    }
    startMark(out);
    return out;
  }

  private void concrete(List<String> out) {
    if (surface == Surface.CONCRETE) {
      out.add("Never on concrete. Level grass is best; a sprung floor or a raised runway is good.");
    }
  }

  private void extrapolated(List<String> out) {
    if (forecast.extrapolated()) {
      out.add(
          AdviceWords.rung(forecast.approachSteps()) + " has not been logged for this athlete: the lengths are carried over from "
              + "other rungs and the first guess. Watch the first rep from the side.");
    }
  }

  private void startMark(List<String> out) {
    if (forecast.approachSteps() > 0 && startMeasured == 0) {
      out.add(
          "The start mark is a guess from typical steps (" + unit.write(startToMark.p05()) + " to "
              + unit.write(startToMark.p95()) + "). Measure one run-up of " + forecast.approachSteps() + " steps and enter it.");
    }
  }
}
