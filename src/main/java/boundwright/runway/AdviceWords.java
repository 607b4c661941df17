package boundwright.runway;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Forecast;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The sentences that go with an advice. */
public final class AdviceWords {
  /** Below this many reps the words warn that the spread is wide (judgement). */
  private static final int FEW = 6;

  private AdviceWords() {}

  /** What the lengths rest on: how many reps, from these steps, and on this surface where there are others. */
  static String from(FlightModel model, int steps, Surface surface) {
    if (model.reps() == 0) {
      return "No rep logged yet: from the level and the known marks entered, a first guess.";
    }
    int taps = model.reps() - model.measuredReps();
    String what =
        taps == 0
            ? Notes.counted(model.reps(), "rep") + " with lengths"
            : model.measuredReps() == 0
                ? Notes.counted(taps, "tap")
                : Notes.counted(model.measuredReps(), "rep") + " with lengths and " + Notes.counted(taps, "tap");
    int here = model.repsOn(surface);
    String where = here > 0 && here < model.reps() ? " and " + here + " on " + surface.label() : "";
    return "From " + what + ", " + model.repsAtRung(steps) + " of them " + Athlete.fromSteps(steps) + where + ".";
  }

  /** Where the reps were made if none was made on this surface: {@code 60 reps, all on grass; today's place is track.} */
  static Optional<String> elsewhere(FlightModel model, Surface surface) {
    if (model.reps() == 0 || model.repsOn(surface) > 0) {
      return Optional.empty();
    }
    List<Surface> on = Arrays.stream(Surface.values()).filter(s -> model.repsOn(s) > 0).toList();
    String where =
        on.size() == 1
            ? (model.reps() == 1 ? "on " : "all on ") + on.get(0).label()
            : on.stream().map(s -> model.repsOn(s) + " on " + s.label()).collect(Collectors.joining(", "));
    return Optional.of(Notes.counted(model.reps(), "rep") + ", " + where + "; today's place is " + surface.label() + ".");
  }

  /** A sentence, with a space behind it, where the reps are few; else empty. */
  public static String few(int reps) {
    return reps < FEW ? "Few reps yet, so the spread is wide. " : "";
  }

  /** How sure the landing is. */
  static String sure(FlightModel model, Forecast forecast, LengthUnit unit) {
    return few(model.reps())
        + "Nine landings in ten within " + unit.writeSpread(forecast.landing().halfWidth()).substring(2) + " of "
        + unit.write(forecast.landing().p50()) + " from the mark.";
  }
}
