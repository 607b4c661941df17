package boundwright.runway;

import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Inquiry;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import java.time.LocalDate;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Where to begin with an athlete of whom next to nothing is known, so that no mark reaches the chance that is asked: a tape all
 * the same, what can honestly be said of it, and how soon it will be better.
 *
 * <p>For the first {@value #TEACHING} reps the tape lies where the taps still to come are expected to tell most ({@link Inquiry}),
 * among the marks from which at most {@value #COSTS} fewer reps land in the sand than from the best one. After a single tap it
 * goes {@value #AFTER_ONE} of the way from the first mark to what the model then says, after two {@value #AFTER_TWO}: one tap says
 * on which side a rep fell, not by how much. The shares are judgement, tried on athletes who jump by another process
 * ({@code BeginningTest}); a rep measured with the tape says by how much, and then nothing is held back.
 *
 * @param markToSand_m where the tape goes, to the near edge of the sand, on the unit's step [m]
 * @param from_m nearest tape that will do as well: lands at most {@value #ALIKE} less often [m]
 * @param to_m farthest such tape [m]
 * @param inSand chance that a rep from the mark lands in the sand with the last contact before it, without margins; 0 to 1
 * @param reps reps logged so far, 0 to {@value #MOST} - 1
 * @param settled chance expected of a rep to land in the sand from the then best mark after {@link #left} more taps, 0 to 1
 */
public record Beginning(double markToSand_m, double from_m, double to_m, double inSand, int reps, double settled) {
  /** So many reps make no history, as long as no mark reaches what is asked (judgement). */
  public static final int MOST = 6;
  /** First reps from which it matters what they teach. */
  public static final int TEACHING = 3;
  /** What a tape that teaches may cost of the chance to land in the sand (judgement). */
  static final double COSTS = 0.05;
  /** Share of the model's move that is made after one tap (judgement, tried in simulation). */
  static final double AFTER_ONE = 0.6;
  /** Share of the model's move that is made after two taps (judgement, tried in simulation). */
  static final double AFTER_TWO = 0.9;
  /** Tapes that differ by less in the chance are as good (judgement). */
  static final double ALIKE = 0.05;
  /** Expected chance from which the coming reps are said to settle it (judgement): two reps in three. */
  static final double SETTLES = 0.66;
  private static final int TAPES = 5;
  private static final String[] COUNT = {"no", "one more rep", "two more reps", "three reps"};
  private static final Odds[] ODDS = {
    new Odds("9 in 10", 0.9), new Odds("4 in 5", 0.8), new Odds("3 in 4", 0.75), new Odds("2 in 3", 2 / 3.0), new Odds("half", 0.5),
    new Odds("1 in 3", 1 / 3.0), new Odds("1 in 4", 0.25), new Odds("1 in 5", 0.2), new Odds("1 in 10", 0.1)
  };

  private record Odds(String said, double least) {}

  /** Taps after which it is looked at again: what is left of the first three, at least one. */
  public int left() {
    return Math.max(1, TEACHING - reps);
  }

  /**
   * The chance in a coach's words, never more than it is: {@code about 2 in 3}. A chance half a rep in a hundred below a figure is
   * that figure.
   */
  public String odds() {
    for (Odds o : ODDS) {
      if (inSand >= o.least - 0.005) {
        return "about " + o.said;
      }
    }
    return "few";
  }

  /** {@code Begin at 14.74 m; about 2 in 3 land in the sand; three reps will settle it.} */
  public String said(LengthUnit unit) {
    return (reps == 0 ? "Begin at " : "Now ") + unit.write(markToSand_m) + "; " + odds() + " land in the sand; " + soon() + ".";
  }

  /** How soon it will be better: {@code three reps will settle it}, or what would settle it sooner. */
  public String soon() {
    return settled >= SETTLES ? COUNT[left()] + " will settle it" : "measure one landing to settle it";
  }

  /** Whether taps alone leave it open, so that fewer contacts or a measure are the better beginning. */
  public boolean longShot() {
    return inSand < 0.5 && settled < SETTLES;
  }

  /**
   * The beginning, or null where there is a history or a mark that works.
   *
   * @param first_m the beginning's mark before the first rep [m], where it is known; null: nothing is held back
   * @param counts the chances at the margins that are asked
   */
  static @Nullable Beginning of(
      FlightModel model,
      @Nullable Double first_m,
      MarkChances counts,
      Sequence sequence,
      int steps,
      Surface surface,
      CoachSettings settings,
      LocalDate date) {
    if (model.reps() >= MOST || counts.window().isPresent()) {
      return null;
    }
    MarkChances lands = counts.withoutMargins();
    Inquiry inquiry = model.inquiry(sequence, steps, surface, date);
    int left = Math.max(1, TEACHING - model.reps());
    double wanted = model.reps() < TEACHING ? teaching(inquiry, lands, counts, left) : lands.best();
    double mark = settings.unit().round(held(wanted, first_m, model));
    double inSand = lands.counts(mark);
    return new Beginning(
        mark,
        Math.min(mark, edge(lands, mark, inSand - ALIKE, -1)),
        Math.max(mark, edge(lands, mark, inSand - ALIKE, 1)),
        inSand,
        model.reps(),
        WhatToLog.expected(lands, inquiry.now(), inquiry.tapped(mark, left)));
  }

  /** Whether the first mark is needed: one or two taps, and nothing measured. */
  static boolean holdsBack(FlightModel model) {
    return (model.reps() == 1 || model.reps() == 2) && model.measuredReps() == 0;
  }

  private static double held(double wanted, @Nullable Double first, FlightModel model) {
    if (first == null || !holdsBack(model)) {
      return wanted;
    }
    return first + (model.reps() == 1 ? AFTER_ONE : AFTER_TWO) * (wanted - first);
  }

  private static double teaching(Inquiry inquiry, MarkChances lands, MarkChances counts, int left) {
    MarkAdvice.LearningMarks ends = counts.learning();
    double step = (ends.far_m() - ends.near_m()) / (TAPES - 1);
    int ahead = Math.min(2, left);
    double best = lands.best();
    double most = Double.NEGATIVE_INFINITY;
    for (double tape : IntStream.range(0, TAPES).mapToDouble(i -> ends.near_m() + i * step).toArray()) {
      if (lands.counts(tape) < lands.bestChance() - COSTS) {
        continue;
      }
      double then = WhatToLog.expected(counts, inquiry.now(), inquiry.tapped(tape, ahead));
      if (then > most) {
        most = then;
        best = tape;
      }
    }
    return best;
  }

  /** The last mark on one side from which at least {@code least} land in the sand; the chance has one peak, so halving finds it. */
  private static double edge(MarkChances lands, double mark, double least, int side) {
    double good = mark;
    double far = mark + side * 4 * (lands.landing() - lands.lastContact() + 1);
    for (int i = 0; i < 30; i++) {
      double middle = (good + far) / 2;
      if (middle >= 0 && lands.counts(middle) >= least) {
        good = middle;
      } else {
        far = middle;
      }
    }
    return good;
  }
}
