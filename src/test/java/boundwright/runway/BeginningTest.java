package boundwright.runway;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.flight.RunUp;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.runway.FirstDays.Laid;
import boundwright.runway.FirstDays.Seen;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Beginnings on athletes who jump by another process ({@link Newcomer}); own output, seeds in every message. The whole table stands in
 * {@code docs/first-day.md}.
 */
class BeginningTest {
  private static final long SEED = 7_400;
  private static final int ATHLETES = 16;
  private static final Estimate ZERO = new Estimate(0, 0, 0);
  private static final RunUp STANDING = new RunUp(ZERO, ZERO, 0);
  private static final Map<String, Double> LEAST =
      Map.of("about 9 in 10", .9, "about 4 in 5", .8, "about 3 in 4", .75, "about 2 in 3", 2 / 3.0, "about half", .5, "about 1 in 3", 1 / 3.0,
          "about 1 in 4", .25, "about 1 in 5", .2, "about 1 in 10", .1);

  private static final Sequence RRL = Sequence.parse("RRL");
  private static final Sequence RRL2 = Sequence.parse("RRL x2");
  private static final Sequence RL5 = Sequence.parse("RL x5");

  private static FlightModel newcomer(Level level) {
    return FlightModel.prior(new Profile(new Athlete(1, "New", level, Foot.RIGHT, 0), List.of(), List.of()));
  }

  private static MarkAdvice advise(FlightModel model, Sequence drill, @Nullable Double first) {
    return MarkAdvisor.advise(model, STANDING, drill, 0, Surface.TRACK, CoachSettings.DEFAULT, FirstDays.DAY, first);
  }

  private static Rep tap(Sequence drill, Outcome outcome, double mark) {
    return new Rep(0, 1, FirstDays.DAY, drill, 0, Surface.TRACK, List.of(), null, outcome, mark, List.of());
  }

  /** What is said of the chance, over all drills: kept, but for three standard errors of counting. */
  @Test
  void theChanceThatIsSaidIsKept() {
    Map<String, double[]> all = new TreeMap<>();
    for (Sequence drill : List.of(RRL, RRL2, RL5)) {
      for (int steps : new int[] {0, 4}) {
        FirstDays.of(Laid.BEGINNING, drill, steps, ATHLETES, SEED).byOdds.forEach(
            (odds, seen) -> {
              double[] sum = all.computeIfAbsent(odds, k -> new double[2]);
              sum[0] += seen[0];
              sum[1] += seen[1];
            });
      }
    }
    assertThat(all).as("seed %s", SEED).hasSizeGreaterThanOrEqualTo(5);
    all.forEach(
        (odds, sum) -> {
          double least = Objects.requireNonNull(LEAST.get(odds), odds);
          System.out.printf("%s: %.3f of %.0f, seed %d%n", odds, sum[1] / sum[0], sum[0], SEED);
          assertThat(sum[1] / sum[0]).as("%s in %s reps, seed %s", odds, sum[0], SEED)
              .isGreaterThan(least - 3 * Math.sqrt(least * (1 - least) / sum[0]));
        });
  }

  /** From the beginning more of the first three reps land in the sand than from the best mark of before, and it is known no later. */
  @Test
  void itLandsMoreOftenThanTheBestMarkOfBeforeAndSettlesNoLater() {
    for (Sequence drill : List.of(RRL, RRL2)) {
      Seen now = FirstDays.of(Laid.BEGINNING, drill, 0, ATHLETES, SEED + 1);
      Seen before = FirstDays.of(Laid.BEST_OF_BEFORE, drill, 0, ATHLETES, SEED + 1);
      double error = 3 * Math.sqrt(2 * 0.25 / (3 * now.days));
      assertThat(now.in(0) + now.in(1) + now.in(2)).as("%s, first three, seed %s", drill.text(), SEED + 1)
          .isGreaterThan(before.in(0) + before.in(1) + before.in(2));
      assertThat((now.in(3) + now.in(4) + now.in(5)) / 3).as("%s, next three, seed %s", drill.text(), SEED + 1)
          .isGreaterThan((before.in(3) + before.in(4) + before.in(5)) / 3 - error);
      assertThat(now.worksAfterThree).as("%s: athletes for whom a mark works after three taps", drill.text()).isGreaterThan(before.worksAfterThree);
    }
  }

  /** One tap moves the mark by less than the last flight; as the model says, in the longest drill by more. */
  @Test
  void oneTapMovesTheMarkByLessThanTheLastFlight() {
    for (Sequence drill : List.of(RRL, RRL2, RL5)) {
      for (int steps : new int[] {0, 4}) {
        assertThat(FirstDays.of(Laid.BEGINNING, drill, steps, 6, SEED + 2).largestMove).as("%s from %s, seed %s", drill.text(), steps, SEED + 2)
            .isLessThan(1);
      }
    }
    assertThat(FirstDays.of(Laid.WHOLE_MOVES, RL5, 4, 6, SEED + 2).largestMove).as("seed %s", SEED + 2).isGreaterThan(1);
  }

