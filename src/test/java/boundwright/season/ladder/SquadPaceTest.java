package boundwright.season.ladder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateRules;
import boundwright.season.ladder.SquadStay.Beginning;
import boundwright.season.ladder.SquadStay.End;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.hipparchus.special.Gamma;
import org.junit.jupiter.api.Test;

/** What is learned of a squad's pace, against closed forms and plain integration (worked), and its laws (seeded). */
class SquadPaceTest {
  private static final GateRules.Stay STAY = GateRules.DEFAULT.stay();
  private static final LocalDate MONDAY = LocalDate.of(2026, 1, 5);

  /** A stay of so many weekly sessions. */
  private static SquadStay stay(long athlete, int steps, int sessions, End end) {
    List<LocalDate> days = IntStream.range(0, sessions).mapToObj(i -> MONDAY.plusWeeks(i)).toList();
    return new SquadStay(athlete, DrillFamily.ALTERNATE, steps, days, end == End.STILL_THERE ? null : days.get(sessions - 1), Beginning.NEW, end);
  }

  @Test
  void ofShapeOneTheBestFitIsTheShareOfSessionsThatEndedAStay() {
    // sessions until ready are geometric then, and some are not over: ended / all sessions (maximum likelihood, closed form)
    int[] ended = {4, 7, 9, 3, 12, 6};
    int[] running = {5, 10, 2};
    List<PaceFit.Datum> data = new ArrayList<>();
    int sessions = 0;
    for (int n : ended) {
      data.add(new PaceFit.Datum(new int[] {0}, new SessionsNeeded(n - 1, n)));
      sessions += n;
    }
    for (int n : running) {
      data.add(new PaceFit.Datum(new int[] {0}, new SessionsNeeded(n, Double.POSITIVE_INFINITY)));
      sessions += n;
    }
    PaceFit fit = new PaceFit(data, new double[] {1e6}, Math.log(12), 1);
    double perSession = 1 - Math.exp(-1 / Math.exp(fit.of(new int[] {0})[0]));
    assertThat(perSession).isCloseTo(ended.length / (double) sessions, within(1e-6));
  }

  @Test
  void aStayThatIsNotOverSaysLongerAndOneCountedAsOverWouldSayShorter() {
    List<SquadStay> done = List.of(stay(1, 2, 10, End.READY), stay(2, 2, 11, End.READY));
    double without = log(done);
    List<SquadStay> running = new ArrayList<>(done);
    running.add(stay(3, 2, 25, End.STILL_THERE));
    assertThat(log(running)).isGreaterThan(without);
    List<SquadStay> soon = new ArrayList<>(done);
    soon.add(stay(3, 2, 1, End.STILL_THERE));
    assertThat(log(soon)).as("one session says next to nothing").isCloseTo(without, within(0.01));
  }

  private static double log(List<SquadStay> stays) {
    return SquadPace.of(stays, STAY, PacePrior.USUAL).of(99, DrillFamily.ALTERNATE, 2).logMean();
  }

  @Test
  void theAnswerIsThePlainIntegralOverPaceAndShape() {
    // one athlete, one approach: all effects add up to one number, which is integrated on a fine grid; the program approximates it
    int[] ended = {9, 14, 11};
    PacePrior prior = PacePrior.USUAL;
    double[] shapes = {0.4, 0.63, 1, 1.6, 2.5};
    double[] spreads = {0.4, 0.8, 1.5};
    double[] spreadWeights = {0.3, 0.45, 0.25};
    double all = 0;
    double mean = 0;
    double square = 0;
    for (double s : shapes) {
      double k = s * prior.shape();
      for (int t = 0; t < spreads.length; t++) {
        double sd = Math.sqrt(square(prior.meanSd()) + square(prior.stepsSd()) + square(prior.familySd()) + square(spreads[t] * prior.athletesSd()));
        double w = spreadWeights[t] * Math.exp(-square(Math.log(s) / 0.5) / 2) / sd;
        for (double eta = 0.5; eta < 5; eta += 0.002) {
          double log = -square((eta - Math.log(prior.mean())) / sd) / 2;
          for (int n : ended) {
            log += Math.log(GammaStay.over(n - 1, k, eta) - GammaStay.over(n, k, eta));
          }
          log += Math.log(GammaStay.over(20, k, eta));
          double p = w * Math.exp(log);
          double expected = eta + Gamma.digamma(k) - Math.log(k);
          all += p;
          mean += p * expected;
          square += p * (square(expected) + Gamma.trigamma(k));
        }
      }
    }
    mean /= all;
    double sd = Math.sqrt(square / all - mean * mean);
    List<SquadStay> stays = new ArrayList<>();
    for (int n : ended) {
      stays.add(stay(1, 2, n, End.READY));
    }
    stays.add(stay(1, 2, 20, End.LEFT));
    Pace pace = SquadPace.of(stays, STAY, prior).of(1, DrillFamily.ALTERNATE, 2);
    double got = pace.logScale() + Gamma.digamma(pace.shape()) - Math.log(pace.shape());
    assertThat(got).as("mean of the logarithm").isCloseTo(mean, within(0.02));
    assertThat(Math.sqrt(Gamma.trigamma(pace.shape()))).as("its standard deviation").isCloseTo(sd, within(0.03));
  }

  private static double square(double x) {
    return x * x;
  }

