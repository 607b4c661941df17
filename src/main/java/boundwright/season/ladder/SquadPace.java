package boundwright.season.ladder;

import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateRules;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.special.Gamma;

/**
 * What is known of how fast this squad gets ready. Sessions needed are gamma distributed; the logarithm of their mean is the squad's
 * plus an effect of the approach, the family and the athlete (see {@link PacePrior}); stays that are not over, and those that the coach
 * ended, count as <em>more than so many sessions</em>; stays that passed in the first session after the least stay count as <em>at most
 * so many</em>. The shape and how much athletes differ are weighed on a grid by the chance that they give the stays (Laplace, MacKay
 * 1992, Neural Computation 4:415-447; memory), so with few stays the prior speaks and with many the squad.
 *
 * <p>Limits: attendance enters by sessions; an approach is not easier because another family masters it (the gate knows that of the
 * least stay only); the pace does not change over a season; stays that began before the log are passed over. Safe to share.
 */
public final class SquadPace {
  /** Of the prior's shape, and of its spread of athletes. */
  private static final double[] SHAPES = {0.4, 0.63, 1, 1.6, 2.5};
  private static final double[] ATHLETES = {0.4, 0.8, 1.5};
  private static final double LOG_SHAPE_SD = 0.5;
  private static final double[] ATHLETE_WEIGHTS = {0.3, 0.45, 0.25};
  private static final double LEAST_WEIGHT = 1e-3;
  private static final int APPROACHES = 7;
  private static final int FIRST_FAMILY = 1 + APPROACHES;
  private static final int FIRST_ATHLETE = FIRST_FAMILY + DrillFamily.values().length;

  private final Map<Long, Integer> athletes = new HashMap<>();
  private final Map<Long, Integer> own = new HashMap<>();
  private final Map<Place, PaceFit.Datum> running = new HashMap<>();
  private final List<PaceFit> fits = new ArrayList<>();
  private final List<Double> spreads = new ArrayList<>();
  private final double[] weights;
  private final int stays;

  private record Place(long athlete, DrillFamily family, int steps) {}

  private SquadPace(List<SquadStay> all, GateRules.Stay rules, PacePrior prior) {
    List<PaceFit.Datum> data = new ArrayList<>();
    for (SquadStay s : all) {
      if (s.tells()) {
        int athlete = athletes.computeIfAbsent(s.athleteId(), id -> FIRST_ATHLETE + athletes.size());
        PaceFit.Datum d = new PaceFit.Datum(new int[] {0, approach(s.steps()), family(s.family()), athlete}, s.needed(rules));
        data.add(d);
        own.merge(s.athleteId(), 1, Integer::sum);
        if (s.end() == SquadStay.End.STILL_THERE) {
          running.put(new Place(s.athleteId(), s.family(), s.steps()), d);
        }
      }
    }
    stays = data.size();
    List<Double> logs = new ArrayList<>();
    for (double shape : SHAPES) {
      double k = shape * prior.shape();
      double z = Math.log(shape) / LOG_SHAPE_SD;
      for (int t = 0; t < ATHLETES.length; t++) {
        double sd = ATHLETES[t] * prior.athletesSd();
        PaceFit fit = new PaceFit(data, variances(prior, sd), Math.log(prior.mean()), k);
        fits.add(fit);
        spreads.add(sd);
        logs.add(fit.evidence() - z * z / 2 + Math.log(ATHLETE_WEIGHTS[t]));
      }
    }
    double top = logs.stream().mapToDouble(Double::doubleValue).max().orElse(0);
    weights = logs.stream().mapToDouble(l -> Math.exp(l - top)).map(w -> w < LEAST_WEIGHT ? 0 : w).toArray();
    double sum = Arrays.stream(weights).sum();
    for (int i = 0; i < weights.length; i++) {
      weights[i] /= sum;
    }
  }

  /** Learns from stays; none are enough. */
  public static SquadPace of(List<SquadStay> stays, GateRules.Stay rules, PacePrior prior) {
    return new SquadPace(stays, rules, prior);
  }

  private double[] variances(PacePrior prior, double athletesSd) {
    double[] v = new double[FIRST_ATHLETE + athletes.size()];
    Arrays.fill(v, athletesSd * athletesSd);
    v[0] = prior.meanSd() * prior.meanSd();
    Arrays.fill(v, 1, FIRST_FAMILY, prior.stepsSd() * prior.stepsSd());
    Arrays.fill(v, FIRST_FAMILY, FIRST_ATHLETE, prior.familySd() * prior.familySd());
    return v;
  }

  private static int approach(int steps) {
    return 1 + Math.min(steps / 2, APPROACHES - 1);
  }

  private static int family(DrillFamily family) {
    return FIRST_FAMILY
        + switch (family) {
          case ALTERNATE -> 0;
          case SINGLE_LEG -> 1;
          case COMBINATION -> 2;
        };
  }

  /** Stays that were learned from, those still running among them. */
  public int stays() {
    return stays;
  }

  /**
   * The pace of an athlete at an approach, known or not. A stay that is running there is not counted in it, so that {@link Pace#chance}
   * can be asked with the sessions spent.
   */
  public Pace of(long athleteId, DrillFamily family, int steps) {
    Integer athlete = athletes.get(athleteId);
    PaceFit.Datum here = running.get(new Place(athleteId, family, steps));
    int[] effects =
        athlete == null
            ? new int[] {0, approach(steps), family(family)}
            : new int[] {0, approach(steps), family(family), athlete};
    double all = 0;
    double mean = 0;
    double square = 0;
    double within = 0;
    double stay = 0;
    for (int i = 0; i < weights.length; i++) {
      if (weights[i] > 0) {
        PaceFit fit = fits.get(i);
        double k = fit.shape();
        double[] mv = here == null ? fit.of(effects) : fit.without(here);
        double variance = mv[1] + (athlete == null ? spreads.get(i) * spreads.get(i) : 0);
        double w = here == null ? weights[i] : weights[i] / Math.max(LEAST_WEIGHT, Pace.of(mv[0], variance, k, 0, 0).over(here.needed().over()));
        double log = mv[0] + Gamma.digamma(k) - Math.log(k);
        all += w;
        mean += w * log;
        square += w * log * log;
        within += w * variance;
        stay += w * GammaStay.logVariance(k);
      }
    }
    mean /= all;
    square /= all;
    within /= all;
    stay /= all;
    double k = Pace.shapeOf(stay);
    double lasting = within + Math.max(0, square - mean * mean);
    return Pace.of(mean - Gamma.digamma(k) + Math.log(k), lasting, k, stays, own.getOrDefault(athleteId, 0));
  }
}
