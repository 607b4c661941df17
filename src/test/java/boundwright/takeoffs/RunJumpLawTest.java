package boundwright.takeoffs;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.RunUp;
import boundwright.footfall.Foot;
import boundwright.footfall.RunJumps;
import boundwright.runway.MarkSettings;
import boundwright.runway.SandMarks;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Does the learning keep its word on athletes who jump by another process ({@link InventedJumper})? Sixteen reps over four days, then one
 * rep on each of eight new days. Seeds are fixed; limits are the project's own requirement (90 % intervals hold 85 to 95 %).
 */
class RunJumpLawTest {
  private static final long SEED = 7_000;
  private static final int ATHLETES = 90;
  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

  static Lengths lengths() {
    Profile p = new Profile(new Athlete(1, "Invented", Level.INTERMEDIATE, Foot.LEFT, 4), List.of(), List.of());
    return new Lengths(FlightModel.prior(p), s -> RunUp.of(p, s), DAY);
  }

  private static RunJumps drill(int i) {
    return new RunJumps(i % 2 == 0 ? Foot.LEFT : Foot.RIGHT, i % 5 == 4 ? 4 : 2, 3 + i % 3);
  }

  static RunJumpRep rep(InventedJumper who, LocalDate on, RunJumps pattern, int steps, boolean inSand, boolean landingOnly) {
    double[] places = who.rep(pattern, steps, inSand);
    List<Double> marks = new ArrayList<>();
    for (int i = 0; i < places.length - 1; i++) {
      marks.add(landingOnly ? Double.NaN : places[i]);
    }
    return new RunJumpRep(0, 1, on, pattern, steps, Surface.TRACK, inSand, marks, places[places.length - 1], "");
  }

  /** Kept of all, in a hundred. */
  private record Held(double takeOffs, double landings, double counted, double promised) {}

  private static Held season(boolean landingOnly, double spread, int reps) {
    Lengths lengths = lengths();
    int prints = 0;
    int printsHeld = 0;
    int landings = 0;
    int landingsHeld = 0;
    int counted = 0;
    double promised = 0;
    for (int a = 0; a < ATHLETES; a++) {
      InventedJumper who = new InventedJumper(SEED + a, spread);
      List<RunJumpRep> log = new ArrayList<>();
      for (int i = 0; i < reps; i++) {
        if (i % 4 == 0) {
          who.sleep(7);
        }
        log.add(rep(who, DAY.plusDays(7L * (i / 4)), drill(i), i % 3 == 2 ? 6 : 4, i % 2 == 0, landingOnly));
      }
      for (int d = 0; d < 8; d++) {
        who.sleep(3);
        LocalDate on = DAY.plusDays(35 + 3L * d);
        RunJumps pattern = drill(d);
        RunJumpModel.Told told = new RunJumpModel(lengths, log, on).told(pattern, 4, true);
        double[] fell = who.rep(pattern, 4, true);
        for (int c = 0; c < fell.length; c++) {
          boolean in = fell[c] >= told.places().get(c).p05() && fell[c] <= told.places().get(c).p95();
          if (c < fell.length - 1) {
            prints++;
            printsHeld += in ? 1 : 0;
          } else {
            landings++;
            landingsHeld += in ? 1 : 0;
          }
        }
        SandMarks sand = RunJumpMarks.sand(told, MarkSettings.DEFAULT);
        promised += sand.chance();
        counted += fell[fell.length - 1] >= sand.best_m() + 0.3 && fell[fell.length - 2] <= sand.best_m() - 0.3 ? 1 : 0;
      }
    }
    return new Held(100.0 * printsHeld / prints, 100.0 * landingsHeld / landings, 100.0 * counted / landings, 100 * promised / landings);
  }

  @ParameterizedTest
  @CsvSource({"false, 1", "true, 1", "false, 1.4"})
  void nineRepsInTenFallWhereTheyWereSaidTo(boolean landingOnly, double spread) {
    Held held = season(landingOnly, spread, 16);
    assertThat(held.takeOffs()).as("seed %d: %s", SEED, held).isBetween(85.0, 95.0);
    assertThat(held.landings()).as("seed %d: %s", SEED, held).isBetween(85.0, 95.0);
    assertThat(held.counted() - held.promised()).as("reps that count, less what was said; seed %d: %s", SEED, held).isBetween(-5.0, 5.0);
  }

  /** Who scatter clearly less than most are, after sixteen reps, still told an interval that is a little too wide: the safe side. */
  @Test
  void whoScatterLittleAreNotToldTooMuch() {
    Held held = season(false, 0.7, 16);
    assertThat(held.takeOffs()).as("seed %d: %s", SEED, held).isBetween(85.0, 97.0);
    assertThat(held.landings()).as("seed %d: %s", SEED, held).isBetween(85.0, 97.0);
  }

  /** The first guess is wide, and says so: it may hold more than nine in ten, never clearly fewer. */
  @Test
  void theFirstGuessIsNotTooSure() {
    Held held = season(false, 1, 0);
    assertThat(held.takeOffs()).as("seed %d: %s", SEED, held).isGreaterThan(85);
    assertThat(held.landings()).as("seed %d: %s", SEED, held).isGreaterThan(85);
  }

  /** More reps, narrower: the landing after 24 reps is told clearly better than after 4, and after 4 than before any. */
  @Test
  void whatIsLoggedMakesItSurer() {
    double none = width(0);
    double few = width(4);
    double many = width(24);
    assertThat(few).isLessThan(0.7 * none);
    assertThat(many).isLessThan(0.9 * few);
  }

  private static double width(int reps) {
    InventedJumper who = new InventedJumper(SEED, 1);
    List<RunJumpRep> log = new ArrayList<>();
    for (int i = 0; i < reps; i++) {
      if (i % 4 == 0) {
        who.sleep(1);
      }
      log.add(rep(who, DAY.plusDays(i / 4), new RunJumps(Foot.LEFT, 2, 4), 4, true, false));
    }
    return new RunJumpModel(lengths(), log, DAY.plusDays(10)).told(new RunJumps(Foot.LEFT, 2, 4), 4, true).places().get(3).halfWidth();
  }
}
