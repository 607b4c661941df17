package boundwright.runway;

import boundwright.flight.Inquiry;
import boundwright.flight.Sharpness;
import boundwright.quantity.LengthUnit;
import boundwright.runway.LogNext.Way;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Chooses what to log next by what it is expected to tell: the chance that the reps after it count from the mark that is then
 * the best, less that chance when the next two are tapped from the best mark as it is.
 *
 * <p>What is learned moves the expected positions by a jointly normal amount whose covariance is what it takes off theirs (the
 * law of total variance). The mark moves along; how good the best mark then is depends on their distance, the last flight, alone.
 * So the expectation is over one dimension: five Gauss-Hermite points. Knowledge that would move no mark wins nothing.
 *
 * <p>One measured footprint tells more than two taps from anywhere and costs no rep, so it comes first; whoever has only tapped
 * so far, and so may have no tape measure at hand, is first offered a tape from which taps tell more, if it wins back what it costs.
 */
final class WhatToLog {
  /** Taps that are looked ahead. */
  static final int TAPS = 2;
  /** A gain below this is not worth a sentence, nor measuring all instead of one footprint (judgement): three reps in a hundred. */
  static final double WORTH = 0.03;
  /** A moved tape is offered if its taps win at least this share of what the measure wins (judgement). */
  static final double NEARLY = 0.6;
  /** From a tape laid to learn a rep must still count more often than not (judgement). */
  static final double LEAST = 0.5;
  /** Reps within which a moved tape must win back the reps that it costs (judgement): about a month of one drill. */
  static final int REPS = 24;
  /** Reps after which a log of taps alone is a habit (judgement). */
  static final int HABIT = 6;

  private static final int TAPES = 5;
  /** Gauss-Hermite rule of five points, written out like that of {@link JointNormal}. */
  static final double[] POINT = {-2.020182870456085, -0.9585724646138194, 0.0, 0.9585724646138194, 2.020182870456085};
  /** See {@link #POINT}. */
  static final double[] WEIGHT = {
    0.01995324205904599, 0.39361932315223974, 0.945308720482942, 0.39361932315223974, 0.01995324205904599
  };

  private final Inquiry inquiry;
  private final MarkChances now;

  private WhatToLog(Inquiry inquiry, MarkChances now) {
    this.inquiry = inquiry;
    this.now = now;
  }

  /** A way, where the tape goes if it is moved [m], and the chance expected afterwards. */
  private record Choice(Way way, double tape, double afterwards) {}

  /**
   * What to log next, or null if nothing tells enough.
   *
   * @param contacts of the sequence, 1 or more
   * @param onlyTaps whether this athlete's log has only taps, {@value #HABIT} or more
   */
  static @Nullable LogNext choose(Inquiry inquiry, MarkChances now, int contacts, boolean onlyTaps, LengthUnit unit) {
    return 1 - now.bestChance() < WORTH ? null : new WhatToLog(inquiry, now).choose(contacts, onlyTaps, unit);
  }

  private @Nullable LogNext choose(int contacts, boolean onlyTaps, LengthUnit unit) {
    double usual = taps(now.best()).afterwards();
    Choice measured = measure(Way.MEASURE, inquiry.measured());
    if (contacts > 1) {
      Choice last = measure(Way.MEASURE_LAST, inquiry.lastContactMeasured());
      measured = measured.afterwards() - last.afterwards() < WORTH ? last : measured;
    }
    double most = measured.afterwards() - usual;
    if (most < WORTH) {
      return null;
    }
    Optional<Choice> tape = onlyTaps ? bestTape(unit, usual) : Optional.empty();
    return said(tape.filter(t -> t.afterwards() - usual >= NEARLY * most).orElse(measured), usual, unit);
  }

  private static LogNext said(Choice c, double usual, LengthUnit unit) {
    int after = InHundred.of(c.afterwards());
    String why =
        "Then " + InHundred.said(after) + " are expected to count; after two taps from this mark " + InHundred.of(usual) + ".";
    return switch (c.way()) {
      case TAPE -> new LogNext(c.way(), c.tape(), after, "Tape at " + unit.write(c.tape()) + " for the next two.", why);
      case MEASURE_LAST -> new LogNext(c.way(), null, after, "Measure the last footprint of this one.", why);
      case MEASURE -> new LogNext(c.way(), null, after, "Measure this one.", why);
    };
  }

  private Choice measure(Way way, Sharpness after) {
    return new Choice(way, 0, expected(now, inquiry.now(), after));
  }

  private Choice taps(double tape) {
    return new Choice(Way.TAPE, tape, expected(now, inquiry.now(), inquiry.tapped(tape, TAPS)));
  }

  /** The tape between the two learning marks that wins most, if it wins back within {@value #REPS} reps what it costs. */
  private Optional<Choice> bestTape(LengthUnit unit, double usual) {
    MarkAdvice.LearningMarks ends = now.learning();
    double step = (ends.far_m() - ends.near_m()) / (TAPES - 1);
    return IntStream.range(0, TAPES)
        .mapToObj(i -> unit.round(ends.near_m() + i * step))
        .filter(tape -> now.counts(tape) >= LEAST)
        .map(this::taps)
        .filter(t -> net(t, usual) > 0)
        .max(Comparator.comparingDouble(t -> net(t, usual)));
  }

  /** Reps that count more in the next {@value #REPS}, less those that the tape itself costs. */
  private double net(Choice tape, double usual) {
    return REPS * (tape.afterwards() - usual) - TAPS * (now.bestChance() - now.counts(tape.tape()));
  }

  /** The chance from the best mark, expected over what is learned on the way from {@code before} to {@code after}. */
  static double expected(MarkChances now, Sharpness before, Sharpness after) {
    double moves = Math.sqrt(Math.max(0, flight(before) - flight(after)));
    double sum = 0;
    for (int i = 0; i < POINT.length; i++) {
      MarkChances then =
          new MarkChances(
              now.lastContact(),
              after.lastContactSd(),
              now.landing() + moves * Math.sqrt(2) * POINT[i],
              after.landingSd(),
              after.together(),
              now.settings());
      sum += WEIGHT[i] / Math.sqrt(Math.PI) * then.bestChance();
    }
    return sum;
  }

  /** Variance of the last flight's length [m2]. */
  private static double flight(Sharpness s) {
    return s.lastContactSd() * s.lastContactSd() + s.landingSd() * s.landingSd() - 2 * s.together();
  }
}
