package boundwright.runway;

import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The one run-up that a tape measure should go along first: of all that are needed today and were never measured, the one whose start
 * mark is known least. With every run-up measured it tells also of the athlete's others, so it is asked again for the next.
 *
 * @param athlete whose
 * @param steps approach steps, 1 to 26
 * @param start start mark to take-off mark as it is guessed [m]
 */
public record MeasureFirst(String athlete, int steps, Estimate start) {
  /** A start known to this half-width needs no measure (judgement) [m]: half a shoe. */
  static final double KNOWN_M = 0.15;

  /** The run-up to measure, none if every start is known well enough. */
  public static Optional<MeasureFirst> of(List<Tapes.Wish> wishes) {
    return wishes.stream()
        .filter(w -> w.advice().startMeasured() == 0 && w.advice().forecast().approachSteps() > 0)
        .map(w -> new MeasureFirst(w.athlete(), w.advice().forecast().approachSteps(), w.advice().startToMark()))
        .filter(m -> m.start.halfWidth() > KNOWN_M)
        .max(Comparator.comparingDouble(m -> m.start.halfWidth()));
  }

  /** {@code Measure one run-up: Otis.} */
  public String asked() {
    return "Measure one run-up: " + athlete + ".";
  }

  /** {@code From 4 steps: the start is a guess, 5.10 m to 6.34 m.} */
  public String guess(LengthUnit unit) {
    return "From " + steps + (steps == 1 ? " step" : " steps") + ": the start is a guess, " + unit.write(start.p05()) + " to " + unit.write(start.p95()) + ".";
  }
}
