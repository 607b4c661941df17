package boundwright.jump;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.quantity.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * The best shares lie within what the athlete has shown together. The athletes are invented by a process of their own: a jump has
 * one push to share out, so that a higher hop costs step and jump (elementary mechanics, g = 9.81 m/s2; the sizes are made up).
 */
class SharesShownTogetherTest {
  private static final long SEED = 1290;
  private static final double G = 9.81;
  private static final double[] HIGH = {1.25, 1.2, 1.2};
  private static final double[] LOW = {1.05, 1.05, .65};
  private static final double[] GROUND = {.75, .75, 1.0};

  /** An athlete who loses a0 + a1 x gain in a contact and shares one push out over three. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Jumper(double a0, double a1, double[] usual, double push, double noise) {
    static Jumper any(Random r) {
      double[] usual = {2.3 + .1 * r.nextGaussian(), 1.75 + .1 * r.nextGaussian(), 2.15 + .1 * r.nextGaussian()};
      return new Jumper(-1.2 + .2 * r.nextGaussian(), .6 + .05 * r.nextGaussian(), usual, .03, .1);
    }

    /** Vertical speeds of one jump: what the hop takes, step and jump have less, and a little of the day on all. */
    double[] up(Random r) {
      double hop = .2 * r.nextGaussian();
      double step = .12 * r.nextGaussian();
      double day = push * r.nextGaussian();
      return new double[] {usual[0] + hop + day, usual[1] - .5 * hop + step + day, usual[2] - .5 * hop - step + day};
    }

    MeasuredJump jump(Random r) {
      double[] up = up(r);
      List<MeasuredContact> contacts = new ArrayList<>();
      List<MeasuredJump.Body> bodies = new ArrayList<>();
      double speed = 9.3 + .1 * r.nextGaussian();
      double down = -.3;
      for (int i = 0; i < 3; i++) {
        double out = speed - a0 - a1 * (up[i] - down) + noise * r.nextGaussian();
        contacts.add(new MeasuredContact(Phase.IN_ORDER.get(i), speed, out, down, up[i]));
        bodies.add(new MeasuredJump.Body(HIGH[i], LOW[i], GROUND[i]));
        speed = out;
        down = -Math.sqrt(up[i] * up[i] + 2 * G * (HIGH[i] - LOW[i]));
      }
      return new MeasuredJump(contacts, bodies, .05);
    }

    /** Effective distance with these vertical speeds [m], nothing left to chance. */
    double total(double[] up) {
      double speed = 9.3;
      double down = -.3;
      double sum = 0;
      for (int i = 0; i < 3; i++) {
        speed -= a0 + a1 * (up[i] - down);
        double landing = Math.sqrt(up[i] * up[i] + 2 * G * (HIGH[i] - LOW[i]));
        sum += speed * (up[i] + landing) / G + GROUND[i];
        down = -landing;
      }
      return sum;
    }
  }

  private static double[] ups(MeasuredJump j) {
    return j.contacts().stream().mapToDouble(MeasuredContact::takeOffVy).toArray();
  }

  private static BestShares search(List<MeasuredJump> jumps) {
    JumpProfile profile = JumpProfile.of(jumps);
    ContactLine line = ContactLine.learn(JumpFixtures.contacts(jumps), ContactPrior.JUDGED, ContactForm.BY_GAIN);
    return BestShares.of(line, profile, 0, 2, new Random(1));
  }

  /** How far a point lies from the nearest mixture of points (Frank and Wolfe's steps, another way than the search's own). */
  private static double outside(List<Double> point, List<double[]> shown) {
    double[] x = shown.get(0).clone();
    for (int step = 0; step < 2000; step++) {
      double[] best = shown.get(0);
      double least = Double.POSITIVE_INFINITY;
      for (double[] s : shown) {
        double slope = 0;
        for (int i = 0; i < 3; i++) {
          slope += (x[i] - point.get(i)) * s[i];
        }
        if (slope < least) {
          least = slope;
          best = s;
        }
      }
      double up = 0;
      double below = 0;
      for (int i = 0; i < 3; i++) {
        up += (point.get(i) - x[i]) * (best[i] - x[i]);
        below += (best[i] - x[i]) * (best[i] - x[i]);
      }
      double share = below == 0 ? 0 : Math.max(0, Math.min(1, up / below));
      for (int i = 0; i < 3; i++) {
        x[i] += share * (best[i] - x[i]);
      }
    }
    return Math.sqrt(Math.pow(x[0] - point.get(0), 2) + Math.pow(x[1] - point.get(1), 2) + Math.pow(x[2] - point.get(2), 2));
  }

  @Test
  void theBestNeverAddsUpTheHighestOfDifferentJumps() {
    Random random = new Random(SEED);
    double told = 0;
    double truly = 0;
    int covered = 0;
    int n = 60;
    for (int a = 0; a < n; a++) {
      Jumper athlete = Jumper.any(random);
      List<MeasuredJump> jumps = new ArrayList<>();
      for (int j = 0; j < 12; j++) {
        jumps.add(athlete.jump(random));
      }
      BestShares s = search(jumps);
      List<double[]> shown = jumps.stream().map(SharesShownTogetherTest::ups).toList();
      if (a < 12) {
        assertThat(outside(s.best().takeOffVy(), shown)).as("seed " + SEED + ", athlete " + a + ": " + s.best().takeOffVy()).isLessThan(.03);
        s.reachable().stream().skip(a).limit(10).forEach(o -> assertThat(outside(o.takeOffVy(), shown)).as("seed " + SEED).isLessThan(.03));
      }
      Estimate longer = s.longer(s.best(), s.now());
      double[] up = s.best().takeOffVy().stream().mapToDouble(v -> v).toArray();
      double gain = athlete.total(up) - athlete.total(athlete.usual());
      told += longer.p50() / n;
      truly += gain / n;
      covered += gain >= longer.p05() && gain <= longer.p95() ? 1 : 0;
    }
    System.out.printf("best shares, seed %d: told %.3f m, truly %.3f m, in the 90 %% interval %d of %d%n", SEED, told, truly, covered, n);
    assertThat(covered / (double) n).as("seed " + SEED).isBetween(.85, .97);
  }
}
