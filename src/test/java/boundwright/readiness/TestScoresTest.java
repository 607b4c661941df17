package boundwright.readiness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.KnownMark;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Surface;
import boundwright.evidence.Standing;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.technique.JudgedRep;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Test scores with their protocol, and the error that is held against a change. Athletes and scores are invented. */
class TestScoresTest {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

  private static TestScore score(long id, long athlete, TestKind kind, double value, int day) {
    return new TestScore(id, athlete, kind, 0, value, null, DAY.plusDays(day), TestProtocol.usual(kind, Surface.TRACK));
  }

  @Test
  void aStandingTestIsTheFirstGuessOfTheModelToo() {
    TestScore s = score(4, 1, TestKind.STANDING_FIVE, 11.5, 0);
    assertThat(s.knownMark()).contains(new KnownMark(0, KnownMark.Kind.STANDING_FIVE, 0, 11.5, DAY));
    assertThat(s.runUp()).isEmpty();
    assertThat(score(5, 1, TestKind.SINGLE_LEG_LEFT, 9.5, 0).knownMark()).isEmpty();
  }

  @Test
  void aTimedRunUpIsAMeasuredOneIfItsLengthWasTaken() {
    TestProtocol p = TestProtocol.usual(TestKind.TIMED_RUN_UP, Surface.TRACK);
    TestScore s = new TestScore(0, 1, TestKind.TIMED_RUN_UP, 8, 7.4, 14.2, DAY, p);
    assertThat(s.runUp()).contains(new MeasuredRunUp(0, 8, 14.2, 7.4, DAY));
    assertThat(new TestScore(0, 1, TestKind.TIMED_RUN_UP, 8, 7.4, null, DAY, p).runUp()).isEmpty();
  }

  /** The limits of a score are never wider than those of what is derived from it. */
  @ParameterizedTest
  @EnumSource(TestKind.class)
  void limitsFitThoseOfTheFirstGuess(TestKind kind) {
    int steps = kind.fromStanding() ? 0 : 8;
    TestProtocol p = TestProtocol.usual(kind, Surface.GRASS);
    for (double v : new double[] {kind.least(), kind.most()}) {
      assertThat(new TestScore(0, 1, kind, steps, v, null, DAY, p).value()).isEqualTo(v);
    }
    for (double v : new double[] {Math.nextDown(kind.least()), Math.nextUp(kind.most()), Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> new TestScore(0, 1, kind, steps, v, null, DAY, p))
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining(kind.label())
          .hasMessageContaining(kind.unit().sign());
    }
  }

  @Test
  void refusals() {
    TestProtocol p = TestProtocol.usual(TestKind.STANDING_TRIPLE, Surface.TRACK);
    assertThatThrownBy(() -> new TestScore(0, 1, TestKind.STANDING_TRIPLE, 4, 7, null, DAY, p))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("not 4");
    assertThatThrownBy(() -> new TestScore(0, 1, TestKind.TIMED_RUN_UP, 0, 7, null, DAY, p)).isInstanceOf(RefusedException.class).hasMessageContaining("has 0");
    assertThatThrownBy(() -> new TestScore(0, 1, TestKind.STANDING_TRIPLE, 0, 7, 9.0, DAY, p))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("no run-up");
    assertThatThrownBy(() -> new TestScore(0, 1, TestKind.TIMED_RUN_UP, 2, 7, 40.0, DAY, p)).isInstanceOf(RefusedException.class).hasMessageContaining("40.0 m");
    assertThatThrownBy(() -> new TestProtocol(Surface.TRACK, " ", "line", 3, "")).isInstanceOf(RefusedException.class).hasMessageContaining("shoes");
    assertThatThrownBy(() -> new TestProtocol(Surface.TRACK, "spikes", "line", 0, "")).isInstanceOf(RefusedException.class).hasMessageContaining("best of 0");
    assertThatThrownBy(() -> new TestProtocol(Surface.TRACK, "spikes", "line", 1, "n".repeat(301)))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("301");
  }

  @Test
  void protocolInWordsAndWhatMayBeCompared() {
    TestProtocol p = new TestProtocol(Surface.SPRUNG_FLOOR, " flat  shoes", "both feet on the line", 3, "");
    assertThat(p.text()).isEqualTo("On sprung floor, flat shoes, start: both feet on the line, best of 3.");
    assertThat(p.comparableWith(new TestProtocol(Surface.SPRUNG_FLOOR, "Flat shoes", "both feet on the line", 3, "windy"))).isTrue();
    assertThat(p.comparableWith(new TestProtocol(Surface.TRACK, "flat shoes", "both feet on the line", 3, ""))).isFalse();
    assertThat(p.comparableWith(new TestProtocol(Surface.SPRUNG_FLOOR, "flat shoes", "both feet on the line", 2, ""))).isFalse();
  }

