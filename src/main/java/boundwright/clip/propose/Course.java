package boundwright.clip.propose;

import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * One explanation of the whole clip: flight, left, right, both feet while one hands over to the other (walking), both at a
 * standing start, both at the landing. The stretches and their lengths are sought all at once (dynamic programming over
 * segments), so a stance is not split, nothing comes down without having left, and both feet stand together only where they can.
 */
public final class Course {
  private static final int FLIGHT = 0;
  private static final int LEFT = 1;
  private static final int RIGHT = 2;
  private static final int LEFT_TO_RIGHT = 3;
  private static final int RIGHT_TO_LEFT = 4;
  private static final int START = 5;
  private static final int LANDING = 6;
  private static final int STATES = 7;

  /** What it costs to go from one to the other, in log-odds; NaN where it cannot be (judgement). */
  private static final double NO = Double.NaN;
  private static final double[][] CHANGE = {
    // to flight, left, right, left to right, right to left, start, landing
    {NO, 1, 1, NO, NO, NO, 2},
    {1, NO, 3, 2, NO, NO, NO},
    {1, 3, NO, NO, 2, NO, NO},
    {NO, NO, 1, NO, NO, NO, NO},
    {NO, 1, NO, NO, NO, NO, NO},
    {2, 1, 1, NO, NO, NO, NO},
    {NO, 4, 4, NO, NO, NO, NO},
  };

  /**
   * Usual length in steps, how much it differs as a log, and the least, where both ends are in the clip (judgement; contact and
   * flight of runs and bounds are a third to two thirds of a step each, both feet of a walk a tenth to a third).
   */
  private static final double[][] LENGTH = {
    {0.45, 0.8, 0.03}, {0.5, 0.5, 0.12}, {0.5, 0.5, 0.12}, {0.2, 0.6, 0.04}, {0.2, 0.6, 0.04}, {1, 2, 0.1}, {1, 2, 0.1}
  };
  /** Share of the cost of a change for the last segment. */
  private static final double CUT = 0.4;
  /** No single segment but standing is longer than so many steps. */
  private static final double LONGEST_STEPS = 3;

  /**
   * A foot on the ground.
   *
   * @param foot which
   * @param first first frame
   * @param last last frame
   * @param sure chance that it is this foot, 0.5 to 1
   * @param landing whether it is one of both feet of a landing
   * @param start whether it is one of both feet of a standing start
   */
  public record Stand(Foot foot, int first, int last, double sure, boolean landing, boolean start) {}

  private final Proposal p;
  private final int n;
  /** Sums of the worth of every frame in every state, up to a frame. */
  private final double[][] sum;
  private final double step;

  private Course(Proposal proposal, double frame_s) {
    p = proposal;
    n = p.left().length;
    step = p.period() / frame_s;
    sum = new double[STATES][n + 1];
    for (int i = 0; i < n; i++) {
      double l = p.worth() * log(p.left()[i]);
      double notL = p.worth() * log(-p.left()[i]);
      double r = p.worth() * log(p.right()[i]);
      double notR = p.worth() * log(-p.right()[i]);
      double[] here = {notL + notR, l + notR, notL + r, l + r, l + r, l + r, l + r};
      for (int s = 0; s < STATES; s++) {
        sum[s][i + 1] = sum[s][i] + here[s];
      }
    }
  }

  /** Log of the chance for log-odds. */
  private static double log(double odds) {
    return odds > 0 ? -Math.log1p(Math.exp(-odds)) : odds - Math.log1p(Math.exp(odds));
  }

  /**
   * Who stands when.
   *
   * @param frame_s time between frames [s]
   */
  public static List<Stand> of(Proposal proposal, double frame_s) {
    return new Course(proposal, frame_s).stands();
  }

  private record Segment(int state, int first, int end) {}

