package boundwright.runway;

import boundwright.flight.FlightModel;
import boundwright.flight.Forecast;
import boundwright.quantity.LengthUnit;

/** The sentences that go with an advice. */
final class AdviceWords {
  /** Below this many reps the words warn that the spread is wide. */
  private static final int FEW = 6;

  private AdviceWords() {}

  static String fromSteps(int steps) {
    return steps == 0 ? "from standing" : steps == 1 ? "from 1 step" : "from " + steps + " steps";
  }

  static String rung(int steps) {
    return steps == 0 ? "Standing" : steps == 1 ? "1 step" : steps + " steps";
  }

  /** What the lengths rest on. */
  static String from(FlightModel model, int steps) {
    if (model.reps() == 0) {
      return "No rep logged yet: from the level (" + model.level().label() + ") and the known marks entered, a first guess.";
    }
    int taps = model.reps() - model.measuredReps();
    String what =
        taps == 0
            ? plural(model.reps(), "rep") + " with lengths"
            : model.measuredReps() == 0
                ? plural(taps, "tap")
                : plural(model.measuredReps(), "rep") + " with lengths and " + plural(taps, "tap");
    return "From " + what + ", " + model.repsAtRung(steps) + " of them " + fromSteps(steps) + ".";
  }

  /** How sure the landing is. */
  static String sure(FlightModel model, Forecast forecast, LengthUnit unit) {
    String few = model.reps() < FEW ? "Few reps yet, so the spread is wide. " : "";
    return few
        + "Nine landings in ten within " + unit.writeSpread(forecast.landing().halfWidth()).substring(2) + " of "
        + unit.write(forecast.landing().p50()) + " from the mark.";
  }

  static String plural(int n, String word) {
    return n + " " + word + (n == 1 ? "" : "s");
  }
}
