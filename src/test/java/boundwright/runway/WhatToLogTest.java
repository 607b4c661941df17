package boundwright.runway;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Forecasts;
import boundwright.flight.Inquiry;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.flight.Sharpness;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

class WhatToLogTest {
  private static final LocalDate DAY = LocalDate.of(2026, 4, 1);
  private static final Sequence RRL = Sequence.parse("RRL");

  /**
   * Against a process of its own: the last contact is L = a + e, the landing L + b + f, where a and b are the athlete's and e
   * and f the rep's. One last contact is measured exactly, a learned by Bayes' rule by hand, the mark laid anew, a rep made.
   */
  @Test
  void theExpectedChanceIsWhatLearningAndThenJumpingGives() {
    MarkSettings s = new MarkSettings(0.9, 0.3, 0.3);
    double aVar = 0.6 * 0.6;
    double eVar = 0.3 * 0.3;
    double tie = 0.5; // b = tie (a - mean) + what is b's own
    double bVar = 0.2 * 0.2;
    double fVar = 0.25 * 0.25;
    double aAfter = aVar * eVar / (aVar + eVar);
    MarkChances now = chances(8, aVar, 2.2, tie, bVar, eVar, fVar, s);
    double expected = WhatToLog.expected(now, sharpness(aVar, tie, bVar, eVar, fVar), sharpness(aAfter, tie, bVar, eVar, fVar));
    long seed = 77;
    Random r = new Random(seed);
    int n = 20_000;
    int counts = 0;
    int before = 0;
    for (int i = 0; i < n; i++) {
      double a = 8 + Math.sqrt(aVar) * r.nextGaussian();
      double b = 2.2 + tie * (a - 8) + Math.sqrt(bVar) * r.nextGaussian();
      double seen = a + Math.sqrt(eVar) * r.nextGaussian();
      double believed = 8 + aVar / (aVar + eVar) * (seen - 8);
      double mark = chances(believed, aAfter, 2.2 + tie * (believed - 8), tie, bVar, eVar, fVar, s).best();
      double last = a + Math.sqrt(eVar) * r.nextGaussian();
      double landing = last + b + Math.sqrt(fVar) * r.nextGaussian();
      counts += last <= mark - 0.3 && landing >= mark + 0.3 ? 1 : 0;
      before += last <= now.best() - 0.3 && landing >= now.best() + 0.3 ? 1 : 0;
    }
    double slack = 4 * Math.sqrt(0.2 / n);
    assertThat(before / (double) n).as("seed %s", seed).isCloseTo(now.bestChance(), within(slack));
    assertThat(counts / (double) n).as("seed %s", seed).isCloseTo(expected, within(slack));
    assertThat(expected).isGreaterThan(now.bestChance() + 0.05);
  }

  private static Sharpness sharpness(double aVar, double tie, double bVar, double eVar, double fVar) {
    return new Sharpness(
        Math.sqrt(aVar + eVar), Math.sqrt((1 + tie) * (1 + tie) * aVar + bVar + eVar + fVar), (1 + tie) * aVar + eVar);
  }

  private static MarkChances chances(
      double a, double aVar, double b, double tie, double bVar, double eVar, double fVar, MarkSettings s) {
    Sharpness now = sharpness(aVar, tie, bVar, eVar, fVar);
    return new MarkChances(a, now.lastContactSd(), a + b, now.landingSd(), now.together(), s);
  }

  private static FlightModel newcomer() {
    return FlightModel.prior(Profile.bare(new Athlete(1, "Invented", Level.BEGINNER, Foot.RIGHT, 4)));
  }

  private static FlightModel after(int reps, boolean measured) {
    FlightModel m = newcomer();
    for (int i = 0; i < reps; i++) {
      LocalDate day = DAY.plusDays(3L * (i / 6));
      MarkAdvice a =
          MarkAdvisor.advise(m, MarksTest.RUN_UP, RRL, 4, Surface.TRACK, CoachSettings.DEFAULT, day);
      double landing = a.forecast().landing().p50();
      m =
          m.learn(
              measured
                  ? new Rep(0, 1, day, RRL, 4, Surface.TRACK, List.of(a.forecast().mean(2), a.forecast().mean(3)), landing, null, null, List.of())
                  : new Rep(0, 1, day, RRL, 4, Surface.TRACK, List.of(), null, Outcome.IN, a.markToSand_m(), List.of()));
    }
    return m;
  }