  @Test
  void aRunningStayIsNotCountedTwice() {
    // the pace of the one who is there is that of a fit without it; the chance then asks for the sessions spent
    List<SquadStay> others = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      others.add(stay(1 + i % 3, 2 * (i / 3), 8 + i, End.READY));
    }
    for (int spent : new int[] {3, 10, 25}) {
      List<SquadStay> with = new ArrayList<>(others);
      with.add(stay(2, 6, spent, End.STILL_THERE));
      Pace got = SquadPace.of(with, STAY, PacePrior.USUAL).of(2, DrillFamily.ALTERNATE, 6);
      Pace wanted = SquadPace.of(others, STAY, PacePrior.USUAL).of(2, DrillFamily.ALTERNATE, 6);
      assertThat(got.logScale()).as("spent %s", spent).isCloseTo(wanted.logScale(), within(0.06));
      assertThat(got.shape()).as("spent %s", spent).isCloseTo(wanted.shape(), within(0.15 * wanted.shape()));
    }
  }

  @Test
  void moreTimeSpentAndMoreTimeToComeNeverLowerTheChance() {
    long seed = 7;
    Random r = new Random(seed);
    for (int i = 0; i < 500; i++) {
      Pace p = Pace.of(Math.log(2 + 40 * r.nextDouble()), 1.5 * r.nextDouble(), 1 + 14 * r.nextDouble(), 0, 0);
      double spent = 60 * r.nextDouble();
      double ahead = 20 * r.nextDouble();
      double more = 10 * r.nextDouble();
      double chance = p.chance(spent, spent + ahead);
      assertThat(p.chance(spent + more, spent + more + ahead)).as("seed %s case %s: as far ahead, more spent", seed, i).isGreaterThanOrEqualTo(chance - 1e-9);
      assertThat(p.chance(spent, spent + ahead + more)).as("seed %s case %s: farther ahead", seed, i).isGreaterThanOrEqualTo(chance - 1e-12);
      assertThat(p.sessions(spent + more, 0.5)).as("seed %s case %s: the median in all", seed, i).isGreaterThanOrEqualTo(p.sessions(spent, 0.5) - 1e-6);
    }
  }

  @Test
  void nothingKnownIsThePriorAndDrawsFollowThePace() {
    Pace p = SquadPace.of(List.of(), STAY, PacePrior.USUAL).of(1, DrillFamily.COMBINATION, 4);
    assertThat(Math.exp(p.logMean())).as("the prior's mean").isCloseTo(12, within(0.5));
    assertThat(p.stays()).isZero();
    Random r = new Random(3);
    double[] drawn = IntStream.range(0, 4000).mapToDouble(i -> p.drawn(0, r.nextDouble(), r.nextDouble())).sorted().toArray();
    for (double share : new double[] {0.1, 0.5, 0.9}) {
      assertThat(drawn[(int) (share * drawn.length)]).as("share %s, seed 3", share).isCloseTo(p.sessions(0, share), within(0.1 * p.sessions(0, share)));
    }
    assertThat(p.drawn(9, 0.5, 0.3)).isGreaterThan(9);
    assertThat(p.drawn(0, 0.8, 0.5)).as("who learns slowly needs more").isGreaterThan(p.drawn(0, 0.2, 0.5));
  }

  @Test
  void whoWasSlowBeforeIsExpectedToBeSlowAgain() {
    List<SquadStay> stays = new ArrayList<>();
    for (int a = 1; a <= 6; a++) {
      for (int s = 0; s < 6; s += 2) {
        stays.add(stay(a, s, a <= 3 ? 7 : 24, End.READY));
      }
    }
    SquadPace pace = SquadPace.of(stays, STAY, PacePrior.USUAL);
    double quick = pace.of(1, DrillFamily.ALTERNATE, 6).sessions(0, 0.5);
    double slow = pace.of(5, DrillFamily.ALTERNATE, 6).sessions(0, 0.5);
    double stranger = pace.of(77, DrillFamily.ALTERNATE, 6).sessions(0, 0.5);
    assertThat(quick).isLessThan(0.6 * slow);
    assertThat(stranger).isBetween(quick, slow);
    assertThat(pace.of(5, DrillFamily.ALTERNATE, 6).ownStays()).isEqualTo(3);
    assertThat(pace.of(77, DrillFamily.ALTERNATE, 6).stays()).isEqualTo(18);
  }

  @Test
  void howMuchAthletesDifferIsLearned() {
    double before = SquadPace.of(List.of(), STAY, PacePrior.USUAL).of(99, DrillFamily.ALTERNATE, 2).lastingSd();
    assertThat(strangersSd(12, 12)).as("alike").isLessThan(0.25).isLessThan(before);
    // the logarithms of 7 and 22 lie 1.15 apart: SD .57
    assertThat(strangersSd(7, 22)).as("quick and slow").isBetween(0.45, 0.65);
  }

  /** Eight athletes with three stays each, half of them of so many sessions: the lasting part of another. */
  private static double strangersSd(int quick, int slow) {
    List<SquadStay> stays = new ArrayList<>();
    for (int a = 1; a <= 8; a++) {
      for (int steps = 0; steps < 6; steps += 2) {
        stays.add(stay(a, steps, (a % 2 == 0 ? quick : slow) + (steps == 2 ? 2 : 0), End.READY));
      }
    }
    return SquadPace.of(stays, STAY, PacePrior.USUAL).of(99, DrillFamily.ALTERNATE, 2).lastingSd();
  }
}
