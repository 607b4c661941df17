package boundwright.clip.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Taps against reps of a film whose clock nobody set. Made-up sessions; every bound is own output with room. */
class TapMatchTest {
  /** A session: landings by the film's clock, taps by another, and which tap is which rep. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Session(double[] landings, List<@Nullable Long> who, double[] taps, List<Long> tapped, int[] truth) {}

  /** Reps every half to two minutes; one in six not tapped, one in eight tapped though the film does not show it. */
  private static Session session(Random random, int reps, double offset) {
    List<Double> landings = new ArrayList<>();
    List<Double> taps = new ArrayList<>();
    List<Long> tapped = new ArrayList<>();
    List<Integer> truth = new ArrayList<>();
    double t = 20;
    for (int i = 0; i < reps; i++) {
      t += 30 + 90 * random.nextDouble();
      long who = i % 4;
      boolean seen = random.nextInt(8) != 0;
      boolean told = random.nextInt(6) != 0;
      if (seen) {
        landings.add(t);
        truth.add(told ? taps.size() : -1);
      }
      if (told) {
        taps.add(t + offset + 4 + Math.abs(3 * random.nextGaussian()));
        tapped.add(who);
      }
    }
    return new Session(
        landings.stream().mapToDouble(d -> d).toArray(), new ArrayList<>(Collections.nCopies(landings.size(), null)),
        taps.stream().mapToDouble(d -> d).toArray(), tapped, truth.stream().mapToInt(i -> i).toArray());
  }

  @Test
  void oneOffsetMatchesTheWholeFilm() {
    int right = 0;
    int wrong = 0;
    int missed = 0;
    for (int seed = 0; seed < 60; seed++) {
      Session s = session(new Random(seed), 18, 1000 * new Random(seed).nextGaussian());
      TapMatch m = TapMatch.of(s.landings, s.who, s.taps, s.tapped);
      for (int i = 0; i < s.truth.length; i++) {
        if (m.taps()[i] >= 0 && m.taps()[i] == s.truth[i]) {
          right++;
        } else if (m.taps()[i] >= 0) {
          wrong++;
        } else if (s.truth[i] >= 0) {
          missed++;
        }
      }
    }
    System.out.printf("taps: %d right, %d wrong, %d missed%n", right, wrong, missed);
    assertThat(wrong).as("of %d", right + wrong).isLessThanOrEqualTo((right + wrong) / 50);
    assertThat(missed).as("of %d", right + missed).isLessThanOrEqualTo((right + missed) / 10);
  }

  @Test
  void theOrderIsKeptAndNothingIsGivenTwice() {
    for (int seed = 100; seed < 140; seed++) {
      Session s = session(new Random(seed), 12, 300);
      int before = -1;
      for (int tap : TapMatch.of(s.landings, s.who, s.taps, s.tapped).taps()) {
        if (tap >= 0) {
          assertThat(tap).as("seed %d", seed).isGreaterThan(before);
          before = tap;
        }
      }
    }
  }

  @Test
  void tapsOfAnotherSessionAreNotProposed() {
    int proposed = 0;
    int reps = 0;
    for (int seed = 200; seed < 230; seed++) {
      Session film = session(new Random(seed), 14, 0);
      Session other = session(new Random(seed + 5000), 14, 0);
      TapMatch m = TapMatch.of(film.landings, film.who, other.taps, other.tapped);
      for (int i = 0; i < film.landings.length; i++) {
        proposed += m.taps()[i] >= 0 && m.sure()[i] > 0.7 ? 1 : 0;
        reps++;
      }
    }
    System.out.printf("taps of another session: %d of %d proposed as sure%n", proposed, reps);
    assertThat(proposed).isLessThanOrEqualTo(reps / 10);
  }

  @Test
  void aRepThatTheCoachNamedTakesNoTapOfSomebodyElse() {
    Session s = session(new Random(7), 12, 40);
    TapMatch free = TapMatch.of(s.landings, s.who, s.taps, s.tapped);
    int at = 0;
    while (free.taps()[at] < 0) {
      at++;
    }
    s.who.set(at, 99L);
    assertThat(TapMatch.of(s.landings, s.who, s.taps, s.tapped).taps()[at]).isEqualTo(-1);
  }

  @Test
  void twoRepsAreTooFewToTell() {
    TapMatch m = TapMatch.of(new double[] {10, 60}, new ArrayList<>(Collections.nCopies(2, null)), new double[] {110, 160}, List.of(1L, 2L));
    assertThat(m.offset()).isEmpty();
    assertThat(m.taps()).containsOnly(-1);
  }
}
