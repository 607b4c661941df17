package boundwright.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What breaks that were seen teach of the next one. */
class BreaksTest {
  private static final LocalDate FIRST = LocalDate.of(2026, 1, 5);

  @Test
  void nothingLearnedOfABreakShowsWhatWasTaken() {
    for (double factor : new double[] {0.5, 1, 2}) {
      Breaks.Expected e = new Breaks.Expected(0.3, 0.02, 0.01 * factor, factor);
      assertThat(e.showing(0.3, 0.02 + 0.01 * factor)).isCloseTo(factor, within(1e-12));
    }
  }

  /** A law with a slow model: changes drawn with another variance, seen exactly, show that variance. */
  @Test
  void changesSeenExactlyShowTheirOwnVariance() {
    long seed = 11;
    Random r = new Random(seed);
    for (double truth : new double[] {0.25, 1, 4}) {
      double sum = 0;
      int n = 20_000;
      for (int i = 0; i < n; i++) {
        double added = 0.01;
        Breaks.Expected e = new Breaks.Expected(0.1, 1e-9, added, 1);
        sum += e.showing(0.1 + Math.sqrt(truth * added) * r.nextGaussian(), 1e-12);
      }
      assertThat(sum / n).as("truth %s, seed %d", truth, seed).isCloseTo(truth, within(0.05 * truth));
    }
  }

  @Test
  void theFactorBeginsAtOneAndMovesWithWhatIsSeen() {
    assertThat(Breaks.NONE.sideFactor()).isEqualTo(1);
    assertThat(Breaks.of(4, 8, 2).levelFactor()).as("(4 + 8) / (4 + 4)").isEqualTo(1.5);
    assertThat(Breaks.of(4, 8, 2).sideFactor()).isEqualTo(0.75);
    assertThat(Breaks.of(1000, 1e6, 0).levelFactor()).as("never beyond four").isEqualTo(4);
    assertThat(Breaks.of(1000, 1e6, 0).sideFactor()).isEqualTo(0.25);
  }

  private static Profile profile(long id) {
    return new Profile(new Athlete(id, "Invented " + id, Level.INTERMEDIATE, Foot.RIGHT, 4), List.of(), List.of());
  }

  /** Every footprint of two reps a day, flights from the left leg {@code left} times as long as the others. */
  private static FlightModel day(FlightModel model, long athlete, LocalDate date, double left, Random r) {
    FlightModel out = model;
    for (int i = 0; i < 3; i++) {
      List<Double> prints = new ArrayList<>();
      double at = 0;
      for (int c = 0; c < 10; c++) {
        at += 2.0 * (c % 2 == 0 ? 1 : left) * (1 + 0.01 * r.nextGaussian());
        prints.add(Math.round(at * 100) / 100.0);
      }
      double landing = prints.remove(9);
      out = out.learn(new Rep(0, athlete, date, Sequence.parse("RL x5"), 4, Surface.GRASS, prints, landing, null, null, List.of()));
    }
    return out;
  }

  private static FlightModel afterABreak(long id, double leftBack, Random r) {
    FlightModel m = FlightModel.prior(profile(id));
    LocalDate day = FIRST;
    for (int i = 0; i < 8; i++, day = day.plusDays(3)) {
      m = day(m, id, day, 1, r);
    }
    day = day.plusDays(28);
    for (int i = 0; i < 4; i++, day = day.plusDays(3)) {
      m = day(m, id, day, leftBack, r);
    }
    return m;
  }

  private static double width(FlightModel m, LocalDate date) {
    return m.forecast(Sequence.parse("R"), 4, Surface.GRASS, date).landing().halfWidth();
  }

  @Test
  void aSquadWhoseLegsStayedAlikeIsSurerAfterABreakThanOneWhoseDidNot() {
    Random r = new Random(5);
    Map<Long, FlightModel> alike = new HashMap<>();
    Map<Long, FlightModel> apart = new HashMap<>();
    for (long id = 1; id <= 6; id++) {
      alike.put(id, afterABreak(id, 1, r));
      apart.put(id, afterABreak(id, id % 2 == 0 ? 0.75 : 1.33, r));
    }
    SquadPrior steady = SquadPrior.of(1, alike);
    SquadPrior moved = SquadPrior.of(2, apart);
    assertThat(steady.breaks(99).sideFactor()).isLessThan(1);
    assertThat(moved.breaks(99).sideFactor()).isGreaterThan(1);
    assertThat(moved.breaks(99).shown()).isEqualTo(6);
    assertThat(moved.breaks(1).shown()).as("not their own").isEqualTo(5);
    assertThat(SquadPrior.fromBytes(moved.toBytes()).orElseThrow().breaks(99)).isEqualTo(moved.breaks(99));
    FlightModel known = afterABreak(99, 1, new Random(6));
    assertThat(known.breaks().own()).isEqualTo(1);
    assertThat(FlightModel.fromBytes(known.toBytes())).contains(known);
    LocalDate later = FIRST.plusDays(24 + 28 + 12 + 28);
    FlightModel wide = FlightModel.prior(profile(99), moved);
    FlightModel narrow = FlightModel.prior(profile(99), steady);
    Random same = new Random(7);
    Random again = new Random(7);
    for (int i = 0; i < 8; i++) {
      wide = day(wide, 99, FIRST.plusDays(3L * i), 1, same);
      narrow = day(narrow, 99, FIRST.plusDays(3L * i), 1, again);
    }
    assertThat(width(wide, later)).isGreaterThan(width(narrow, later));
    assertThat(width(wide, FIRST.plusDays(24))).as("no days off, no difference to speak of").isCloseTo(width(narrow, FIRST.plusDays(24)), within(0.05));
  }

  @Test
  void aBreakThatIsOpenComesBackFromTheStore() {
    Random r = new Random(3);
    FlightModel m = FlightModel.prior(profile(1));
    m = day(m, 1, FIRST, 1, r);
    m = day(m, 1, FIRST.plusDays(40), 1, r);
    assertThat(m.breaks().open()).isNotNull();
    assertThat(FlightModel.fromBytes(m.toBytes())).contains(m);
  }
}