  /** Law: from the same first mark a tap moves the tape the way it says, and never farther than the model would. */
  @Test
  void aTapMovesTheTapeTheWayItSays() {
    for (Level level : Level.KNOWN) {
      for (Sequence drill : List.of(RRL2, RL5)) {
        FlightModel model = newcomer(level);
        double first = advise(model, drill, null).markToSand_m();
        for (Outcome o : List.of(Outcome.SHORT, Outcome.LATE)) {
          FlightModel then = model.learn(tap(drill, o, first));
          double held = advise(then, drill, first).markToSand_m() - first;
          double whole = advise(then, drill, null).markToSand_m() - first;
          assertThat(Math.signum(held)).as("%s after %s", level, o).isEqualTo(o == Outcome.SHORT ? -1.0 : 1.0);
          assertThat(held).as("%s after %s", level, o).isCloseTo(Beginning.AFTER_ONE * whole, within(0.011));
        }
      }
    }
  }

  /** Where three reps are said to settle it, the fourth lands in the sand at least as often as two in three. */
  @Test
  void whereThreeRepsSettleItTheySettleIt() {
    int said = 0;
    for (Sequence drill : List.of(RRL, RRL2, RL5)) {
      Beginning b = advise(newcomer(Level.INTERMEDIATE), drill, null).beginning();
      System.out.printf("%s: expected after three taps %.2f, %s%n", drill.text(), Objects.requireNonNull(b).settled(), b.said(LengthUnit.METRES));
      if (b.soon().equals("three reps will settle it")) {
        said++;
        Seen seen = FirstDays.of(Laid.BEGINNING, drill, 0, ATHLETES, SEED + 3);
        assertThat(seen.in(3)).as("%s, seed %s", drill.text(), SEED + 3)
            .isGreaterThan(Beginning.SETTLES - 3 * Math.sqrt(0.25 / seen.days));
      }
    }
    assertThat(said).isPositive();
  }

  @Test
  void itIsSaidInOneSentence() {
    assertThat(new Beginning(14.74, 14.5, 15, 0.67, 0, 0.9).said(LengthUnit.METRES))
        .isEqualTo("Begin at 14.74 m; about 2 in 3 land in the sand; three reps will settle it.");
    assertThat(new Beginning(14.74, 14.5, 15, 0.8999, 1, 0.9).said(LengthUnit.METRES))
        .isEqualTo("Now 14.74 m; about 9 in 10 land in the sand; two more reps will settle it.");
    assertThat(new Beginning(14.74, 14.5, 15, 0.05, 4, 0.2).said(LengthUnit.METRES))
        .isEqualTo("Now 14.74 m; few land in the sand; measure one landing to settle it.");
    assertThat(new Beginning(14.74, 14.5, 15, 0.6666, 0, 0.9).odds()).isEqualTo("about 2 in 3");
    assertThat(new Beginning(14.74, 14.5, 15, 0.6599, 0, 0.9).odds()).isEqualTo("about half");
  }

  @Test
  void aHistoryOrAMarkThatWorksIsNoBeginning() {
    FlightModel model = newcomer(Level.BEGINNER);
    MarkAdvice first = advise(model, RL5, null);
    assertThat(first.beginning()).isNotNull();
    assertThat(first.window()).isNull();
    assertThat(first.warnings()).noneMatch(w -> w.contains("do not rely"));
    for (int i = 0; i < Beginning.MOST; i++) {
      model = model.learn(tap(RL5, i % 2 == 0 ? Outcome.SHORT : Outcome.LATE, first.markToSand_m()));
    }
    MarkAdvice later = advise(model, RL5, null);
    assertThat(later.beginning()).isNull();
    FlightModel known = newcomer(Level.BEGINNER);
    double[] p = new Newcomer(Level.BEGINNER, new java.util.Random(SEED)).rep(RRL, 0);
    for (int i = 0; i < 3; i++) {
      known = known.learn(new Rep(0, 1, FirstDays.DAY, RRL, 0, Surface.TRACK, List.of(p[1], p[2]), p[3], null, null, List.of()));
    }
    MarkAdvice works = advise(known, RRL, null);
    assertThat(works.window()).isNotNull();
    assertThat(works.beginning()).isNull();
  }

  /** Six newcomers get tapes, those of a level the same one, from which all land about as often. */
  @Test
  void aNewcomerGetsATape() {
    List<Tapes.Wish> wishes = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      Level level = Level.KNOWN.get(i % 3);
      wishes.add(new Tapes.Wish("Athlete " + i, "RRL from standing", advise(newcomer(level), RRL, null)));
    }
    Tapes tapes = TapePlanner.fewest(wishes, LengthUnit.METRES);
    assertThat(tapes.without()).isEmpty();
    assertThat(tapes.tapes()).hasSizeBetween(1, 3);
    for (Tapes.Tape tape : tapes.tapes()) {
      for (Tapes.Wish w : tape.serves()) {
        Beginning b = Objects.requireNonNull(w.advice().beginning());
        double lands = MarkChances.of(w.advice().forecast(), w.advice().settings()).withoutMargins().counts(tape.markToSand_m());
        assertThat(lands).as(w.athlete()).isGreaterThan(b.inSand() - Beginning.ALIKE - 1e-6);
      }
    }
  }
}
