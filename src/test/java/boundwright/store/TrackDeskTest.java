package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.track.Deed;
import boundwright.track.Logged;
import boundwright.track.Made;
import boundwright.track.Tap;
import boundwright.track.TrackDesk.Brought;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A rep with its identity, on the real database. All expectations are own rules. */
class TrackDeskTest {
  private static final CoachSettings SETTINGS = CoachSettings.DEFAULT;

  @TempDir Path dir;

  private Workbench open() {
    return Stores.open(dir, Fixtures.CLOCK);
  }

  private static Athlete ada(Workbench w) {
    return w.athletes().all().isEmpty()
        ? w.athletes().add(new Athlete(0, "Ada Fenn", Level.INTERMEDIATE, Foot.RIGHT, 4))
        : w.athletes().all().get(0);
  }

  private static Rep rep(Athlete a, @Nullable Double mark, Outcome outcome) {
    return new Rep(0, a.id(), Fixtures.TODAY, Sequence.parse("RRL x2"), 4, Surface.TRACK, List.of(), null, outcome, mark, false, List.of());
  }

  private static final Made NOW = new Made(Instant.parse("2026-05-12T15:00:00Z"), 0);

  private static Deed done(int n, Rep rep) {
    return new Deed.Done(token(n), rep, NOW);
  }

  private static String token(int n) {
    return String.format("%032x", n);
  }

  @Test
  void theSameTapIsLoggedOnceAlsoAfterARestart() {
    try (Workbench w = open()) {
      Athlete a = ada(w);
      Logged first = w.track().log(a, new Tap(token(1), rep(a, null, Outcome.IN), false), SETTINGS);
      assertThat(first.again()).isFalse();
      assertThat(first.repsOfDay()).isEqualTo(1);
      assertThat(w.track().log(a, new Tap(token(1), rep(a, null, Outcome.IN), false), SETTINGS).again()).isTrue();
    }
    try (Workbench w = open()) {
      Athlete a = ada(w);
      Logged again = w.track().log(a, new Tap(token(1), rep(a, null, Outcome.IN), false), SETTINGS);
      assertThat(again.again()).isTrue();
      assertThat(again.repsOfDay()).isEqualTo(1);
    }
  }

  @Test
  void aRepThatWasTakenBackDoesNotComeBackWithALateTap() {
    try (Workbench w = open()) {
      Athlete a = ada(w);
      long id = w.track().log(a, new Tap(token(7), rep(a, null, Outcome.IN), false), SETTINGS).rep().id();
      Logged undone = w.track().undo(a, id, SETTINGS);
      assertThat(undone.rep().id()).isEqualTo(id);
      assertThat(undone.repsOfDay()).isZero();
      List<Brought> late = w.track().bring(List.of(done(7, rep(a, null, Outcome.IN))));
      assertThat(late.get(0).again()).isTrue();
      assertThat(w.reps().inOrder(a.id())).isEmpty();
      assertThatThrownBy(() -> w.track().undo(a, id, SETTINGS)).isInstanceOf(RefusedException.class).hasMessageContaining("taken back");
    }
  }

  /** A phone without a connection sends all it has, and once more when it does not hear the answer. */
  @Test
  void thirtyTapsComeBackTwiceAndAreThereOnceAndTeachTheSameAsOneByOne() {
    List<Tap> taps = new ArrayList<>();
    try (Workbench w = open()) {
      Athlete a = ada(w);
      double mark = w.advisor().advise(a, Sequence.parse("RRL x2"), 4, Surface.TRACK, SETTINGS).markToSand_m();
      for (int i = 0; i < 30; i++) {
        taps.add(new Tap(token(100 + i), rep(a, mark, i % 5 == 0 ? Outcome.SHORT : Outcome.IN), false));
      }
      List<Deed> deeds = taps.stream().map(t -> (Deed) new Deed.Done(String.valueOf(t.token()), t.rep(), NOW)).toList();
      assertThat(w.track().bring(deeds)).hasSize(30).allSatisfy(b -> assertThat(b.again()).isFalse());
      assertThat(w.track().bring(deeds)).hasSize(30).allSatisfy(b -> assertThat(b.again()).isTrue());
      assertThat(w.reps().inOrder(a.id())).hasSize(30);
      double brought = w.advisor().advise(a, Sequence.parse("RRL x2"), 4, Surface.TRACK, SETTINGS).markToSand_m();
      try (Workbench other = Stores.open(dir.resolve("other"), Fixtures.CLOCK)) {
        Athlete b = ada(other);
        taps.forEach(t -> other.track().log(b, new Tap(t.token(), t.rep().of(b.id()), true), SETTINGS));
        assertThat(other.advisor().advise(b, Sequence.parse("RRL x2"), 4, Surface.TRACK, SETTINGS).markToSand_m()).isEqualTo(brought);
      }
    }
  }

  @Test
  void oneTapThatCannotBeKeptDoesNotHoldUpTheOthers() {
    try (Workbench w = open()) {
      Athlete a = ada(w);
      Rep ghost = rep(a, null, Outcome.IN).of(99);
      List<Brought> out =
          w.track().bring(List.of(done(1, ghost), done(2, rep(a, null, Outcome.IN))));
      assertThat(out.get(0).refused()).isNotNull();
      assertThat(out.get(1).refused()).isNull();
      assertThat(w.reps().inOrder(a.id())).hasSize(1);
    }
  }

  @Test
  void aTapeFarFromTheMarkIsAskedAboutOnce() {
    try (Workbench w = open()) {
      Athlete a = ada(w);
      double mark = w.advisor().advise(a, Sequence.parse("RRL x2"), 4, Surface.TRACK, SETTINGS).markToSand_m();
      Tap odd = new Tap(token(3), rep(a, mark + 6, Outcome.IN), false);
      assertThatThrownBy(() -> w.track().log(a, odd, SETTINGS)).isInstanceOf(RefusedException.class).hasMessageContaining("really");
      assertThat(w.reps().inOrder(a.id())).isEmpty();
      assertThat(w.track().log(a, odd, SETTINGS).again()).isFalse();
      assertThat(w.reps().inOrder(a.id())).hasSize(1);
    }
  }

  @Test
  void aTokenOfAnotherFormIsRefused() {
    try (Workbench w = open()) {
      Athlete a = ada(w);
      assertThatThrownBy(() -> new Tap("x", rep(a, null, Outcome.IN), false)).isInstanceOf(RefusedException.class);
    }
  }
}