  private static LogNext next(FlightModel m, String sequence, LocalDate day) {
    return Objects.requireNonNull(
        MarkAdvisor.whatToLog(m, Sequence.parse(sequence), 4, Surface.TRACK, CoachSettings.DEFAULT, day));
  }

  @Test
  void aNewcomerIsMeasured() {
    LogNext next = next(newcomer(), "RRL", DAY);
    assertThat(next.way()).isEqualTo(LogNext.Way.MEASURE_LAST);
    assertThat(next.said()).isEqualTo("Measure the last footprint of this one.");
    assertThat(next.why()).matches("Then \\d\\d in 100 are expected to count; after two taps from this mark \\d\\d\\.");
    assertThat(next.tapeToSand_m()).isNull();
  }

  /** How long the last flight is decides where the mark goes: then the last footprint alone is not enough. */
  @Test
  void whereTheLastFlightIsUnknownAllIsMeasured() {
    Inquiry known = Forecasts.inquiry(8, 0.25, 1.6, 0.001, 0.04, 0.04);
    Inquiry unknown = Forecasts.inquiry(8, 0.25, 1.6, 0.25, 0.04, 0.01);
    assertThat(chosen(known, 1.6, false).way()).isEqualTo(LogNext.Way.MEASURE_LAST);
    LogNext all = chosen(unknown, 1.6, false);
    assertThat(all.way()).isEqualTo(LogNext.Way.MEASURE);
    assertThat(all.said()).isEqualTo("Measure this one.");
  }

  private static LogNext chosen(Inquiry q, double flight, boolean onlyTaps) {
    Sharpness now = q.now();
    MarkChances c = new MarkChances(8, now.lastContactSd(), 8 + flight, now.landingSd(), now.together(), MarkSettings.DEFAULT);
    return Objects.requireNonNull(WhatToLog.choose(q, c, 3, onlyTaps, LengthUnit.METRES));
  }

  /** Offered only where it wins back within a month what it costs; whoever measures is asked for the footprint. */
  @Test
  void whoOnlyTapsIsOfferedATapeFromWhichTapsTellMore() {
    Inquiry q = Forecasts.inquiry(8, 0.25, 2.4, 0.01, 0.1, 0.01);
    LogNext next = chosen(q, 2.4, true);
    assertThat(next.way()).isEqualTo(LogNext.Way.TAPE);
    double tape = Objects.requireNonNull(next.tapeToSand_m());
    assertThat(next.said()).isEqualTo(String.format(Locale.ROOT, "Tape at %.2f m for the next two.", tape));
    assertThat(next.why()).matches("Then \\d\\d in 100 are expected to count; after two taps from this mark \\d\\d\\.");
    assertThat(chosen(q, 2.4, false).way()).isEqualTo(LogNext.Way.MEASURE_LAST);
    FlightModel tapped = after(6, false);
    assertThat(next(tapped, "RRL", DAY.plusDays(3)).way()).as("costs more than it wins").isEqualTo(LogNext.Way.MEASURE_LAST);
  }

  @Test
  void nothingIsAskedWhereNothingIsToBeWon() {
    FlightModel known = after(24, true);
    assertThat(MarkAdvisor.whatToLog(known, RRL, 4, Surface.TRACK, CoachSettings.DEFAULT, DAY.plusDays(12))).isNull();
  }

  /** Law: knowing more never lowers what is expected, up to the five points of the rule. */
  @Test
  void knowingMoreNeverCosts() {
    long seed = 91;
    Random r = new Random(seed);
    for (int i = 0; i < 400; i++) {
      double aVar = r.nextDouble();
      double tie = 0.5 * r.nextGaussian();
      double bVar = 0.1 * r.nextDouble();
      double eVar = 0.01 + 0.2 * r.nextDouble();
      double fVar = 0.01 + 0.1 * r.nextDouble();
      MarkChances now = chances(8, aVar, 0.8 + 2 * r.nextDouble(), tie, bVar, eVar, fVar, MarkSettings.DEFAULT);
      double after = WhatToLog.expected(now, sharpness(aVar, tie, bVar, eVar, fVar), sharpness(aVar * r.nextDouble(), tie, bVar * r.nextDouble(), eVar, fVar));
      assertThat(after).as("seed %s round %s", seed, i).isGreaterThan(now.bestChance() - 0.004);
    }
  }
}