  @Test
  void findsTheRepeats() {
    List<TestScore> scores =
        List.of(
            score(1, 1, TestKind.STANDING_TRIPLE, 6.00, 0),
            score(2, 1, TestKind.STANDING_TRIPLE, 6.10, 7), // repeat, but there is a later one
            score(3, 1, TestKind.STANDING_TRIPLE, 6.20, 14), // latest, 7 days on
            score(4, 2, TestKind.STANDING_TRIPLE, 7.00, 0),
            score(5, 2, TestKind.STANDING_TRIPLE, 7.10, 0), // same day: a try
            score(6, 3, TestKind.STANDING_TRIPLE, 5.00, 0),
            score(7, 3, TestKind.STANDING_TRIPLE, 5.10, 15), // too long after
            score(8, 4, TestKind.STANDING_TRIPLE, 8.00, 0),
            new TestScore(9, 4, TestKind.STANDING_TRIPLE, 0, 8.3, null, DAY.plusDays(5), TestProtocol.usual(TestKind.STANDING_TRIPLE, Surface.GRASS)),
            score(10, 5, TestKind.STANDING_FIVE, 11, 0),
            score(11, 5, TestKind.STANDING_FIVE, 11.2, 14));
    assertThat(TestError.repeats(scores, TestKind.STANDING_TRIPLE, 0)).containsExactly(new TypicalError.Pair(6.10, 6.20));
    assertThat(TestError.repeats(scores, TestKind.STANDING_FIVE, 0)).hasSize(1);
  }

  /** The example of section 5 (worked) as standing triples in decimetres: CV 4.188 % is 0.289 m of 6.9 m. */
  @Test
  void ownErrorFromFiveRepeats() {
    double[][] pairs = {{6.2, 6.7}, {7.8, 7.6}, {8.1, 8.7}, {5.5, 5.5}, {6.6, 6.3}};
    List<TestScore> scores = new ArrayList<>();
    for (int a = 0; a < 5; a++) {
      scores.add(score(2 * a + 1, a, TestKind.STANDING_TRIPLE, pairs[a][0], 0));
      scores.add(score(2 * a + 2, a, TestKind.STANDING_TRIPLE, pairs[a][1], 7));
    }
    TestError own = TestError.of(scores, TestKind.STANDING_TRIPLE, 0, false).orElseThrow();
    assertThat(own.own()).isTrue();
    assertThat(own.te()).isCloseTo(.28896, within(5e-6));
    assertThat(own.detectableChange()).isCloseTo(1.96 * Math.sqrt(2) * .28896, within(1e-4));
    assertThat(own.source().standing()).isEqualTo(Standing.OWN_DATA);
    assertThat(own.inWords()).contains("5 athletes", "roughly");
    TestError published = TestError.of(scores.subList(0, 8), TestKind.STANDING_TRIPLE, 0, false).orElseThrow();
    assertThat(published.own()).isFalse();
    // Mean of the four latest scores 7.125 m, upper end 4.6 % (Markovic et al. 2004, read).
    assertThat(published.te()).isCloseTo(7.125 * .046, within(1e-9));
    assertThat(published.inWords()).contains("Markovic", "1 more athlete ");
  }

  /** Standing jumps 2.4-4.6 % (Markovic et al. 2004, read); hops 7-11 %, 18-36 % at 11-13 years (read); nothing for run-ups. */
  @ParameterizedTest
  @CsvSource({
    "STANDING_TRIPLE, false, 2.4, 4.6, READ",
    "STANDING_TEN, false, 2.4, 4.6, JUDGEMENT",
    "SINGLE_LEG_LEFT, false, 7, 11, MEMORY",
    "SINGLE_LEG_RIGHT, true, 18, 36, MEMORY"
  })
  void publishedErrors(TestKind kind, boolean young, double low, double high, Standing standing) {
    TestNorm norm = TestNorm.of(kind, young).orElseThrow();
    assertThat(norm.lowPercent()).isEqualTo(low);
    assertThat(norm.highPercent()).isEqualTo(high);
    assertThat(norm.source().standing()).isEqualTo(standing);
  }

  @Test
  void noErrorIsInventedForARunUp() {
    TestProtocol p = TestProtocol.usual(TestKind.TIMED_RUN_UP, Surface.TRACK);
    List<TestScore> one = List.of(new TestScore(1, 1, TestKind.TIMED_RUN_UP, 8, 7.4, null, DAY, p));
    assertThat(TestNorm.of(TestKind.TIMED_RUN_UP, false)).isEmpty();
    assertThat(TestError.of(one, TestKind.TIMED_RUN_UP, 8, false)).isEmpty();
    assertThat(TestError.of(List.of(), TestKind.STANDING_TRIPLE, 0, false)).isEmpty();
  }

