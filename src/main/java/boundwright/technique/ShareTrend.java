package boundwright.technique;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import java.util.List;
import org.hipparchus.special.Erf;

/**
 * Does a share rise or fall from session to session? The test for a linear trend in shares (Cochran 1954, Armitage 1955;
 * memory), with days as scores. Reps of one session are taken as independent, which they hardly are: a small chance is a hint
 * to look, no proof.
 *
 * @param direction what can be said
 * @param z the test's standard normal figure; above 0 the share rises; 0 when nothing can be said
 * @param chance two-sided chance of a figure as large with no trend at all, 0 to 1
 */
public record ShareTrend(Direction direction, double z, double chance) {
  /** Where the test comes from. */
  public static final Source SOURCE = Sources.SHARE_TREND;
  /** Fewest sessions (judgement). */
  public static final int MIN_SESSIONS = 3;
  /** Fewest reps (judgement). */
  public static final int MIN_REPS = 12;
  /** The two-sided chance below which a trend is called one (convention). */
  public static final double CALLED = 0.05;

  /** What can be said of a share over time. */
  public enum Direction {
    /** It becomes rarer. */
    FALLING("becoming rarer"),
    /** It becomes more frequent. */
    RISING("becoming more frequent"),
    /** Neither can be told. */
    NONE("no clear change"),
    /** Fewer than three sessions or twelve reps. */
    TOO_FEW("too few reps to tell");

    private final String label;

    Direction(String label) {
      this.label = label;
    }

    /** In words. */
    public String label() {
      return label;
    }
  }

  /**
   * One session.
   *
   * @param day any running day number
   * @param reps judged reps, at least 1
   * @param seen how many of them had it
   */
  public record Session(long day, int reps, int seen) {}

  /** The trend over these sessions, in any order. */
  public static ShareTrend of(List<Session> sessions) {
    double n = 0;
    double seen = 0;
    double meanDay = 0;
    for (Session s : sessions) {
      n += s.reps();
      seen += s.seen();
      meanDay += (double) s.reps() * s.day();
    }
    if (sessions.size() < MIN_SESSIONS || n < MIN_REPS) {
      return new ShareTrend(Direction.TOO_FEW, 0, 1);
    }
    meanDay /= n;
    double share = seen / n;
    double covariance = 0;
    double variance = 0;
    for (Session s : sessions) {
      double d = s.day() - meanDay;
      covariance += d * (s.seen() - s.reps() * share);
      variance += s.reps() * d * d;
    }
    if (share == 0 || share == 1 || variance == 0) {
      return new ShareTrend(Direction.NONE, 0, 1);
    }
    double z = covariance / Math.sqrt(share * (1 - share) * variance);
    double chance = Erf.erfc(Math.abs(z) / Math.sqrt(2));
    return new ShareTrend(chance >= CALLED ? Direction.NONE : z > 0 ? Direction.RISING : Direction.FALLING, z, chance);
  }
}