  private List<Segment> best() {
    double[][] best = new double[n + 1][STATES];
    int[][] from = new int[n + 1][STATES];
    int[][] before = new int[n + 1][STATES];
    for (double[] row : best) {
      Arrays.fill(row, Double.NEGATIVE_INFINITY);
    }
    int longest = (int) Math.ceil(LONGEST_STEPS * step);
    for (int end = 1; end <= n; end++) {
      for (int s = 0; s < STATES; s++) {
        boolean any = s == FLIGHT || s == START || s == LANDING;
        for (int first = any ? 0 : Math.max(0, end - longest); first < end; first++) {
          double own = sum[s][end] - sum[s][first] - lengthCost(s, first, end);
          if (first == 0) {
            double start = s == LANDING || s == LEFT_TO_RIGHT || s == RIGHT_TO_LEFT ? 4 : 0;
            take(best, from, before, end, s, own - start, 0, -1);
            continue;
          }
          for (int b = 0; b < STATES; b++) {
            double change = CHANGE[b][s];
            // what begins just before the clip ends has not shown yet what it is: it pays less
            double pays = end == n && s != FLIGHT ? CUT * change : change;
            if (!Double.isNaN(change) && best[first][b] + own - pays > best[end][s]) {
              take(best, from, before, end, s, best[first][b] + own - pays, first, b);
            }
          }
        }
      }
    }
    int s = 0;
    for (int k = 1; k < STATES; k++) {
      s = best[n][k] > best[n][s] ? k : s;
    }
    List<Segment> out = new ArrayList<>();
    int end = n;
    while (end > 0) {
      out.add(0, new Segment(s, from[end][s], end));
      int b = before[end][s];
      end = from[end][s];
      s = b;
    }
    return out;
  }

  private static void take(double[][] best, int[][] from, int[][] before, int end, int s, double value, int first, int b) {
    if (value > best[end][s]) {
      best[end][s] = value;
      from[end][s] = first;
      before[end][s] = b;
    }
  }

  private double lengthCost(int state, int first, int end) {
    double[] usual = LENGTH[state];
    double steps = (end - first) / step;
    boolean cut = first == 0 || end == n;
    if (cut) {
      // what the clip cuts off may have been of any length; only too long is strange
      double over = Math.max(0, Math.log(steps / (2 * usual[0])));
      return state == LEFT || state == RIGHT ? 0.5 * Math.pow(over / usual[1], 2) : 0;
    }
    if (steps < usual[2]) {
      return Double.POSITIVE_INFINITY;
    }
    return 0.5 * Math.pow(Math.log(steps / usual[0]) / usual[1], 2);
  }

  private List<Stand> stands() {
    List<Segment> path = best();
    List<Stand> out = new ArrayList<>();
    for (Foot foot : Foot.values()) {
      int first = -1;
      boolean landing = false;
      boolean start = false;
      for (int k = 0; k <= path.size(); k++) {
        int s = k < path.size() ? path.get(k).state : FLIGHT;
        boolean on = s != FLIGHT && s != (foot == Foot.LEFT ? RIGHT : LEFT);
        if (on) {
          first = first < 0 ? path.get(k).first : first;
          landing |= s == LANDING;
          start |= s == START;
        } else if (first >= 0) {
          int last = (k < path.size() ? path.get(k).first : n) - 1;
          out.add(new Stand(foot, first, last, sure(foot, first, last), landing, start));
          first = -1;
          landing = false;
          start = false;
        }
      }
    }
    out.sort(Comparator.comparingInt(Stand::first));
    return out;
  }

  /** By how much the foot's own log-odds lead the other's in the clearest third of the stand. */
  private double sure(Foot foot, int first, int last) {
    double[] own = foot == Foot.LEFT ? p.left() : p.right();
    double[] other = foot == Foot.LEFT ? p.right() : p.left();
    double[] lead = new double[last - first + 1];
    for (int i = first; i <= last; i++) {
      lead[i - first] = Math.min(own[i], own[i] - other[i]);
    }
    Arrays.sort(lead);
    double sum = 0;
    int count = Math.max(1, lead.length / 2);
    for (int i = lead.length - count; i < lead.length; i++) {
      sum += lead[i];
    }
    return Math.max(0.5, Proposal.chance(sum / count));
  }
}