  @Test
  void eachLegIsHeldAgainstTheErrorOfItsOwnTest() {
    // Five athletes repeat within a week: the right leg alike to the centimetre, the left by half a metre to either side.
    List<TestScore> squad = new ArrayList<>();
    for (int a = 1; a <= 5; a++) {
      squad.add(score(10L * a, a, TestKind.SINGLE_LEG_RIGHT, 9 + 0.1 * a, 0));
      squad.add(score(10L * a + 1, a, TestKind.SINGLE_LEG_RIGHT, 9 + 0.1 * a + 0.01 * (a - 3), 7));
      squad.add(score(10L * a + 2, a, TestKind.SINGLE_LEG_LEFT, 9 + 0.1 * a, 0));
      squad.add(score(10L * a + 3, a, TestKind.SINGLE_LEG_LEFT, 9 + 0.1 * a + 0.5 * (a - 3), 7));
    }
    List<TestScore> own =
        List.of(
            score(1, 9, TestKind.SINGLE_LEG_RIGHT, 9.6, 0), score(2, 9, TestKind.SINGLE_LEG_LEFT, 9.6, 0),
            score(3, 9, TestKind.SINGLE_LEG_RIGHT, 9.2, 40), score(4, 9, TestKind.SINGLE_LEG_LEFT, 9.2, 40));
    LegTests tests = LegTests.of(own, squad);
    assertThat(tests.changes()).extracting(LegChange::foot).containsExactly(Foot.RIGHT, Foot.LEFT);
    assertThat(tests.changes()).extracting(LegChange::lower).containsExactly(true, false);
  }

  @Test
  void legsSideBySideAndEachAgainstItsOwnHistory() {
    TestError error = new TestError(TestKind.SINGLE_LEG_LEFT, 0.2, null, 6, true, TestError.of(
        List.of(score(1, 1, TestKind.SINGLE_LEG_LEFT, 9, 0)), TestKind.SINGLE_LEG_LEFT, 0, false).orElseThrow().source());
    LegTests tests =
        LegTests.of(
            List.of(
                score(1, 1, TestKind.SINGLE_LEG_RIGHT, 9.6, 0),
                score(2, 1, TestKind.SINGLE_LEG_LEFT, 9.5, 0),
                score(3, 1, TestKind.SINGLE_LEG_LEFT, 9.5, 20),
                score(4, 1, TestKind.SINGLE_LEG_RIGHT, 9.6, 40),
                score(5, 1, TestKind.SINGLE_LEG_LEFT, 8.88, 40)),
            error);
    // 8.88 / 9.60 = 148 / 160 = 92.5 % (worked).
    assertThat(tests.symmetry()).isEqualTo(new LimbSymmetry(9.6, 8.88));
    assertThat(new LimbSymmetry(9.6, 8.88).share()).isCloseTo(.925, within(1e-12));
    assertThat(tests.changes()).extracting(LegChange::foot).containsExactly(Foot.RIGHT, Foot.LEFT);
    assertThat(tests.changes()).extracting(LegChange::lower).containsExactly(false, true);
    assertThat(LegTests.of(List.of(), error).symmetry()).isNull();
    assertThat(LegTests.of(List.of(score(1, 1, TestKind.SINGLE_LEG_LEFT, 9, 0)), error).changes()).isEmpty();
  }

  @Test
  void trendByTheCalendar() {
    List<TestScore> scores = new ArrayList<>();
    double[] scatter = {0.05, -0.05, -0.05, 0.05};
    for (int a = 0; a < 4; a++) {
      for (int t = 0; t < 4; t++) {
        scores.add(score(scores.size() + 1, a, TestKind.STANDING_FIVE, 10 + a + 0.02 * 3 * t + (a % 2 == 0 ? scatter[t] : -scatter[t]), 21 * t));
      }
    }
    scores.add(score(99, 9, TestKind.STANDING_TRIPLE, 7, -50));
    TestTrend trend = TestTrend.of(scores, TestKind.STANDING_FIVE, 0);
    assertThat(trend.start()).isEqualTo(DAY);
    assertThat(trend.weeksTo(DAY.plusDays(21))).isEqualTo(3.0);
    assertThat(trend.model().slope().value()).isCloseTo(0.02, within(1e-9));
    assertThat(trend.model().of(9)).isEmpty();
  }

  @Test
  void aLoggedRepIsSeenByTheTechniqueRoom() {
    Rep rep =
        new Rep(7, 1, DAY, Sequence.parse("RRL"), 4, Surface.GRASS, List.of(), null, Outcome.IN, null, List.of("toe-up@2", "upright"));
    JudgedRep judged = JudgedReps.of(rep);
    assertThat(judged.firstContact("toe-up")).contains(2);
    assertThat(judged.keys()).containsExactlyInAnyOrder("toe-up", "upright");
    Rep beyond = new Rep(7, 1, DAY, Sequence.parse("RRL"), 4, Surface.GRASS, List.of(), null, Outcome.IN, null, List.of("toe-up@4"));
    assertThatThrownBy(() -> JudgedReps.of(beyond)).isInstanceOf(RefusedException.class).hasMessageContaining("3 contacts");
  }
}
