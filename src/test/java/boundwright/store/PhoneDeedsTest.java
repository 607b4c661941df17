package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.track.Deed;
import boundwright.track.Made;
import boundwright.track.TrackDesk.Brought;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What phones bring back, in every order, on the real database. All expectations are own rules. */
class PhoneDeedsTest {
  private static final Made NOW = new Made(Instant.parse("2026-05-12T15:00:00Z"), 0);

  @TempDir Path dir;
  private Workbench w;
  private Athlete ada;
  private Athlete bo;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    ada = w.athletes().add(new Athlete(0, "Ada Fenn", Level.INTERMEDIATE, Foot.RIGHT, 4));
    bo = w.athletes().add(new Athlete(0, "Bo Lark", Level.INTERMEDIATE, Foot.LEFT, 4));
  }

  @AfterEach
  void close() {
    w.close();
  }

  private static String token(int n) {
    return String.format("%032x", n);
  }

  private static Rep rep(Athlete a, double mark, Outcome outcome) {
    return new Rep(0, a.id(), Fixtures.TODAY, Sequence.parse("RRL x2"), 4, Surface.TRACK, List.of(), null, outcome, mark, false, List.of());
  }

  private Deed done(int n, Athlete a) {
    return new Deed.Done(token(n), rep(a, 9.5 + n / 100.0, n % 3 == 0 ? Outcome.SHORT : Outcome.IN), NOW);
  }

  private Deed undo(int n, Athlete a, int of) {
    return new Deed.TakenBack(token(n), a.id(), token(of), NOW);
  }

  private Deed hand(int n, Athlete a, int of, Athlete to) {
    return new Deed.HandedOver(token(n), a.id(), token(of), to.id(), NOW);
  }

  private List<Brought> bring(Deed... deeds) {
    return w.track().bring(List.of(deeds));
  }

  private List<Rep> reps(Athlete a) {
    return w.reps().inOrder(a.id());
  }

  private double mark(Athlete a) {
    return w.advisor().advise(a, Sequence.parse("RRL x2"), 4, Surface.TRACK, w.settings().settings()).markToSand_m();
  }

  /** What was learned is what learning all reps again gives. */
  private void learnedRight() {
    for (Athlete a : w.athletes().all()) {
      double kept = mark(a);
      w.logbook().relearn(a.id());
      assertThat(mark(a)).as(a.name()).isEqualTo(kept);
    }
  }

  @Test
  void takingBackBeforeTheRepComesKeepsItAway() {
    assertThat(bring(undo(2, ada, 1)).get(0).refused()).isNull();
    assertThat(bring(done(1, ada)).get(0).refused()).isNull();
    assertThat(reps(ada)).isEmpty();
    assertThat(bring(done(1, ada)).get(0).again()).isTrue();
    assertThat(reps(ada)).isEmpty();
  }

  @Test
  void whatLiesLongerBackThanTheSessionIsNotChangedByAPhone() {
    Rep old = w.logbook().log(new Rep(0, ada.id(), Fixtures.TODAY.minusDays(2), Sequence.parse("RRL x2"), 4, Surface.TRACK, List.of(), null, Outcome.IN, 9.5, false, List.of()));
    String number = String.valueOf(old.id());
    List<Brought> told =
        bring(
            new Deed.TakenBack(token(1), ada.id(), number, NOW),
            new Deed.HandedOver(token(2), ada.id(), number, bo.id(), NOW),
            new Deed.LookedAt(token(3), ada.id(), number, true, List.of(), NOW));
    assertThat(told).allSatisfy(b -> assertThat(b.refused()).contains("2026-05-10"));
    assertThat(reps(ada)).containsExactly(old);
  }

  @Test
  void takingBackTwiceByTwoPhonesIsTakingBackOnce() {
    bring(done(1, ada), done(2, ada), undo(3, ada, 1), undo(4, ada, 1));
    assertThat(reps(ada)).hasSize(1);
    learnedRight();
  }

  @Test
  void handingOverTakesLoadAndLearningAlongAndKeepsThePlaceInTheDay() {
    bring(done(1, ada), done(2, bo), done(3, ada), done(4, bo));
    bring(hand(5, ada, 3, bo));
    assertThat(reps(ada)).extracting(Rep::markToSand_m).containsExactly(9.51);
    assertThat(reps(bo)).extracting(Rep::markToSand_m).containsExactly(9.52, 9.53, 9.54);
    learnedRight();
    bring(undo(6, ada, 3));
    assertThat(reps(bo)).extracting(Rep::markToSand_m).containsExactly(9.52, 9.54);
    learnedRight();
  }

  @Test
  void handingOverBeforeTheRepComesWaitsForIt() {
    bring(hand(5, ada, 3, bo));
    bring(done(3, ada));
    assertThat(reps(ada)).isEmpty();
    assertThat(reps(bo)).hasSize(1);
    learnedRight();
  }

  @Test
  void handingOverWhatWasTakenBackDoesNothingAndHandingTwiceTheLaterHolds() {
    Athlete cy = w.athletes().add(new Athlete(0, "Cy Marrow", Level.INTERMEDIATE, Foot.LEFT, 4));
    bring(done(1, ada), undo(2, ada, 1), hand(3, ada, 1, bo));
    assertThat(reps(ada)).isEmpty();
    assertThat(reps(bo)).isEmpty();
    bring(done(4, ada), hand(5, ada, 4, bo), hand(6, ada, 4, cy));
    assertThat(reps(bo)).isEmpty();
    assertThat(reps(cy)).hasSize(1);
    learnedRight();
  }

  @Test
  void aLookSaidAfterwardsIsKeptAndChangesNoMark() {
    bring(done(1, ada));
    double before = mark(ada);
    bring(new Deed.LookedAt(token(2), ada.id(), token(1), true, List.of("knee-up@3"), NOW));
    assertThat(reps(ada).get(0).judged()).isTrue();
    assertThat(reps(ada).get(0).faults()).containsExactly("knee-up@3");
    assertThat(mark(ada)).isEqualTo(before);
    bring(new Deed.LookedAt(token(3), ada.id(), token(1), false, List.of(), NOW));
    assertThat(reps(ada).get(0).judged()).isFalse();
  }

  @Test
  void aLookThatDoesNotFitTheRepIsRefusedAndNeverTheRep() {
    bring(new Deed.LookedAt(token(2), ada.id(), token(1), true, List.of("knee-up@9"), NOW));
    assertThat(bring(done(1, ada)).get(0).refused()).isNull();
    assertThat(reps(ada)).hasSize(1);
    assertThat(bring(new Deed.LookedAt(token(3), ada.id(), token(1), true, List.of("knee-up@9"), NOW)).get(0).refused()).contains("contacts");
  }

  @Test
  void theDayOfARepIsThatOfTheCorrectedClockAndNeverTomorrow() {
    Rep r = rep(ada, 9.5, Outcome.IN);
    long hour = Duration.ofHours(1).toMillis();
    long day = Duration.ofDays(1).toMillis();
    Made slow = new Made(Fixtures.CLOCK.instant().minusMillis(day), day);
    Made fast = new Made(Fixtures.CLOCK.instant().plusMillis(3 * day), -3 * day);
    Made wrong = new Made(Fixtures.CLOCK.instant().plusMillis(2 * day), -hour);
    Made yesterday = new Made(Fixtures.CLOCK.instant().minusMillis(day), 0);
    bring(
        new Deed.Done(token(1), r, slow), new Deed.Done(token(2), r, fast), new Deed.Done(token(3), r, wrong), new Deed.Done(token(4), r, yesterday));
    LocalDate today = Fixtures.TODAY;
    assertThat(reps(ada)).extracting(Rep::date).containsExactly(today.minusDays(1), today, today, today);
    learnedRight();
  }

  @Test
  void nobodyKnownIsRefusedInWordsAndTheOthersAreKept() {
    Deed ghost = new Deed.Done(token(1), rep(ada, 9.5, Outcome.IN).of(99), NOW);
    Deed toGhost = new Deed.HandedOver(token(3), ada.id(), token(2), 99, NOW);
    List<Brought> out = bring(ghost, done(2, ada), toGhost, done(4, bo));
    assertThat(out.get(0).refused()).contains("not in the store");
    assertThat(out.get(2).refused()).contains("not in the store");
    assertThat(reps(ada)).hasSize(1);
    assertThat(reps(bo)).hasSize(1);
    learnedRight();
  }

  /** The same deeds, once in one batch and once each alone, in the same order: the same reps, and marks to the last bit. */
  @Test
  void aBatchTeachesTheSameAsOneByOne() {
    long seed = 20260605;
    Random random = new Random(seed);
    List<Deed> deeds = new ArrayList<>();
    for (int i = 1; i <= 60; i++) {
      Athlete a = random.nextBoolean() ? ada : bo;
      int of = 1 + random.nextInt(i);
      deeds.add(
          switch (random.nextInt(6)) {
            case 0 -> undo(1000 + i, a, of);
            case 1 -> hand(1000 + i, a, of, a.equals(ada) ? bo : ada);
            default -> new Deed.Done(token(i), rep(a, 9 + random.nextDouble(), random.nextInt(3) == 0 ? Outcome.SHORT : Outcome.IN), random.nextInt(5) == 0 ? new Made(NOW.at().minus(Duration.ofDays(2)), 0) : NOW);
          });
    }
    w.track().bring(deeds);
    learnedRight();
    try (Workbench other = Stores.open(dir.resolve("other"), Fixtures.CLOCK)) {
      other.athletes().add(ada.withId(0));
      other.athletes().add(bo.withId(0));
      deeds.forEach(d -> other.track().bring(List.of(d)));
      for (Athlete a : List.of(ada, bo)) {
        assertThat(other.reps().inOrder(a.id())).as("seed " + seed).hasSameSizeAs(reps(a));
        assertThat(other.advisor().advise(a, Sequence.parse("RRL x2"), 4, Surface.TRACK, w.settings().settings()).markToSand_m())
            .as("seed " + seed)
            .isEqualTo(mark(a));
      }
      List<Deed> again = new ArrayList<>(deeds);
      Collections.shuffle(again, random);
      assertThat(other.track().bring(again)).allSatisfy(b -> assertThat(b.again()).as("seed " + seed).isTrue());
    }
  }
}
